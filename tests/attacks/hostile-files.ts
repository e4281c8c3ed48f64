import { createRandom, type Random } from '../../engine/index.ts';
import { InputError, readExercise, readProfile, readRecording } from '../../scoring/index.ts';
import { textOf } from '../../scoring/schema/bytes.ts';
import { byMouse, weld } from '../scoring/welds.ts';
import type { Attack, Try } from './attack.ts';
import { hostile } from './hostile.ts';
import { steeringIn } from './readers.ts';

const VALUES: readonly unknown[] = [
  null,
  true,
  -1,
  0,
  1e308,
  -1e308,
  1e-320,
  2 ** 53,
  0.1,
  '',
  'NaN',
  [],
  {},
  [[]],
  [null],
  { toString: 1 },
  '__proto__',
  'constructor',
  '\u0000',
  -0,
];

let text: string | null = null;
function honest(): string {
  text ??= JSON.stringify(weld({ joint: { length_mm: 30 }, weave: { length_mm: 3, shelf_s: 0 }, ...byMouse(4) }));
  return text;
}

const below = (random: Random, n: number): number => Math.min(n - 1, Math.floor(random.next() * n));

/** One honest file made bad in one of the ways files go bad, or are made to. */
function spoilt(n: number): Uint8Array {
  const random = createRandom(n + 1);
  const whole = honest();
  const bytes = new TextEncoder().encode(whole);
  const at = below(random, bytes.length);
  switch (n % 9) {
    case 0:
      return bytes.slice(0, at);
    case 1: {
      const copy = bytes.slice();
      for (let k = 0; k < 1 + below(random, 4); k++) copy[below(random, copy.length)] = below(random, 256);
      return copy;
    }
    case 2:
      return bytes.slice(at);
    case 3:
      return new TextEncoder().encode(whole.slice(0, at) + hostile(n) + whole.slice(at));
    case 4:
      return new TextEncoder().encode('[{"a":'.repeat(1 + below(random, 60_000)));
    case 5:
      return Uint8Array.from({ length: below(random, 400) }, () => below(random, 256));
    case 6:
      return new TextEncoder().encode(
        whole.replace('{', `{"${['__proto__', 'constructor', 'toString'][n % 3]}":{"format":1},`),
      );
    case 7:
      return new TextEncoder().encode(
        whole.replace(/:(-?[\d.]+)/g, (m) =>
          random.next() < 0.02 ? `:${['1e999', '-1e999', '1e-999', '-0', '9007199254740993'][below(random, 5)]}` : m,
        ),
      );
    default:
      return new TextEncoder().encode(JSON.stringify(exchanged(JSON.parse(whole), random, n)));
  }
}

/** A value with something else in one place of it. */
function exchanged(value: unknown, random: Random, n: number): unknown {
  let at = value as Record<string, unknown>;
  for (;;) {
    const keys = Object.keys(at);
    if (keys.length === 0) return value;
    const key = keys[below(random, keys.length)]!;
    const inner = at[key];
    if (typeof inner === 'object' && inner !== null && random.next() < 0.8) {
      at = inner as Record<string, unknown>;
      continue;
    }
    if (random.next() < 0.2) delete at[key];
    else at[key] = random.next() < 0.3 ? hostile(n) : VALUES[below(random, VALUES.length)];
    return value;
  }
}

function faultsOf(what: string, read: () => unknown): string[] {
  try {
    read();
    return [];
  } catch (error) {
    if (!(error instanceof InputError)) return [`${what}: ${String(error)}`];
    const lines = error.message.split('\n');
    return [
      ...(lines.length === error.problems.length
        ? []
        : [`${what}: ${lines.length} lines for ${error.problems.length} problems`]),
      ...lines.flatMap((line) => (steeringIn(line) === null ? [] : [`${what}: a refusal that steers`])),
      ...(lines.every((line) => line.length < 2000)
        ? []
        : [`${what}: a refusal of ${Math.max(...lines.map((l) => l.length))} letters`]),
    ];
  }
}

/** Files cut, flipped, nested, retyped: taken as they are or refused in words, never anything else. */
export const hostileFiles: Attack = {
  name: 'hostile files',
  says: 'an honest recording cut, flipped, nested, spliced, with values of other kinds and sizes, and mere bytes; taken or refused by name in a clean line a problem, as recording, exercise and profile',
  share: 180,
  whole: 4500,
  tries: (n): Try => {
    const bytes = spoilt(n);
    const name = `${n}.json`;
    return {
      inputs: 3,
      faults: [
        ...faultsOf('recording', () => readRecording(textOf(bytes, name), name)),
        ...faultsOf('exercise', () => readExercise(textOf(bytes, name), name)),
        ...faultsOf('profile', () => readProfile(textOf(bytes, name), name)),
      ],
    };
  },
};

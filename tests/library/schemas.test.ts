import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  exerciseSchema,
  exercises,
  type JsonSchemaName,
  jsonSchema,
  jsonSchemaNames,
  profileSchema,
  profiles,
  recordingSchema,
  resultSchema,
  scoreAttempt,
} from '../../scoring/index.ts';
import { weld } from '../scoring/welds.ts';

/** The JSON Schemas, checked by somebody else's validator against files as Toehold writes them, whole and broken. */

const readers = {
  recording: recordingSchema,
  exercise: exerciseSchema,
  profile: profileSchema,
  result: resultSchema,
} as const;
const checks = {} as Record<JsonSchemaName, ValidateFunction>;
/** Files of each format, as plain JSON. */
let files: Record<JsonSchemaName, unknown[]>;

const asFile = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

beforeAll(() => {
  const ajv = new Ajv2020({
    strict: true,
    strictTypes: false,
    allErrors: true,
    // A date's format stands beside a pattern that says the same; the pattern is what is checked.
    formats: { 'date-time': true },
  });
  for (const name of jsonSchemaNames) checks[name] = ajv.compile(jsonSchema(name));
  const recordings = [
    weld({ joint: { length_mm: 30 }, faults: { tremor_mm: 0.3 } }),
    weld({ joint: { length_mm: 30, kind: 'lap' }, process: { feed_mpmin: 3.2, volts_V: 15 } }),
  ];
  files = {
    recording: recordings.map(asFile),
    exercise: exercises.map(asFile),
    profile: profiles.map(asFile),
    result: [...recordings.map((r) => scoreAttempt(r)), scoreAttempt({ ...recordings[0]!, exercise: null })].map(
      asFile,
    ),
  };
}, 60_000);

type Key = string | number;
type Node = Record<Key, unknown>;

/** Every way down into a value, lists by their first and last entry. */
function ways(value: unknown, to: Key[] = []): Key[][] {
  if (typeof value !== 'object' || value === null) return [to];
  const keys: Key[] = Array.isArray(value)
    ? [...new Set([0, value.length - 1])].filter((k) => k in value)
    : Object.keys(value);
  return [...(to.length > 0 ? [to] : []), ...keys.flatMap((key) => ways((value as Node)[key], [...to, key]))];
}

function changed(file: unknown, way: readonly Key[], change: (parent: Node, key: Key) => void): unknown {
  const copy = structuredClone(file);
  const parent = way.slice(0, -1).reduce((at, key) => (at as Node)[key], copy);
  change(parent as Node, way.at(-1)!);
  return copy;
}

describe.each(jsonSchemaNames)('JSON Schema of a %s', (name) => {
  it('takes files as they are written', () => {
    expect(files[name].length).toBeGreaterThan(1);
    for (const file of files[name]) {
      checks[name](file);
      expect(checks[name].errors ?? []).toEqual([]);
    }
  });

  it('refuses every field of a kind it cannot be', () => {
    const file = files[name][0]!;
    for (const way of ways(file)) {
      const wrong = changed(file, way, (parent, key) => {
        parent[key] = { not: ['this'] };
      });
      expect(checks[name](wrong), way.join('.')).toBe(false);
    }
  });

  it('refuses a field that is missing, misspelt, or from another format', () => {
    const file = files[name][0] as Node;
    for (const key of Object.keys(file)) {
      const { [key]: value, ...rest } = file;
      const missing = checks[name](rest);
      expect(checks[name]({ ...rest, [`${key}x`]: value }), key).toBe(false);
      expect(missing, key).toBe(readers[name].safeParse(rest).success);
    }
    for (const other of jsonSchemaNames) if (other !== name) expect(checks[name](files[other][0]), other).toBe(false);
  });

  it('refuses nothing the reader takes, whatever is done to a file', () => {
    const values = fc.oneof(
      fc.double({ noNaN: true, noDefaultInfinity: true }),
      fc.integer({ min: -1000, max: 100_000 }),
      fc.string({ maxLength: 20 }),
      fc.constantFrom(null, true, [], {}),
    );
    let refused = 0;
    fc.assert(
      fc.property(fc.nat(), fc.nat(), values, (which, where, value) => {
        const file = files[name][which % files[name].length]!;
        const all = ways(file);
        const broken = changed(file, all[where % all.length]!, (parent, key) => {
          parent[key] = value;
        });
        const byReader = readers[name].safeParse(broken).success;
        const bySchema = checks[name](broken);
        if (!bySchema) refused++;
        if (byReader) expect(bySchema).toBe(true);
      }),
      { seed: 7, numRuns: 400 },
    );
    expect(refused).toBeGreaterThan(100);
  });
});

it('refuses words and numbers that are not among those allowed, and fractions where whole numbers are meant', () => {
  const put = (name: JsonSchemaName, way: Key[], value: unknown): boolean => {
    const file = changed(files[name][0], way, (parent, key) => {
      parent[key] = value;
    });
    return checks[name](file);
  };
  expect(put('recording', ['poses', 'u', 0], 5)).toBe(true);
  expect(put('recording', ['poses', 'u', 0], 0.5)).toBe(false);
  expect(put('recording', ['simulation', 'process', 'wire_mm'], 1.2)).toBe(true);
  expect(put('recording', ['simulation', 'process', 'wire_mm'], 1.1)).toBe(false);
  expect(put('recording', ['version'], 1)).toBe(false);
  expect(put('recording', ['version'], 3)).toBe(false);
  expect(put('result', ['verdict'], 'no verdict')).toBe(true);
  expect(put('result', ['verdict'], 'fine')).toBe(false);
});

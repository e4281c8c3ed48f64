import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import {
  exercises,
  InputError,
  jsonSchema,
  jsonSchemaNames,
  profiles,
  readExercise,
  readProfile,
  readRecording,
  scoreAttempt,
} from '../../../scoring/index.ts';
import { readAttemptName } from '../../../scoring/node/index.ts';
import { textOf } from '../../../scoring/schema/bytes.ts';
import { csvText } from '../../../scoring/schema/csv.ts';
import { exerciseVersions, recordingVersions, type Step, upToCurrent } from '../../../scoring/schema/version.ts';
import { weld } from '../welds.ts';

const recording = weld({ joint: { length_mm: 30 }, weave: { length_mm: 3, shelf_s: 0 } });
const samples = { recording, exercise: exercises[0]!, profile: profiles[0]!, result: scoreAttempt(recording) } as const;

describe('JSON Schema', () => {
  it.each(jsonSchemaNames)('of a %s takes what the reader takes and refuses a missing or unknown field', (name) => {
    const exported = jsonSchema(name);
    expect(exported).toMatchObject({ $schema: 'https://json-schema.org/draft/2020-12/schema', type: 'object' });
    const check = z.fromJSONSchema(JSON.parse(JSON.stringify(exported)) as Parameters<typeof z.fromJSONSchema>[0]);
    const sample = JSON.parse(JSON.stringify(samples[name])) as Record<string, unknown>;
    expect(check.safeParse(sample).success).toBe(true);
    expect(check.safeParse({ ...sample, extra: 1 }).success).toBe(false);
    for (const key of Object.keys(sample)) {
      const { [key]: _, ...rest } = sample;
      expect(check.safeParse(rest).success, `without ${key}`).toBe(false);
    }
  });
});

describe('versions', () => {
  const steps = new Map<number, Step>([
    [1, (c) => ({ ...c, version: 2, b: c.a })],
    [2, (c) => ({ ...c, version: 3, c: c.b })],
  ]);
  const versions = { current: 3, steps, refused: new Map([[0, 'a draft that was never given out']]) };

  it('are brought up step by step', () => {
    expect(upToCurrent({ version: 1, a: 7 }, 'f', versions)).toEqual({ version: 3, a: 7, b: 7, c: 7 });
    const same = { version: 3 };
    expect(upToCurrent(same, 'f', versions)).toBe(same);
  });

  it.each([
    [4, /f: version: found 4, allowed: 1, 2, 3; .*newer/],
    [0, /draft that was never given out/],
    [-1, /no longer read/],
    ['2', /without a version/],
    [undefined, /found nothing/],
  ])('%s is refused with the reason', (version, reason) => {
    expect(() => upToCurrent({ version }, 'f', versions)).toThrow(reason);
  });

  it('of a recording: 1 is the first that was written', () => {
    expect(recordingVersions.current).toBe(2);
    expect(() => readRecording(JSON.stringify({ ...recording, version: 0 }), 'f')).toThrow(
      /f: version: found 0, allowed: 1, 2;/,
    );
  });

  it('of a recording: 1, as the command line of engine 0.2.0 wrote it, is brought up and never called edited', () => {
    const text = readFileSync(new URL('./recording-version-1.json', import.meta.url), 'utf8');
    const older = readRecording(text, 'older.json');
    expect(older).toMatchObject({ version: 2, engine: '0.2.0', seed: 7, chain: null, trainee: null, started: null });
    expect(older.aids).not.toHaveProperty('ghost');
    expect(older.exercise).toMatchObject({ version: 2, aids: { pacer: true } });
    const result = scoreAttempt(older);
    expect(result.reasons.map((r) => r.code).filter((code) => /edited|differs/.test(code))).toEqual([]);
    expect(result.notes.map((n) => n.code)).toEqual(expect.arrayContaining(['engine-differs', 'no-chain']));
  });

  it('of an exercise: 1 is brought up, the pacer by its old name', () => {
    const [first] = exercises;
    const { pacer, ...aids } = first!.aids;
    const older = { ...first!, version: 1, aids: { ghost: pacer, ...aids } };
    expect(readExercise(JSON.stringify(older))).toEqual(first);
    expect(exerciseVersions.current).toBe(2);
  });

  it('a step that does not lead up is a fault of the program', () => {
    const stuck = { current: 2, steps: new Map<number, Step>([[1, (c) => c]]) };
    expect(() => upToCurrent({ version: 1 }, 'f', stuck)).toThrow(/does not lead up/);
  });
});

/** Runs a reader on something spoilt: it may take it or refuse it with a sentence, and do nothing else. */
function takenOrRefused(read: () => unknown): boolean {
  try {
    read();
    return true;
  } catch (error) {
    expect(error).toBeInstanceOf(InputError);
    expect((error as Error).message).toMatch(/: found .*, allowed: /s);
    expect((error as Error).message.length).toBeLessThan(20_000);
    return false;
  }
}

const readers = {
  recording: readRecording,
  exercise: readExercise,
  profile: readProfile,
} as const;

describe.each(['recording', 'exercise', 'profile'] as const)('fuzzed: a %s', (kind) => {
  const good = JSON.stringify(samples[kind]);
  const read = readers[kind];

  it('cut off anywhere is refused', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: good.length - 1 }),
        (n) => !takenOrRefused(() => read(good.slice(0, n), 'f')),
      ),
      { numRuns: 60 },
    );
  });

  it('with text changed anywhere is taken or refused', () => {
    fc.assert(
      fc.property(fc.nat(good.length), fc.string({ maxLength: 4 }), fc.nat(3), (at, put, drop) => {
        takenOrRefused(() => read(good.slice(0, at) + put + good.slice(at + drop), 'f'));
      }),
      { numRuns: 80 },
    );
  });

  it('with any field replaced by any value is taken or refused', () => {
    const paths = pathsOf(JSON.parse(good), []).filter((p) => p.length > 0);
    fc.assert(
      fc.property(fc.constantFrom(...paths), fc.jsonValue({ maxDepth: 2 }), (path, value) => {
        const copy = JSON.parse(good) as unknown;
        let at = copy as Record<string, unknown>;
        for (const key of path.slice(0, -1)) at = at[key] as Record<string, unknown>;
        at[path.at(-1)!] = value;
        takenOrRefused(() => read(JSON.stringify(copy), 'f'));
      }),
      { numRuns: 120 },
    );
  });

  it('is none of any JSON at all', () => {
    fc.assert(
      fc.property(fc.json(), (text) => !takenOrRefused(() => read(text, 'f'))),
      { numRuns: 80 },
    );
  });
});

/** Paths to every field, long lists cut to their first entries. */
function pathsOf(value: unknown, path: string[]): string[][] {
  if (typeof value !== 'object' || value === null) return [path];
  return [
    path,
    ...Object.entries(value)
      .slice(0, 20)
      .flatMap(([key, v]) => pathsOf(v, [...path, key])),
  ];
}

describe('fuzzed: bytes, names and cells', () => {
  it('any bytes are text or refused', () => {
    fc.assert(fc.property(fc.uint8Array({ maxLength: 40 }), (bytes) => void takenOrRefused(() => textOf(bytes, 'f'))));
  });

  it('any file name is understood or null, and what was put in comes out', () => {
    fc.assert(
      fc.property(fc.string(), (name) => {
        const n = readAttemptName(name);
        return n.attempt === null || n.attempt > 0;
      }),
    );
    const word = fc.stringMatching(/^[a-z]{1,8}(-[a-z]{1,8})?$/);
    fc.assert(
      fc.property(word, word, word, fc.integer({ min: 1, max: 9999 }), (bench, trainee, exercise, attempt) => {
        const name = `2026-03-14_${bench}_${trainee}_${exercise}_${String(attempt).padStart(2, '0')}.json`;
        expect(readAttemptName(name)).toEqual({ date: '2026-03-14', bench, trainee, exercise, attempt });
      }),
    );
  });

  it('no cell of text starts as a formula', () => {
    const risky = fc.tuple(fc.constantFrom('=', '+', '-', '@', '\t', '\r', '＝'), fc.string()).map(([a, b]) => a + b);
    fc.assert(
      fc.property(risky, (text) => {
        const [, cell, ...more] = csvText([{ a: text }], ['a']).split('\r\n');
        expect(more).toEqual(['']);
        // A tab or line end in front is written out, and is text by that.
        expect(cell).toMatch(/^"?('|\\u00)/);
      }),
    );
    expect(csvText([{ a: -3 }], ['a'])).toBe('\ufeffa\r\n-3\r\n');
  });
});

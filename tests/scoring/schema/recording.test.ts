import { afterEach, describe, expect, it, vi } from 'vitest';
import { InputError, readExercise, readProfile, readRecording } from '../../../scoring/index.ts';
import { weld } from '../welds.ts';

const good = JSON.stringify(weld({ joint: { length_mm: 30 }, weave: { length_mm: 3 } }));

/** The recording with one thing changed. */
function spoilt(change: (r: Record<string, unknown>) => void): string {
  const r = JSON.parse(good) as Record<string, unknown>;
  change(r);
  return JSON.stringify(r);
}

function refusal(text: string): string {
  try {
    readRecording(text, 'a.json');
  } catch (error) {
    expect(error).toBeInstanceOf(InputError);
    return (error as InputError).message;
  }
  throw new Error('was taken in');
}

const at = (r: Record<string, unknown>, ...path: string[]): Record<string, unknown> => {
  let here = r;
  for (const key of path) here = here[key] as Record<string, unknown>;
  return here;
};

describe('text that is not JSON', () => {
  afterEach(() => vi.restoreAllMocks());

  const BROKEN = '{\n  "a": 1 "b": 2\n}';
  // As V8 of Node 20, a newer V8, and SpiderMonkey say it of the text above (from memory).
  it.each([
    'Unexpected string in JSON at position 11',
    "Expected ',' or '}' after property value in JSON at position 11 (line 2 column 10)",
    "JSON.parse: expected ',' or '}' after property value in object at line 2 column 10 of the JSON data",
  ])('is said in our own words whatever the engine’s are: %s', (words) => {
    vi.spyOn(JSON, 'parse').mockImplementation(() => {
      throw new SyntaxError(words);
    });
    expect(() => readRecording(BROKEN, 'a.json')).toThrow(
      'a.json: found text that is not JSON (at line 2, column 10), allowed: complete JSON text',
    );
  });

  it.each([
    'Unexpected end of JSON input',
    'Unterminated string in JSON at position 9 (line 1 column 10)',
    "Expected ',' or ']' after array element in JSON at position 17",
    'JSON.parse: end of data while reading object contents at line 1 column 18 of the JSON data',
  ])('is said to be cut off: %s', (words) => {
    vi.spyOn(JSON, 'parse').mockImplementation(() => {
      throw new SyntaxError(words);
    });
    expect(() => readRecording('{"a": [1, 2, 3, 4', 'a.json')).toThrow(/not JSON \(the file is cut off\), allowed/);
  });

  it('is said so by this engine too', () => {
    expect(() => readRecording(BROKEN, 'a.json')).toThrow(/\(at line 2, column 10\)/);
    expect(() => readRecording('{"a": [1, 2', 'a.json')).toThrow(/\(the file is cut off\)/);
  });
});

describe('a recording', () => {
  it('comes back as it was written', () => {
    expect(JSON.stringify(readRecording(good))).toBe(good);
  });

  const cases: [string, string, RegExp][] = [
    ['empty text', '', /a\.json: found an empty file/],
    ['a file cut off', good.slice(0, good.length / 2), /not JSON.*complete JSON text/],
    [
      'another format',
      spoilt((r) => (r.format = 'notes')),
      /a\.json: format: found "notes", allowed: "toehold-recording"/,
    ],
    ['another version', spoilt((r) => (r.version = 3)), /version: found 3, allowed: 1, 2; .*another version/],
    ['a list', '[]', /found a list of 0/],
    ['null', 'null', /found null/],
    ['an unknown field', spoilt((r) => (r.volts = 3)), /a\.json: volts: found 3, allowed: no such field/],
    [
      'a misspelt setting',
      spoilt((r) => (at(r, 'simulation', 'process').volt_V = 18)),
      /simulation\.process\.volt_V: found 18/,
    ],
    [
      'volts as text',
      spoilt((r) => (at(r, 'simulation', 'process').volts_V = '18')),
      /simulation\.process\.volts_V: found "18", allowed: a number/,
    ],
    [
      'volts out of range',
      spoilt((r) => (at(r, 'simulation', 'process').volts_V = 180)),
      /simulation\.process\.volts_V: found 180, allowed: .*12 to 30 V/,
    ],
    [
      'a wire nobody sells',
      spoilt((r) => (at(r, 'simulation', 'process').wire_mm = 0.95)),
      /wire_mm: found 0\.95, allowed: 0\.8, 0\.9, 1, 1\.2/,
    ],
    ['a column missing', spoilt((r) => delete at(r, 'poses').tip), /poses\.tip: found nothing, allowed: a list/],
    [
      'a column too short',
      spoilt((r) => (at(r, 'poses').tip as unknown as number[]).pop()),
      /poses\.tip: found a list of \d+, allowed: \d+ entries/,
    ],
    [
      'a pose with a fraction',
      spoilt((r) => ((at(r, 'poses').u as unknown as number[])[7] = 0.5)),
      /poses\.u\[7\]: found 0\.5, allowed: a whole number/,
    ],
    [
      'a trigger half pulled',
      spoilt((r) => {
        (at(r, 'poses').trigger as unknown as number[])[3] = 2;
      }),
      /poses\.trigger\[3\]: found 2, allowed: 0 or 1/,
    ],
    ['a pose beyond numbers', good.replace('"u":[', '"u":[1e999,'), /poses\.u\[0\]: found Infinity/],
    ['another rate', spoilt((r) => (r.rate_Hz = 1000)), /rate_Hz: found 1000, allowed: 100/],
    ['a date in words', spoilt((r) => (r.started = 'Monday')), /started: found "Monday"/],
    [
      'a day that is none',
      spoilt((r) => (r.started = '2026-02-30T08:00:00Z')),
      /started: found "2026-02-30T08:00:00Z", allowed: a day and time that there is, such as/,
    ],
    ['a trainee without a name', spoilt((r) => (r.trainee = { name: '', bench: 'b1' })), /trainee\.name: found ""/],
    ['an ending nobody knows', spoilt((r) => (r.ended = 'won')), /ended: found "won"/],
    [
      'a judged length off the joint',
      spoilt((r) => (at(r, 'exercise').judged = { from_mm: 10, to_mm: 400 })),
      /exercise\.judged: .*from_mm below to_mm/,
    ],
  ];
  it.each(cases)('is refused with a sentence: %s', (_name, text, message) => {
    expect(refusal(text)).toMatch(message);
  });

  it('is refused when it is longer than twenty minutes, before anything is welded', () => {
    const long = spoilt((r) => {
      for (const key of Object.keys(at(r, 'poses'))) at(r, 'poses')[key] = new Array(120_001).fill(0);
    });
    expect(refusal(long)).toMatch(/poses\.u: found a list of 120001, allowed: at most 120000 entries/);
    expect(refusal(' '.repeat(16_000_001))).toMatch(/at most 16000000 characters/);
  });

  it('keeps the prototype out of the paths', () => {
    expect(refusal('{"__proto__": {"format": "toehold-recording"}}')).toMatch(/format: found/);
  });
});

describe('exercise and profile files', () => {
  it('are read and refused the same way', () => {
    const exercise = JSON.stringify((JSON.parse(good) as { exercise: unknown }).exercise);
    expect(readExercise(exercise).name).toBe('free-attempt');
    expect(() => readExercise(exercise.replace('"cuts_mm":[', '"cuts_mm":[-4,'), 'e.json')).toThrow(
      /e\.json: cuts_mm\[0\]: found -4/,
    );
    expect(() => readProfile('{"format":"toehold-profile"}', 'p.json')).toThrow(
      /p\.json: version: found nothing, allowed: 1/,
    );
  });
});

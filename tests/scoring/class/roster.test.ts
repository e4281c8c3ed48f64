import { describe, expect, it } from 'vitest';
import { attemptFileName, person, readAttemptName, readRoster, wordsInName } from '../../../scoring/index.ts';

// Everybody here is invented.
const names = (text: string): string[] => readRoster(text).map((p) => p.name);

describe('a roster', () => {
  it('is a name or a number on each line, whatever the line ends are', () => {
    expect(names('Ines Calder\r\nTomás Okafor\n\n  \n17\nשרה לוי\n')).toEqual([
      'Ines Calder',
      'Tomás Okafor',
      '17',
      'שרה לוי',
    ]);
  });

  it.each([
    [',', 'Name,Bench\nInes Calder,b2\nPia Lindqvist,\n'],
    [';', '\uFEFFNo;Name;Bench;Phone\n1;Ines Calder;b2;55\n2;Pia Lindqvist;;\n'],
    ['\t', 'bench\ttrainee\nb2\tInes Calder\n\tPia Lindqvist\n'],
    [',', 'Last name,First name,Bench\nCalder,Ines,b2\nLindqvist,"Pia",\n'],
  ])('is a table with %j between its columns', (_, text) => {
    expect(readRoster(text)).toEqual([
      { name: 'Ines Calder', bench: 'b2', plate: null },
      { name: 'Pia Lindqvist', bench: null, plate: null },
    ]);
  });

  it.each([
    ['nobody', ' \n\n', /roster: found no names/],
    ['a heading alone', 'Name\n', /found no names/],
    [
      'two columns without a heading',
      'Calder,Ines\n',
      /line 1: found 2 columns and no heading, allowed: one name a line/,
    ],
    ['two of one name', 'Ines Calder\nPia\nines  calder\n', /line 3: found "ines calder", as on line 1/],
    ['a name of signs alone', 'Pia\n🙂\n', /line 2, name: found "🙂", allowed: .*at least one letter or digit/],
    ['a name that turns the line round', 'Pia\nInes\u202eCalder\n', /line 2: found a control character/],
    ['an open quote', 'Name,Bench\n"Ines,b2\n', /every quoted cell closed/],
    [
      'more than a school',
      Array.from({ length: 201 }, (_, i) => `n${i}`).join('\n'),
      /201 names, allowed: at most 200/,
    ],
  ])('is refused by line: %s', (_, text, why) => {
    expect(() => readRoster(text)).toThrow(why);
  });

  it('takes a formula or a piece of page for the letters in it', () => {
    expect(names('=cmd|calc\n<b>Pia</b>\n')).toEqual(['=cmd|calc', '<b>Pia</b>']);
    expect(wordsInName('=cmd|calc')).toBe('cmd-calc');
    expect(wordsInName('<b>Pia</b>')).toBe('b-pia-b');
  });
});

describe('the name of an attempt’s file', () => {
  it.each([
    ['Inés Calder', 'b2', '2026-03-14_b2_inés-calder_lap-5_03.json'],
    ['Siobhán O’Brien-Hale, jr.', 'Booth 2', '2026-03-14_booth-2_siobhán-o’brien-hale-jr_lap-5_03.json'],
    ['17', null, '2026-03-14_-_17_lap-5_03.json'],
    ['../../etc/passwd', 'a_b', '2026-03-14_a-b_etc-passwd_lap-5_03.json'],
    ['שרה לוי', 'b2', '2026-03-14_b2_שרה-לוי_lap-5_03.json'],
    ['🙂', 'b2', '2026-03-14_b2_-_lap-5_03.json'],
  ])('of %s at %s is read back as it was meant', (trainee, bench, file) => {
    const written = attemptFileName({ date: '2026-03-14', bench, trainee, exercise: 'lap-5', attempt: 3 });
    expect(written).toBe(file);
    expect(readAttemptName(written)).toEqual({
      date: '2026-03-14',
      bench: bench === null ? null : wordsInName(bench),
      trainee: wordsInName(trainee),
      exercise: 'lap-5',
      attempt: 3,
    });
  });

  it('is the same attempt when a browser saves it a second time', () => {
    expect(readAttemptName('2026-03-14_b2_pia_lap-5_03 (1).json')).toEqual(
      readAttemptName('2026-03-14_b2_pia_lap-5_03.json'),
    );
  });

  it('never breaks at a long name, in the middle of a character or at a hyphen', () => {
    for (const long of ['a'.repeat(39) + ' b'.repeat(50), '𐐷'.repeat(100)]) {
      const words = wordsInName(long)!;
      expect([...words].length).toBeLessThanOrEqual(40);
      expect(readAttemptName(`2026-03-14_b_${words}_x_1.json`).trainee).toBe(words);
    }
  });
});

describe('somebody typed in', () => {
  it('is kept as typed, spaces tidied, a bench left out is none', () => {
    expect(person('  Ines   Calder ', '')).toEqual({ name: 'Ines Calder', bench: null, plate: null });
  });
  it.each([
    ['', 'b2', /trainee: name: found ""/],
    ['x'.repeat(121), '', /name: .*at most 120 characters/],
    ['Ines', '!!', /bench: found "!!", allowed: letters or digits, or nothing/],
  ])('%j at %j is refused', (name, bench, why) => {
    expect(() => person(name, bench)).toThrow(why);
  });
});

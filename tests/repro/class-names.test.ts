import { describe, expect, it } from 'vitest';
import { classSheet, type Scored, scoreBytes } from '../../scoring/node/index.ts';
import { byMouse, weld } from '../scoring/welds.ts';

describe('names on the class sheet that were told apart, or were not', () => {
  const recording = weld({ joint: { length_mm: 30 }, weave: { length_mm: 6, shelf_s: 0 }, ...byMouse(6) });
  const row = scoreBytes(new TextEncoder().encode(JSON.stringify(recording)), 'a.json', {
    exercise: null,
    profile: null,
  });
  const named = (trainee: string, n: number): Scored => ({
    ...row,
    file: `2026-03-14_b1_${trainee}_free_0${n}.json`,
    hand: String(n).padStart(64, '0'),
    motion: '',
  });
  const sheet = (...names: string[]) =>
    classSheet({ scored: names.map((name, n) => named(name, n + 1)), bad: [] }, new Set([row.exercise!]));

  it('one person written in two ways had two rows, and with them two medians', () => {
    const { rows, trainees } = sheet('ines-calder', 'INES-CALDER', 'Ines-Calder');
    expect(rows.map((r) => r.attempts.length)).toEqual([3]);
    expect(trainees).toBe(1);
  });

  it('a name with a letter of another alphabet in it stood beside the one it looks like without a word', () => {
    const { rows, notes } = sheet('ines-calder', '\u0456nes-calder', 'Олена-Коваль', 'Έλενα-smith');
    expect(rows.length).toBe(4);
    const said = notes.filter((note) => note.startsWith('Letters of two alphabets'));
    expect(said).toEqual([expect.stringMatching(/: \u0406nes Calder\.$/)]);
  });
});

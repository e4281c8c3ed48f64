/** A class sheet of nobody, of one, of two, three, sixteen and forty: what is said above it, and on how many sheets of paper it stands. */
import { beforeAll, describe, expect, it } from 'vitest';
import { type AdviceCode, classPaperWith } from '../../../scoring/index.ts';
import {
  type ClassSheet,
  classPdf,
  classSheet,
  type Scored,
  scoreBytes,
  sheetText,
} from '../../../scoring/node/index.ts';
import { MOUSE, weld } from '../welds.ts';

let base: Scored;
beforeAll(() => {
  const recording = weld({ joint: { length_mm: 30 }, device: MOUSE, weave: { length_mm: 3, shelf_s: 0 } });
  base = scoreBytes(new TextEncoder().encode(JSON.stringify(recording)), 'a.json', { exercise: null, profile: null });
});

/** A class of so many, each with one attempt that had this fault first. */
function classOf(many: number, code: AdviceCode = 'cold-root'): ClassSheet {
  const scored = Array.from(
    { length: many },
    (_, i): Scored => ({
      ...base,
      file: `2026-03-10_b${1 + (i % 4)}_trainee-${String(i + 1).padStart(2, '0')}_bracket_01.json`,
      sha256: String(i).padStart(64, '1'),
      hand: String(i).padStart(64, '0'),
      result: {
        ...base.result,
        ...{ reasons: [], notes: [], verdict: 'outside', score: 40 + (i % 30) },
        advice: [{ code, text: 'Said.', y_mm: 12, t_s: 3, cycle: 2, side: null, change: null }],
      },
    }),
  );
  return classSheet({ scored, bad: [] }, new Set([base.exercise!]));
}

describe('a class sheet', () => {
  it('speaks of a class only where there is one', () => {
    const said = (many: number, code?: AdviceCode): string => sheetText(classOf(many, code)).split('\n\n')[0]!;
    expect(said(0)).toContain('No attempt counts');
    expect(sheetText(classOf(0))).not.toContain('has a fault');
    expect(said(1)).toContain('One trainee. Most often first among the latest attempts: root not tied in, too cold');
    expect(said(1)).not.toContain('class');
    expect(said(1, 'keep-it')).toContain('One trainee, without a fault');
    expect(said(2)).toContain('Common fault of the class: root not tied in, too cold, 2 trainees');
    expect(said(16)).toContain('16 trainees');
  });

  it.each([
    [0, 1],
    [3, 1],
    [16, 1],
    [40, 2],
  ])('of %i stands on %i A4', async (many, pages) => {
    const sheet = classOf(many);
    const cuts = sheet.firstThree.map(() => ({ cut: null, caption: 'Not drawn here.' }));
    const pdf = Buffer.from(await classPdf(classPaperWith(sheet, cuts))).toString('latin1');
    expect(pdf.match(/\/Type \/Page\b/g)).toHaveLength(pages);
  });
});

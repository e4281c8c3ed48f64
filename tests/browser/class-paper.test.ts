/** The class sheet of one and of sixteen on one A4 in Chromium and as PDF, in either language, with cuts, a file that could not be read and one that is no attempt. */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { attemptOf } from '../../scoring/attempt/attempt.ts';
import { answerFor, classHtml, classPaperWith, classSheet, type Scored, sectionSvg } from '../../scoring/index.ts';
import { classPdf } from '../../scoring/node/index.ts';
import { shortTee } from '../scoring/class/short-tee.ts';
import { launchChromium } from './support/chromium.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());

const recording = shortTee(4);
const cut = sectionSvg(attemptOf(recording).section(3), null, { id: 'first', bare: true });
const answer = answerFor(new TextEncoder().encode(JSON.stringify(recording)), 'a.json', {
  exercise: null,
  profile: null,
});
if (!answer.ok) throw new Error(answer.reason);
const { scored: base } = answer;

/** Names as long as a school's, verdicts as wordy as they come, and in every other row a fault that takes two lines. */
function paperOf(many: number, language: 'en' | 'de') {
  const scored = Array.from(
    { length: many },
    (_, i): Scored => ({
      ...base,
      trainee: { name: `${['Ann-Kathrin', 'Maximiliane', 'Bo'][i % 3]} von der Heide-${i + 1}`, bench: `b${i % 4}` },
      file: `2026-03-1${i % 5}_b${i % 4}_${['ann-kathrin', 'maximiliane', 'bo'][i % 3]}-von-der-heide-${i + 1}_short-tee_01.json`,
      sha256: String(i).padStart(64, '1'),
      hand: String(i).padStart(64, '0'),
      motion: '',
      result: {
        ...base.result,
        ...{ reasons: [], notes: [], verdict: i % 2 === 0 ? 'too close to call' : 'outside', score: 77 },
        advice: [
          {
            code: i % 2 === 0 ? 'either' : 'keep-it',
            text: 'Leg 4.4 mm at 68; at least 5. Two things could be behind it: a root crossed a little low, or an uneven beat. Mend the first, weld again, and look.',
            ...{ y_mm: 12, t_s: 3, cycle: 2, side: null, change: null },
          },
        ],
      },
    }),
  );
  const bad = [
    {
      file: 'half.json',
      reason: 'half.json: found text that is not JSON (the file is cut off), allowed: complete JSON text',
    },
  ];
  const others = [{ file: 'tee.exercise.json', kind: 'exercise' as const }];
  const sheet = classSheet({ scored, bad, others }, new Set([base.exercise!]));
  const caption = 'Cut at 68 mm. Farthest outside: leg 4.44 ± 0.3 mm, limit 5.';
  return classPaperWith(
    sheet,
    sheet.firstThree.map(() => ({ cut, caption })),
    language,
  );
}

describe('the class sheet on paper', () => {
  it.each([
    [1, 'en'],
    [16, 'en'],
    [16, 'de'],
  ] as const)('of %i trainees is one A4: %s', async (many, language) => {
    const paper = paperOf(many, language);
    expect(paper.table.rows).toHaveLength(many);
    const context = await browser.newContext();
    const page = await context.newPage();
    await page.setContent(classHtml(paper));
    const printed = await page.pdf({ preferCSSPageSize: true, printBackground: true });
    await context.close();
    for (const pdf of [printed, Buffer.from(await classPdf(paper))])
      expect(pdf.toString('latin1').match(/\/Type \/Page\b/g)).toHaveLength(1);
  });
});

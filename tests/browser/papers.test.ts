/**
 * Every paper on one A4 in Chromium, on a machine that has not the sheets' own typeface: what it has is set as wide. And how much a page fetches before
 * the first weld. A report as long as they get: ten lines, what to do then, three marked cuts.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { handOfAmount, recordPoses, weaveHand } from '../../engine/index.ts';
import {
  attemptHtml,
  attemptPaper,
  checkRecording,
  EXERCISE_PRINTS,
  exerciseNamed,
  exercisePrintHtml,
  usualLengths,
  withConsequences,
} from '../../scoring/index.ts';
import { packedSize_kB } from '../support/budget.ts';
import { launchChromium } from './support/chromium.ts';

const vee = exerciseNamed('tee-inverted-v')!;
let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());

/** Pages that a document prints on, A4 as its own style asks. */
async function pagesOf(html: string): Promise<number> {
  const context = await browser.newContext();
  try {
    const page = await context.newPage();
    await page.setContent(html);
    const pdf = await page.pdf({ preferCSSPageSize: true, printBackground: true });
    return pdf.toString('latin1').match(/\/Type \/Page\b/g)?.length ?? 0;
  } finally {
    await context.close();
  }
}

/** The report of a hand with some of a beginner's failings. */
function report(): string {
  const short = { ...vee, ...usualLengths(45), joint: { ...vee.joint, length_mm: 45 } };
  const exercise = withConsequences({ ...short, name: 'bracket', title: 'Bracket on a float' });
  const faults = handOfAmount(7, 0.6);
  const { joint, process, demonstration: weave } = exercise;
  const welded = recordPoses(
    {
      simulation: { joint, process, cell_mm: 1 },
      origin: { kind: 'robot', weave, faults },
      device: { kind: 'robot', measures: { tipToWork: true, workAngle: true, travelAngle: true }, scale: 1 },
      aids: { pacer: false, beat: false, toeMarks: false, plainView: false, handRig: null },
      exercise,
    },
    weaveHand(weave, faults),
  );
  const paper = attemptPaper(checkRecording(welded, 'hand.json'), 'hand.json');
  expect(paper.lines.length).toBeGreaterThan(8);
  expect(paper.smallCuts).toHaveLength(3);
  return attemptHtml(paper);
}

describe('on paper', () => {
  it.each(EXERCISE_PRINTS)('the exercise’s %s is one A4', async (what) => {
    expect(await pagesOf(exercisePrintHtml(vee, what))).toBe(1);
  });

  it('the report of an attempt is one A4', async () => {
    expect(await pagesOf(report())).toBe(1);
  });
});

describe('the built page', () => {
  const built = fileURLToPath(new URL('../../dist/game/', import.meta.url));
  // What there is today (in English; another language comes when it is wanted) and a little over: a library that comes in by the back door shows.
  it('fetches no more before the first weld than is meant, nor its Worker', () => {
    const html = readFileSync(join(built, 'index.html'), 'utf8');
    const first = [...html.matchAll(/(?:src|href)="\.\/(assets\/[^"]+)"/g)].map((found) => join(built, found[1]!));
    expect(packedSize_kB(first)).toBeLessThan(380);
    const worker = readdirSync(join(built, 'assets')).filter((name) => /^main-.*\.js$/.test(name));
    expect(packedSize_kB(worker.map((name) => join(built, 'assets', name)))).toBeLessThan(180);
  });
});

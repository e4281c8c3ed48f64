/** Inches beside millimetres on the sheets of an exercise and of a class: 1 in is 25.4 mm exactly (international yard and pound agreement, 1959). */
import { beforeAll, describe, expect, it } from 'vitest';
import {
  boothHtml,
  boothPaper,
  EXERCISE_PRINTS,
  exerciseHtml,
  exerciseNamed,
  exercisePaper,
  exercises,
  loadLanguage,
  macroHtml,
  macroPaper,
  withInches,
} from '../../../scoring/index.ts';
import { exercisePrintPdf } from '../../../scoring/node/index.ts';

beforeAll(() => loadLanguage('de'));

describe('inches in a sentence', () => {
  it.each([
    ['6 mm plates', 'en', '6 mm (0.236 in) plates'],
    ['15 mm, free from 10 to 16 mm', 'en', '15 mm (0.591 in), free from 10 to 16 mm (0.394 to 0.63 in)'],
    ['2,1 mm/s: 4,8 s auf 10 mm', 'de', '2,1 mm/s (5 in/min): 4,8 s auf 10 mm (0,394 in)'],
    ['von 4,6 bis 5,2 m/min', 'de', 'von 4,6 bis 5,2 m/min (181 bis 205 in/min)'],
    ['lays 18.5 mm², the joint holds 18 at 0.9 kJ/mm', 'en', null],
    ['0.0625 in at most, 12 W/(mm K)', 'en', null],
  ] as const)('%s', (text, language, said) => expect(withInches(text, language)).toBe(said ?? text));
});

/** Pages of a PDF of ours, which is not compressed: its page objects (ISO 32000-1, 7.7.3.3). */
const pagesIn = (pdf: Uint8Array): number =>
  Buffer.from(pdf)
    .toString('latin1')
    .match(/\/Type \/Page\b/g)?.length ?? 0;

describe('the papers of an exercise with inches', () => {
  const tee = exerciseNamed('tee-inverted-v')!;

  it.each(['en', 'de'] as const)('say every length and speed both ways (%s)', (language) => {
    const pages = [
      exerciseHtml(exercisePaper(tee, undefined, language, true)),
      boothHtml(boothPaper(tee, language, true)),
      macroHtml(macroPaper(tee, language, true)),
    ].map((page) => page.replace(/<style>[\s\S]*?<\/style>|<svg[\s\S]*?<\/svg>/g, ''));
    for (const page of pages) expect(page.match(/\(\d+([.,]\d+)? in(\/min)?\)/g)?.length ?? 0).toBeGreaterThan(3);
    const feed = Math.round((tee.process.feed_mpmin * 1000) / 25.4);
    expect(pages[0]).toContain(`(${feed} in/min)`);
    expect(pages[1]).toContain(`<th scope="row">in/min</th>`);
    expect(pages[2]).toMatch(language === 'de' ? /Schnitt bei \d+ mm \(\d,\d+ in\)/ : /Cut at \d+ mm \(\d\.\d+ in\)/);
  });

  // The longest words there are, on the exercise with most to say.
  it.each(EXERCISE_PRINTS)('%s is one A4 still, in German', async (what) => {
    for (const e of [exerciseNamed('lap-5')!, exercises.at(-1)!])
      expect(pagesIn(await exercisePrintPdf(e, what, 'de', true))).toBe(1);
  });

  it('are the ones without, byte for byte, where no inches are wanted', () => {
    expect(exerciseHtml(exercisePaper(tee, undefined, 'en', false))).toBe(exerciseHtml(exercisePaper(tee)));
    expect(boothHtml(boothPaper(tee, 'en', false))).toBe(boothHtml(boothPaper(tee)));
  });
});

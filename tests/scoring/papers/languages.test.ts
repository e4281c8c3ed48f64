import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import {
  attemptHtml,
  attemptPaperOf,
  boothHtml,
  boothPaper,
  exerciseHtml,
  exercisePaper,
  exercises,
  judgementOf,
  loadLanguage,
  macroHtml,
  macroPaper,
  type Result,
  resultOf,
  resultSchema,
  Survey,
} from '../../../scoring/index.ts';
import { byMouse, exerciseOf, seen, weld } from '../welds.ts';

const given = { joint: { length_mm: 40, plateA_mm: 5, plateB_mm: 5 }, process: { feed_mpmin: 4.6, volts_V: 18 } };
const recording = weld({ ...given, ...byMouse(3) });
const exercise = exerciseOf(given);
const attempt = seen(recording);
const survey = new Survey(attempt.section);
const judgement = judgementOf(recording, attempt, { exercise, survey });
await loadLanguage('de');
const german = resultOf(judgement, 'de');

function paper(result: Result, language: 'en' | 'de', inches: boolean): Document {
  const judged = { recording, section: attempt.section, survey, result };
  return parseHTML(attemptHtml(attemptPaperOf(judged, 'a.json', { language, inches }))).document;
}

describe('a result in another language', () => {
  it('has the same digits and codes and other sentences', () => {
    const english = resultOf(judgement);
    expect(resultSchema.parse(german)).toEqual(german);
    expect(Object.keys(german)).toEqual(Object.keys(english));
    const bare = ({ advice, reasons, notes, notMeasured, notModelled, cautions, ...digits }: Result) => ({
      ...digits,
      codes: [...advice, ...reasons, ...notes].map((x) => x.code),
      gaps: notMeasured.length + notModelled.length + cautions.length,
    });
    expect(bare(german)).toEqual(bare(english));
    expect(german.advice.length).toBeGreaterThan(0);
    for (const [i, advice] of german.advice.entries()) expect(advice.text).not.toBe(english.advice[i]!.text);
  });

  it('stands on the report in its language, with inches beside where they are wanted', () => {
    const document = paper(german, 'de', true);
    // A rule is quoted as its standard's profile has it.
    for (const rule of document.querySelectorAll('td small')) rule.remove();
    const text = document.body.textContent ?? '';
    expect(document.documentElement.getAttribute('lang')).toBe('de');
    for (const said of ['Grenzwert', 'Schnitt bei', 'Nicht modelliert', 'Draht 0,9', german.advice[0]!.text])
      expect(text).toContain(said);
    expect(text).not.toMatch(/\b(the|within|outside|reading|limit|root)\b/);
    expect(text).toMatch(/\d,\d+ ± \d,\d+ mm0,\d+ in/);
    const plain = paper(resultOf(judgement), 'en', false).body.textContent ?? '';
    expect(plain).not.toMatch(/mm\d+\.\d+ in/);
  });
});

describe('the sheets of an exercise', () => {
  it.each(exercises.map((e) => e.name))('%s are in German throughout', (name) => {
    const e = exercises.find((one) => one.name === name)!;
    const sheets = [
      exerciseHtml(exercisePaper(e, undefined, 'de')),
      boothHtml(boothPaper(e, 'de')),
      macroHtml(macroPaper(e, 'de')),
    ];
    for (const page of sheets) {
      const { document } = parseHTML(page);
      expect(document.documentElement.getAttribute('lang')).toBe('de');
      for (const rule of document.querySelectorAll('td small, style')) rule.remove();
      const text = (document.body.textContent ?? '').replaceAll(name, '');
      // Titles of standards' profiles stay as they are; nothing else is English.
      expect(text.match(/\b(the|from|wait|root|toe|leg|joint|wire|cut)\b/i)?.[0]).toBeUndefined();
    }
  });
});

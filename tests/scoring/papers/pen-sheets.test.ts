/** Sheets that are filled in by hand: macros and their readers, and the card for the booth. */
import { parseHTML } from 'linkedom';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  agreementHtml,
  agreementOf,
  boothHtml,
  boothPaper,
  exerciseNamed,
  exercises,
  loadLanguage,
  macroHtml,
  macroPaper,
  readReadings,
} from '../../../scoring/index.ts';

const vee = exerciseNamed('tee-inverted-v')!;

beforeAll(() => loadLanguage('de'));

describe('the macro sheet', () => {
  it('has a block for every cut fixed beforehand, a column for each reader, and room for their initials', () => {
    const { document } = parseHTML(macroHtml(macroPaper(vee)));
    const tables = [...document.querySelectorAll('.readings table')];
    expect(tables.map((t) => t.querySelector('th')!.textContent)).toEqual([
      'Cut at 37 mm',
      'Cut at 51 mm',
      'Cut at 66 mm',
    ]);
    for (const table of tables) expect(table.querySelectorAll('td.blank')).toHaveLength(4 * 8);
    const text = document.body.textContent ?? '';
    for (const said of ['1st reader, initials', 'Broken open instead', 'heat-affected zone', 'right plate'])
      expect(text).toContain(said);
    // Every letter of the key stands on a reading, and the other way round.
    const key = [...document.querySelectorAll('.key svg text')].flatMap((t) => t.textContent || []).sort();
    const letters = macroPaper(vee).readings.flatMap((r) => (r.letter === '' ? [] : [r.letter]));
    expect(key).toEqual([...letters].sort());
  });

  it('names the plates of a lap as a lap’s, and has a block to fill in where no cut is fixed', () => {
    expect(macroHtml(macroPaper(exerciseNamed('lap-5')!))).toContain('leg, edge plate');
    expect(macroPaper({ ...vee, cuts_mm: [] }).cuts).toEqual(['Cut at ____ mm']);
  });
});

describe('the booth card', () => {
  it.each(exercises.map((e) => [e.name, e] as const))('of %s marks the feed asked for, and none set by ear', (_, e) => {
    const { ladder } = boothPaper(e);
    for (const { cm, feed } of ladder) expect(Number(cm)).toBe(Math.round(10 * Number(feed)));
    const asked = ladder.filter((l) => l.asked).map((l) => Number(l.feed));
    expect(asked).toEqual(e.settings === 'own process' ? [] : [e.process.feed_mpmin]);
  });

  it('marks the whole range where the feed is free in one', () => {
    const free = { feed_mpmin: { from: 5.6, to: 6.2 }, volts_V: null };
    const paper = boothPaper({ ...vee, settings: 'within ranges', free });
    expect(paper.ladder.filter((l) => l.asked).map((l) => l.feed)).toEqual(['5.6', '5.8', '6.0', '6.2']);
    expect(paper.asks[0]).toEqual(['Wire speed', '5.8 m/min, free from 5.6 to 6.2 m/min']);
    expect(boothHtml(paper)).toContain('volts, arc on');
  });
});

describe('the sheet of how far readers agree', () => {
  it('has a row and a sentence for everything measured, names readers and macros, and takes no markup from them', () => {
    const rows = ['<b>1</b>', '2', '3'].flatMap((macro, m) =>
      ['IC', 'WH'].flatMap((reader, r) =>
        [0, 1].map((t) => `${macro},${reader},${5 + m + 0.1 * r + 0.02 * t},${1 + 0.3 * t}`),
      ),
    );
    const table = readReadings(['macro,reader,leg,throat', ...rows].join('\n'));
    const agreement = agreementOf(table);
    for (const language of ['en', 'de'] as const) {
      const { document } = parseHTML(agreementHtml(table, agreement, language));
      const cells = [...document.querySelectorAll('.agreement tbody tr')].map((tr) => tr.querySelectorAll('td').length);
      expect(cells).toEqual([8, 8]);
      expect(document.querySelectorAll('.agreement th')).toHaveLength(8);
      expect(document.querySelectorAll('li')).toHaveLength(2);
      expect(document.querySelector('.foot')!.textContent).toContain('IC, WH');
      expect(document.querySelector('.foot')!.textContent).toContain('<b>1</b>; 2; 3');
    }
    const text = parseHTML(agreementHtml(table, agreement)).document.body.textContent!;
    for (const a of agreement) expect(text).toContain(a.says);
  });
});

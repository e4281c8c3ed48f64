import { lineMeasures } from '../../../schema/profile.ts';
import { measureName as inEnglish } from '../../names.ts';
import { phraseBook } from '../../phrase-book.ts';
import { refusalSaid } from '../../refusal.ts';
import { measureName } from '../names.ts';
import { fileSentencesSaid } from './file-sentences.ts';
import { labSaid } from './lab.ts';
import { refusalsSaid } from './refusals.ts';
import { sheetsSaid } from './sheets.ts';

/** Readings by their names, with the side they were read on. */
const measures = Object.fromEntries(
  lineMeasures.flatMap((measure) =>
    ([null, 'A', 'B'] as const).map((side) => [inEnglish(measure, side, 'tee'), measureName(measure, side, 'tee')]),
  ),
);

/** Texts said in English where they were found out, in German. */
export const phrase = phraseBook(
  { ...measures, ...fileSentencesSaid, ...sheetsSaid, ...labSaid, ...refusalsSaid },
  ',',
);

/** Parts of where a problem stands that are words; names of files and of fields stay as they are. */
const places = phraseBook(
  {
    class: 'Klasse',
    coupon: 'Prüfstück',
    exercise: 'Übung',
    'exercise {=1}': 'Übung {1}',
    piece: 'Stück',
    range: 'Bereich',
    readings: 'Ablesungen',
    recording: 'Aufzeichnung',
    report: 'Bericht',
    roster: 'Namensliste',
    trainee: 'Person',
    halves: 'Hälften',
    'second side': 'zweite Seite',
    'line {#1}': 'Zeile {1}',
    'line {#1}, plate': 'Zeile {1}, Blechnummer',
    'line {#1}, name': 'Zeile {1}, Name',
    'line {#1}, bench': 'Zeile {1}, Platz',
    'line {#1}, {=2}': 'Zeile {1}, {2}',
    macros: 'Makroschliffe',
    readers: 'Lesende',
    measures: 'Maße',
  },
  ',',
);

/** The message of an `InputError` in German. */
export function refusal(message: string): string {
  return refusalSaid(message, {
    book: phrase,
    place: places,
    line: (where, found, allowed) => `${where === '' ? '' : `${where}: `}gefunden: ${found}; zulässig: ${allowed}`,
  });
}

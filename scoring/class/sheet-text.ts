import { type Clean, clean } from '../schema/clean.ts';
import type { Language } from '../words/language.ts';
import { said } from '../words/names.ts';
import { wordsIn } from '../words/words.ts';
import { type ClassWords, classWords } from './class-words.ts';
import type { Entry, TraineeRow } from './entry.ts';
import { faultName } from './faults.ts';
import { FIRST_RULE } from './first-three.ts';
import type { ClassSheet } from './sheet.ts';
import { WEEKS_RULE, weekTable } from './weeks.ts';
import { classWordsIn, faultSaid } from './words-in.ts';

/** Heading of the class table. */
export const TABLE_HEAD = [
  'trainee',
  'exercise',
  'device',
  'attempts',
  'within',
  'first',
  'latest',
  'median of last 5',
  'spread',
  'common fault',
] as const;

/** Cells of a row, in the order of the heading. */
export function tableCells(row: TraineeRow, language: Language = 'en'): string[] {
  const w = classWordsIn(language);
  return [
    row.trainee,
    row.exercise ?? w.none,
    wordsIn(language).phrase(row.device),
    String(row.attempts.length),
    String(row.within),
    numberAndVerdict(row.first, w),
    numberAndVerdict(row.latest, w),
    row.median === null ? '–' : wordsIn(language).said(row.median),
    row.spread === null ? '–' : w.span(row.spread.from, row.spread.to),
    row.commonFault === null ? w.none : faultSaid(row.commonFault, language),
  ];
}

function numberAndVerdict(e: Entry, w: ClassWords = classWords): string {
  const { score, verdict } = e.scored.result;
  return score === null ? w.verdict[verdict] : `${score}, ${w.verdict[verdict]}`;
}

/** What of a class is said above the table. */
export function headline(sheet: ClassSheet, language: Language = 'en'): string {
  const w = classWordsIn(language);
  const days =
    sheet.days === null
      ? ''
      : sheet.days.from === sheet.days.to
        ? `, ${sheet.days.from}`
        : `, ${w.span(sheet.days.from, sheet.days.to)}`;
  const left = [
    ...(sheet.notCounted.length > 0 ? [w.notCounted(sheet.notCounted.length)] : []),
    ...(sheet.bad.length > 0 ? [w.unread(sheet.bad.length)] : []),
  ];
  return `${w.trainees(sheet.trainees)}, ${w.files(sheet.files)}${days}: ${w.counted(sheet.counted)}${left.length > 0 ? `, ${left.join(', ')}` : ''}.`;
}

/** What stands in place of those to see first where there are none. */
export function nobodyFirst(sheet: ClassSheet, language: Language = 'en'): string {
  const { seeFirst } = classWordsIn(language);
  return sheet.trainees === 0 ? seeFirst.nobody : seeFirst.none;
}

/** What the class has in common, in a sentence; of one trainee alone, what comes back. */
export function commonSaid(sheet: ClassSheet, language: Language = 'en'): string {
  const w = classWordsIn(language);
  const common = sheet.commonFault;
  if (sheet.trainees === 0) return w.noneCounts;
  if (sheet.trainees === 1)
    return common === null ? w.oneWithout : w.oneOften(faultSaid(common.code, language), w.attempts(common.attempts));
  if (common === null) return w.noCommon;
  return w.common(faultSaid(common.code, language), w.trainees(common.trainees), w.attempts(common.attempts));
}

/** The sheet as text. */
export function sheetText(sheet: ClassSheet): string {
  return sheetLines(sheet).join('\n');
}

/** The sheet line by line. */
export function sheetLines(sheet: ClassSheet): Clean[] {
  return [
    headline(sheet),
    commonSaid(sheet),
    '',
    sheet.firstThree.length === 0 ? nobodyFirst(sheet) : 'See first:',
    ...sheet.firstThree.flatMap((f, i) => [
      `  ${i + 1}. ${f.trainee} (${f.device}): ${f.fault}, ${f.times} of the last ${f.of}. ${f.says}`,
      `     cut ${f.entry.file}${f.y_mm === null ? '' : ` at ${said(f.y_mm)} mm`}${f.line === null ? '' : `: ${f.line}`}`,
    ]),
    ...(sheet.firstThree.length === 0 ? [] : [`  ${FIRST_RULE}`]),
    '',
    ...columns([TABLE_HEAD, ...sheet.rows.map((row) => tableCells(row))]),
    '',
    ...weekLines(sheet),
    ...listed('Kept, not counted:', sheet.notCounted, (e) => e.notCounted),
    ...listed('Counted, though something does not fit:', sheet.mismatched, (e) => e.mismatches),
    ...listed('No trainee in the file name:', sheet.unnamed, (e) => [
      numberAndVerdict(e),
      ...(e.fault === null ? [] : [faultName(e.fault.code)]),
    ]),
    ...(sheet.bad.length === 0
      ? []
      : ['Could not be read:', ...sheet.bad.flatMap((b) => b.reason.split('\n').map((line) => `  ${line}`))]),
    ...(sheet.others.length === 0
      ? []
      : ['No attempts, left alone:', ...sheet.others.map((o) => `  ${o.file}: ${classWords.kinds[o.kind]}`)]),
    ...(sheet.folders.length === 0 ? [] : [`Not looked into: ${sheet.folders.map((f) => `${f}/`).join(', ')}`]),
    ...sheet.notes,
  ].map(clean);
}

/** Change over weeks, where there is more than one. */
function weekLines({ rows }: ClassSheet): string[] {
  const table = weekTable(rows);
  if (table === null) return [];
  return [`Change over weeks. ${WEEKS_RULE}`, ...columns([table.head, ...table.rows]), ''];
}

/** Cells padded into columns. */
function columns(rows: readonly (readonly string[])[]): string[] {
  const clear = rows.map((row) => row.map(clean));
  const widths = clear[0]!.map((_, c) => Math.max(...clear.map((row) => row[c]!.length)));
  return clear.map((row) =>
    row
      .map((cell, c) => cell.padEnd(widths[c]!))
      .join('  ')
      .trimEnd(),
  );
}

function listed(title: string, entries: readonly Entry[], what: (e: Entry) => string[]): string[] {
  return entries.length === 0 ? [] : [title, ...entries.map((e) => `  ${e.file}: ${what(e).join('; ')}`)];
}

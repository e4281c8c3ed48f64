import { type Clean, clean } from '../schema/clean.ts';
import { said } from '../words/names.ts';
import type { Entry, TraineeRow } from './entry.ts';
import { faultName } from './faults.ts';
import { FIRST_RULE } from './first-three.ts';
import type { ClassSheet } from './sheet.ts';
import { WEEKS_RULE, weekTable } from './weeks.ts';

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
export function tableCells(row: TraineeRow): string[] {
  return [
    row.trainee,
    row.exercise ?? 'none',
    row.device,
    String(row.attempts.length),
    String(row.within),
    numberAndVerdict(row.first),
    numberAndVerdict(row.latest),
    row.median === null ? '–' : said(row.median),
    row.spread === null ? '–' : `${row.spread.from} to ${row.spread.to}`,
    row.commonFault === null ? 'none' : faultName(row.commonFault),
  ];
}

function numberAndVerdict(e: Entry): string {
  const { score, verdict } = e.scored.result;
  return score === null ? verdict : `${score}, ${verdict}`;
}

/** What of a class is said above the table. */
export function headline(sheet: ClassSheet): string {
  const days =
    sheet.days === null
      ? ''
      : sheet.days.from === sheet.days.to
        ? `, ${sheet.days.from}`
        : `, ${sheet.days.from} to ${sheet.days.to}`;
  const left = [
    ...(sheet.notCounted.length > 0 ? [`${sheet.notCounted.length} kept and not counted`] : []),
    ...(sheet.bad.length > 0 ? [`${sheet.bad.length} that could not be read`] : []),
  ];
  return `${count(sheet.trainees, 'trainee')}, ${count(sheet.files, 'file')}${days}: ${sheet.counted} counted${left.length > 0 ? `, ${left.join(', ')}` : ''}.`;
}

/** What stands in place of those to see first where there are none. */
export function nobodyFirst(sheet: ClassSheet): string {
  return sheet.trainees === 0 ? 'Nobody to see first yet.' : 'Nobody has a fault to be seen first.';
}

/** What the class has in common, in a sentence; of one trainee alone, what comes back. */
export function commonSaid(sheet: ClassSheet): string {
  const common = sheet.commonFault;
  if (sheet.trainees === 0) return 'No attempt counts, so nothing can be said of a class.';
  if (sheet.trainees === 1)
    return common === null
      ? 'One trainee, without a fault among the latest attempts.'
      : `One trainee. Most often first among the latest attempts: ${faultName(common.code)}, ${count(common.attempts, 'attempt')}.`;
  if (common === null) return 'No two trainees share a fault among their latest attempts.';
  return `Common fault of the class: ${faultName(common.code)}, ${count(common.trainees, 'trainee')}, ${count(common.attempts, 'attempt')} among the latest.`;
}

function count(n: number, noun: string): string {
  return `${n} ${noun}${n === 1 ? '' : 's'}`;
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
    ...columns([TABLE_HEAD, ...sheet.rows.map(tableCells)]),
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

import { csvText } from '../schema/csv.ts';
import type { TraineeRow } from './entry.ts';
import { faultName } from './faults.ts';
import type { ClassSheet } from './sheet.ts';

/** A row of the class table as it goes into a spreadsheet. */
function flat(row: TraineeRow): Record<(typeof COLUMNS)[number], string | number | null> {
  return {
    trainee: row.trainee,
    exercise: row.exercise,
    device: row.device,
    attempts: row.attempts.length,
    within: row.within,
    without_verdict: row.withoutVerdict,
    first_verdict: row.first.scored.result.verdict,
    first_trend_number: row.first.scored.result.score,
    latest_verdict: row.latest.scored.result.verdict,
    latest_trend_number: row.latest.scored.result.score,
    median_of_last_five: row.median,
    lowest_of_last_five: row.spread?.from ?? null,
    highest_of_last_five: row.spread?.to ?? null,
    common_fault: row.commonFault === null ? null : faultName(row.commonFault),
    latest_file: row.latest.file,
  };
}

const COLUMNS = [
  'trainee',
  'exercise',
  'device',
  'attempts',
  'within',
  'without_verdict',
  'first_verdict',
  'first_trend_number',
  'latest_verdict',
  'latest_trend_number',
  'median_of_last_five',
  'lowest_of_last_five',
  'highest_of_last_five',
  'common_fault',
  'latest_file',
] as const;

/** The class table as CSV, safe for spreadsheets. */
export function sheetCsv(sheet: ClassSheet): string {
  return csvText(sheet.rows.map(flat), COLUMNS);
}

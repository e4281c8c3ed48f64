import { cleanJson } from '../schema/clean.ts';
import { csvText } from '../schema/csv.ts';
import { measureName } from '../words/names.ts';
import { nameOf, type Scored } from './scored.ts';

/** One attempt in one flat row; lengths mm, times s. Null: not there to read. */
interface Row {
  file: string;
  date: string | null;
  bench: string | null;
  trainee: string | null;
  exercise_in_name: string | null;
  attempt: number | null;
  exercise: string | null;
  profile: string | null;
  verdict: string;
  trend_number: number | null;
  first_fix: string | null;
  first_fix_says: string | null;
  first_fix_at_mm: number | null;
  outside: string;
  too_close_to_call: string;
  no_verdict_because: string;
  notes: string;
  not_measured: string;
  root_tied_in_percent: number | null;
  leg_right_mm: number | null;
  leg_left_mm: number | null;
  throat_mm: number | null;
  convexity_mm: number | null;
  undersize_mm: number;
  oversize_mm: number;
  arc_on_front_percent: number | null;
  pause_right_s: number | null;
  pause_left_s: number | null;
  cycles_per_second: number | null;
  width_mm: number | null;
  step_up_mm: number | null;
  travel_mmps: number | null;
  laid_mm2: number | null;
  holds_mm2: number | null;
  origin: string;
  device: string;
  engine: string;
  check_number: string;
  sha256: string;
}

/** A scored file as a row. Right is plate A (the back plate of a lap), left plate B, as the welder sees them. */
function rowOf(s: Scored): Row {
  const r = s.result;
  const name = nameOf(s);
  const first = r.advice[0] ?? null;
  const lines = (verdict: string): string =>
    r.lines
      .filter((l) => l.verdict === verdict)
      .map((l) => measureName(l.measure, l.side, s.joint))
      .join('; ');
  return {
    file: s.file,
    date: name.date,
    bench: name.bench,
    trainee: name.trainee,
    exercise_in_name: name.exercise,
    attempt: name.attempt,
    exercise: r.exercise?.name ?? null,
    profile: r.profile?.name ?? null,
    verdict: r.verdict,
    trend_number: r.score,
    first_fix: first?.code ?? null,
    first_fix_says: first?.text ?? null,
    first_fix_at_mm: first?.y_mm ?? null,
    outside: lines('outside'),
    too_close_to_call: lines('too close to call'),
    no_verdict_because: r.reasons.map((x) => x.text).join(' '),
    notes: r.notes.map((x) => x.text).join(' '),
    not_measured: r.notMeasured.map((x) => x.what).join('; '),
    root_tied_in_percent: percent(r.bead.rootFusedShare),
    leg_right_mm: r.bead.mean?.legA_mm ?? null,
    leg_left_mm: r.bead.mean?.legB_mm ?? null,
    throat_mm: r.bead.mean?.throat_mm ?? null,
    convexity_mm: r.bead.mean?.convexity_mm ?? null,
    undersize_mm: r.bead.undersize_mm,
    oversize_mm: r.bead.oversize_mm,
    arc_on_front_percent: percent(r.motion.arcOnFrontShare),
    pause_right_s: r.motion.pauseA_s,
    pause_left_s: r.motion.pauseB_s,
    cycles_per_second: r.motion.period_s === null ? null : Math.round(1000 / r.motion.period_s) / 1000,
    width_mm: r.motion.width_mm,
    step_up_mm: r.motion.stepUp_mm,
    travel_mmps: r.motion.travel_mmps,
    laid_mm2: r.process.laid_mm2,
    holds_mm2: r.process.holds_mm2,
    origin: r.origin.kind,
    device: r.device.kind,
    engine: r.engine,
    check_number: r.stateHash,
    sha256: s.sha256,
  };
}

function percent(share: number | null): number | null {
  return share === null ? null : Math.round(1000 * share) / 10;
}

/** One row an attempt as CSV with a heading; text that a spreadsheet would take for a formula is disarmed. */
export function rowsCsv(scored: readonly Scored[]): string {
  return csvText(rowsOf(scored), COLUMNS);
}

/** The same rows, one JSON object a line. */
export function rowsJsonl(scored: readonly Scored[]): string {
  return rowsOf(scored)
    .map((row) => `${cleanJson(row)}\n`)
    .join('');
}

/** The rows themselves. */
export function rowsOf(scored: readonly Scored[]): Row[] {
  return scored.map(rowOf);
}

const COLUMNS: readonly (keyof Row)[] = [
  'file',
  'date',
  'bench',
  'trainee',
  'exercise_in_name',
  'attempt',
  'exercise',
  'profile',
  'verdict',
  'trend_number',
  'first_fix',
  'first_fix_says',
  'first_fix_at_mm',
  'outside',
  'too_close_to_call',
  'no_verdict_because',
  'notes',
  'not_measured',
  'root_tied_in_percent',
  'leg_right_mm',
  'leg_left_mm',
  'throat_mm',
  'convexity_mm',
  'undersize_mm',
  'oversize_mm',
  'arc_on_front_percent',
  'pause_right_s',
  'pause_left_s',
  'cycles_per_second',
  'width_mm',
  'step_up_mm',
  'travel_mmps',
  'laid_mm2',
  'holds_mm2',
  'origin',
  'device',
  'engine',
  'check_number',
  'sha256',
];

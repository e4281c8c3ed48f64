/**
 * What a single file says against itself: evidence, never a judgement of a person. Whoever rewrites all of a file with the program in hand
 * can make one that says nothing here; scoring/README.md says so.
 */
import { defaultWeave, ENGINE_VERSION, noFaults, weaveHand } from '../../engine/index.ts';
import type { AttemptRecording, Exercise } from '../schema/index.ts';
import { type HandPath, pathOf } from './path.ts';
import { twinOf } from './twins.ts';

/** Cell size the bench welds with; another one is a study. */
const BENCH_CELL_MM = 0.75;
/** The spread of a hand's beat, share of its mean; timed movements of people spread by 3 to 6 % (Wing & Kristofferson 1973, from memory). */
const LEAST_BEAT_SPREAD = 0.004;
const LEAST_INTERVALS = 12;

export type Finding =
  /** A hand's file that carries the robot's weave or faults. */
  | { code: 'robot-left-in-origin'; fields: ('weave' | 'faults')[] }
  | { code: 'origin-and-device-differ'; origin: string; device: string }
  /** A column the device cannot measure, and how far it varies (mm or degrees). */
  | { code: 'unmeasured-varies'; column: 'tip' | 'work' | 'travel'; device: string; spread: number }
  | { code: 'no-check-number' }
  | { code: 'study-cell'; cell_mm: number; bench_mm: number }
  | { code: 'other-engine'; engine: string; here: string }
  /** The aim follows the exercise's own demonstration. */
  | { code: 'follows-demonstration'; apart_mm: number; together_s: number; mirrored: boolean }
  /** Root crossings more even than any hand's, as spread over mean. */
  | { code: 'machine-beat'; spread: number; intervals: number };

export type FindingCode = Finding['code'];

/** Everything one file says against itself; empty for an honest one. */
export function findingsIn(recording: AttemptRecording, exercise: Exercise | null): Finding[] {
  const { origin, device } = recording;
  const found: Finding[] = [];
  const left = (['weave', 'faults'] as const).filter((field) => origin[field] !== undefined);
  if (origin.kind === 'hand' && left.length > 0) found.push({ code: 'robot-left-in-origin', fields: left });
  if ((origin.kind === 'robot') !== (device.kind === 'robot'))
    found.push({ code: 'origin-and-device-differ', origin: origin.kind, device: device.kind });
  found.push(...varying(recording));
  if (recording.stateHash === null) found.push({ code: 'no-check-number' });
  const { cell_mm } = recording.simulation;
  if (cell_mm !== BENCH_CELL_MM) found.push({ code: 'study-cell', cell_mm, bench_mm: BENCH_CELL_MM });
  if (recording.engine !== ENGINE_VERSION)
    found.push({ code: 'other-engine', engine: recording.engine, here: ENGINE_VERSION });
  // A robot's file says that it is one; what follows is about files that say they are a hand's.
  if (origin.kind === 'hand') found.push(...tooGood(pathOf(recording.poses), exercise));
  return found;
}

function varying({ poses, device }: AttemptRecording): Finding[] {
  const columns = [
    ['tip', device.measures.tipToWork, 100],
    ['work', device.measures.workAngle, 10],
    ['travel', device.measures.travelAngle, 10],
  ] as const;
  return columns.flatMap(([column, measured, quanta]): Finding[] => {
    if (measured) return [];
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    for (const value of poses[column]) {
      low = Math.min(low, value);
      high = Math.max(high, value);
    }
    return high > low
      ? [{ code: 'unmeasured-varies', column, device: device.kind, spread: (high - low) / quanta }]
      : [];
  });
}

function tooGood(hand: HandPath, exercise: Exercise | null): Finding[] {
  const found: Finding[] = [];
  if (exercise !== null) {
    const shown = [...weaveHand({ ...defaultWeave(), ...exercise.demonstration }, noFaults())];
    const twin = twinOf(
      hand,
      pathOf({
        u: shown.map((p) => 100 * p.u_mm),
        y: shown.map((p) => 100 * p.y_mm),
        trigger: shown.map((p) => (p.trigger ? 1 : 0)),
      }),
    );
    // A straight run held still is no evidence: only a weave can be followed too well.
    if (twin !== null && exercise.demonstration.pattern !== 'straight') {
      const { apart_mm, together_s, mirrored } = twin;
      found.push({ code: 'follows-demonstration', apart_mm, together_s, mirrored });
    }
  }
  const beat = beatOf(hand.crossings);
  if (beat !== null && beat.intervals >= LEAST_INTERVALS && beat.spread < LEAST_BEAT_SPREAD)
    found.push({ code: 'machine-beat', ...beat });
  return found;
}

/** Spread of whole cycles (every second crossing, so that uneven toes do not count) over their mean. */
function beatOf(crossings: Float32Array): { spread: number; intervals: number } | null {
  const periods: number[] = [];
  for (let n = 2; n < crossings.length; n++) periods.push(crossings[n]! - crossings[n - 2]!);
  if (periods.length < 2) return null;
  const mean = periods.reduce((sum, p) => sum + p, 0) / periods.length;
  const variance = periods.reduce((sum, p) => sum + (p - mean) * (p - mean), 0) / periods.length;
  return { spread: Math.sqrt(variance) / mean, intervals: periods.length };
}

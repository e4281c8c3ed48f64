/**
 * What a single file says against itself: evidence, never a judgement of a person. Whoever rewrites all of a file with the program in hand
 * can make one that says nothing here; scoring/README.md says so.
 */
import { defaultWeave, noFaults, weaveHand } from '../../engine/index.ts';
import type { Exercise } from '../schema/exercise.ts';
import type { AttemptRecording } from '../schema/recording.ts';
import type { FoundNote } from './found.ts';
import { type MotionPath, motionPath } from './motion-path.ts';
import { twinOf } from './twins.ts';

/** Cell size the bench welds with; another one is a study. */
const BENCH_CELL_MM = 0.75;
/** The spread of a hand's beat, share of its mean; timed movements of people spread by 3 to 6 % (Wing & Kristofferson 1973, from memory). */
const LEAST_BEAT_SPREAD = 0.004;
const LEAST_INTERVALS = 12;

/** Everything one file says against itself; empty for an honest one. */
export function findingsIn(recording: AttemptRecording, exercise: Exercise | null): FoundNote[] {
  const { origin } = recording;
  const found: FoundNote[] = [];
  const left = (['weave', 'faults'] as const).filter((field) => origin[field] !== undefined);
  if (origin.kind === 'hand' && left.length > 0) found.push({ code: 'robot-left-in-origin', data: { fields: left } });
  found.push(...varying(recording));
  if (recording.stateHash === null) found.push({ code: 'no-check-number', data: {} });
  const { cell_mm } = recording.simulation;
  if (cell_mm !== BENCH_CELL_MM) found.push({ code: 'study-cell', data: { cell_mm, bench_mm: BENCH_CELL_MM } });
  // A robot's file says that it is one; what follows is about files that say they are a hand's.
  if (origin.kind === 'hand') found.push(...tooGood(motionPath(recording.poses), exercise));
  return found;
}

function varying({ poses, device }: AttemptRecording): FoundNote[] {
  const columns = [
    ['tip', device.measures.tipToWork, 100],
    ['work', device.measures.workAngle, 10],
    ['travel', device.measures.travelAngle, 10],
  ] as const;
  return columns.flatMap(([column, measured, quanta]): FoundNote[] => {
    if (measured) return [];
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    for (const value of poses[column]) {
      low = Math.min(low, value);
      high = Math.max(high, value);
    }
    return high > low
      ? [{ code: 'unmeasured-varies', data: { column, device: device.kind, spread: (high - low) / quanta } }]
      : [];
  });
}

function tooGood(hand: MotionPath, exercise: Exercise | null): FoundNote[] {
  const found: FoundNote[] = [];
  if (exercise !== null) {
    // Its weave alone: short arcs into the crater would have to fall together in time as well, and hide a copy that is a cycle late.
    const shown = [...weaveHand({ ...defaultWeave(), ...exercise.demonstration, reStrikes: 0 }, noFaults())];
    const twin = twinOf(
      hand,
      motionPath({
        u: shown.map((p) => 100 * p.u_mm),
        y: shown.map((p) => 100 * p.y_mm),
        trigger: shown.map((p) => (p.trigger ? 1 : 0)),
      }),
    );
    // A straight run held still is no evidence: only a weave can be followed too well.
    if (twin !== null && exercise.demonstration.pattern !== 'straight') {
      const { apart_mm, together_s, mirrored } = twin;
      found.push({ code: 'follows-demonstration', data: { apart_mm, together_s, mirrored } });
    }
  }
  const beat = beatOf(hand.crossings);
  if (beat !== null && beat.intervals >= LEAST_INTERVALS && beat.spread < LEAST_BEAT_SPREAD)
    found.push({ code: 'machine-beat', data: beat });
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

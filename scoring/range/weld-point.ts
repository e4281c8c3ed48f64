import { handOfAmount, metalLaid_mm2, noFaults, recordPoses, weaveHand, wireState } from '../../engine/index.ts';
import type { Exercise } from '../schema/exercise.ts';
import { recordingSchema } from '../schema/recording.ts';
import type { LineVerdict, Result, Verdict } from '../schema/result.ts';
import { scoreAttempt } from '../score.ts';
import type { RangePlan, RangePoint } from './plan.ts';

/** What the robot hand made of one combination. */
export interface RangeResult {
  index: number;
  /** Steady hand. */
  verdict: Verdict;
  root: LineVerdict | 'not read';
  rootFusion_mm: number | null;
  convexity_mm: number | null;
  size_mm: number | null;
  laid_mm2: number;
  current_A: number;
  regime: string;
  /** First line outside, else first too close to call, or the reason against judging; empty when every line is within. */
  because: string;
  /** Largest hand amount tried at which every seed still holds as the steady hand does; null where the steady hand itself does not. */
  handHolds: number | null;
}

/** Within, or nothing surely outside: what a working range is made of, and its uncertain edge. */
export function holds(verdict: Verdict): boolean {
  return verdict === 'within';
}

/** Welds one combination: the steady hand, then less steady ones as long as they hold. Same plan and point, same digits. */
export function weldPoint(plan: RangePlan, point: RangePoint): RangeResult {
  const { exercise } = point;
  const steady = weld(plan, exercise, 0, 1);
  let handHolds: number | null = null;
  if (holds(steady.verdict)) {
    handHolds = 0;
    for (const amount of plan.handAmounts) {
      if (amount === 0) continue;
      if (!plan.seeds.every((seed) => holds(weld(plan, exercise, amount, seed).verdict))) break;
      handHolds = amount;
    }
  }
  const wire = wireState(exercise.process, point.at.tipToWork_mm);
  const root = steady.lines.find((l) => l.measure === 'root fusion');
  const { worst } = steady.bead;
  return {
    index: point.index,
    verdict: steady.verdict,
    root: root?.verdict ?? 'not read',
    rootFusion_mm: worst?.rootFusion_mm ?? null,
    convexity_mm: worst?.convexity_mm ?? null,
    size_mm: worst?.size_mm ?? null,
    laid_mm2: Math.round(metalLaid_mm2(exercise.process, point.at.travel_mmps) * 100) / 100,
    current_A: Math.round(wire.current_A * 10) / 10,
    regime: wire.regime,
    because: because(steady),
    handHolds,
  };
}

function because(r: Result): string {
  const reason = r.reasons[0];
  if (reason !== undefined) return reason.code;
  const line = r.lines.find((l) => l.verdict === 'outside') ?? r.lines.find((l) => l.verdict === 'too close to call');
  if (line === undefined) return '';
  return `${line.measure}${line.side === null ? '' : line.side === 'A' ? ' right' : ' left'}`;
}

function weld(plan: RangePlan, exercise: Exercise, amount: number, seed: number): Result {
  const faults = amount > 0 ? handOfAmount(seed, amount) : noFaults(seed);
  const recording = recordPoses(
    {
      simulation: { joint: exercise.joint, process: exercise.process, cell_mm: plan.cell_mm },
      origin: { kind: 'robot', weave: exercise.demonstration, faults },
      device: { kind: 'robot', measures: { tipToWork: true, workAngle: true, travelAngle: true }, scale: 1 },
      aids: { pacer: false, beat: false, toeMarks: false, plainView: false, handRig: null },
      exercise,
    },
    weaveHand(exercise.demonstration, faults),
  );
  return scoreAttempt(recordingSchema.parse(recording));
}

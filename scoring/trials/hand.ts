import { POSE_RATE_HZ, poses } from '../../engine/index.ts';
import { type Span, traceOfHand } from '../attempt/trace.ts';
import { type Turn, turnsOf } from '../measures/hand/swings.ts';
import { toeVisits } from '../measures/hand/toes.ts';
import { travel } from '../measures/hand/travel.ts';
import { mean } from '../measures/statistics.ts';
import type { AttemptRecording } from '../schema/recording.ts';

/** A stay at a toe, as samples of the recording. */
interface Stay {
  toe: 'A' | 'B';
  from: number;
  to: number;
}

/** What a recorded hand did, read from its poses alone: enough to change one thing about it. */
export interface RecordedHand {
  /** First and one past the last sample with the trigger pulled; null: never pulled. */
  span: Span | null;
  turns: readonly Turn[];
  stays: readonly Stay[];
  /** Middle and half width of the weave across the welder's view, mm; half is 0 for a straight run. */
  centre_mm: number;
  half_mm: number;
  /** Samples of one whole cycle; 0 for a straight run. */
  period: number;
  travel_mmps: number | null;
}

/** Fewer turns than this are no weave to change. */
const LEAST_TURNS = 6;

/** Reads the hand from the pose columns. The arc is taken to burn while the trigger is pulled. */
export function readRecordedHand(recording: AttemptRecording): RecordedHand {
  const trace = traceOfHand(poses(recording));
  const on = recording.poses.trigger;
  const first = on.indexOf(1);
  const last = on.lastIndexOf(1);
  const straight = { turns: [], stays: [], centre_mm: 0, half_mm: 0, period: 0 };
  if (first < 0) return { span: null, ...straight, travel_mmps: null };
  const span = { from: first, to: last + 1 };
  const { travel_mmps } = travel(trace, span);
  const turns = turnsOf(trace, span);
  if (turns.length < LEAST_TURNS) return { span, ...straight, travel_mmps };
  const visits = toeVisits(trace, turns, () => 1);
  const outer = (toe: 'A' | 'B'): number => mean(visits.filter((v) => v.toe === toe).map((v) => v.reach_mm)) ?? 0;
  const a = outer('A');
  const b = -outer('B');
  const whole = turns.length - 1 - ((turns.length - 1) % 2);
  return {
    span,
    turns,
    stays: visits.map((v) => ({
      toe: v.toe,
      from: Math.round(v.from_s * POSE_RATE_HZ),
      to: Math.round(v.to_s * POSE_RATE_HZ),
    })),
    centre_mm: (a + b) / 2,
    half_mm: (a - b) / 2,
    period: Math.round((2 * (turns[whole]!.at - turns[0]!.at)) / whole),
    travel_mmps,
  };
}

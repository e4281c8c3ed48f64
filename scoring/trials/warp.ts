import type { AttemptRecording } from '../schema/recording.ts';
import type { RecordedHand } from './hand.ts';

export type Columns = AttemptRecording['poses'];

/** A stretch of samples that is to take another time. */
export interface Stretch {
  from: number;
  to: number;
  /** New length, samples. */
  length: number;
}

/** Least share of its time a crossing keeps when a toe takes the rest. */
const CROSSING_KEEPS = 0.5;
/** A stay cut short keeps so many samples: the hand still turns there. */
const STAY_KEEPS = 2;

/**
 * Waits longer (or shorter) at one toe. The time comes from the crossings either side, so that beat and climb stay as they were; what
 * they cannot give lengthens the cycle.
 * @param by samples to add to each stay
 */
export function waiting(hand: RecordedHand, toe: 'A' | 'B', by: number): Stretch[] {
  const out: Stretch[] = [];
  const { stays } = hand;
  for (let k = 1; k + 1 < stays.length; k++) {
    const stay = stays[k]!;
    if (stay.toe !== toe) continue;
    const before = stays[k - 1]!;
    const after = stays[k + 1]!;
    const length = stay.to - stay.from;
    const more = by >= 0 ? by : -Math.min(-by, Math.max(0, length - STAY_KEEPS));
    const gives = (way: number): number => Math.min(more / 2, (1 - CROSSING_KEEPS) * way);
    out.push({ from: before.to, to: stay.from, length: stay.from - before.to - gives(stay.from - before.to) });
    out.push({ from: stay.from, to: stay.to, length: length + more });
    out.push({ from: stay.to, to: after.from, length: after.from - stay.to - gives(after.from - stay.to) });
  }
  return out;
}

/** Plays the poses with some stretches longer or shorter, straight between samples. No stretch changed: the same columns. */
export function warp(columns: Columns, stretches: readonly Stretch[]): Columns {
  const source: number[] = [0];
  const target: number[] = [0];
  const mark = (s: number, t: number): void => {
    source.push(s);
    target.push(t);
  };
  let shift = 0;
  for (const s of stretches) {
    if (s.to <= s.from) continue;
    mark(s.from, s.from + shift);
    shift += s.length - (s.to - s.from);
    mark(s.to, s.to + shift);
  }
  const n = columns.u.length;
  mark(n - 1, n - 1 + shift);
  const out = emptyColumns();
  let seg = 0;
  const count = Math.floor(n - 1 + shift + 1e-9);
  for (let m = 0; m <= count; m++) {
    while (seg + 2 < target.length && m >= target[seg + 1]!) seg++;
    const width = target[seg + 1]! - target[seg]!;
    const at =
      width > 0 ? source[seg]! + ((m - target[seg]!) * (source[seg + 1]! - source[seg]!)) / width : source[seg]!;
    pushBetween(out, columns, Math.min(n - 1, Math.max(0, at)));
  }
  return out;
}

export function emptyColumns(): Columns {
  return { u: [], y: [], tip: [], work: [], travel: [], trigger: [] };
}

const MOVING = ['u', 'y', 'tip', 'work', 'travel'] as const;

function pushBetween(out: Columns, columns: Columns, at: number): void {
  const low = Math.floor(at + 1e-9);
  const high = Math.min(columns.u.length - 1, low + 1);
  const f = Math.max(0, at - low);
  for (const name of MOVING) {
    const from = columns[name][low]!;
    out[name].push(whole(from + f * (columns[name][high]! - from)));
  }
  out.trigger.push(columns.trigger[low]!);
}

/** Pose columns are whole numbers of their quanta, and never -0. */
export function whole(x: number): number {
  return Math.round(x) + 0;
}

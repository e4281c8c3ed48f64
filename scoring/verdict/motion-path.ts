import { type Rhythm, rhythmOf } from './rhythm.ts';

/** A hand's motion as numbers that two files can be compared by: aim across and up the joint while the trigger is down, 20 times a second. */

/** Poses as a recording keeps them: whole hundredths of a millimetre, one each 1/100 s. */
export interface PoseColumns {
  u: readonly number[];
  y: readonly number[];
  trigger: readonly number[];
}

/** Where the arc was, on one time base: what copies of a motion are found by. */
export interface MotionPath {
  /** Hundredths of a millimetre, one entry each 1/20 s of trigger time. */
  u: Int16Array;
  y: Int16Array;
  /** Sums of the entries before each, one more than there are entries: the mean of any stretch by two look-ups. */
  sumU: Float64Array;
  sumY: Float64Array;
  /** Times at which the aim crossed the middle of its own weave, s of trigger time. */
  crossings: Float32Array;
  /** Which of its swings are long and which short; see rhythm.ts. */
  rhythm: Rhythm;
}

const EVERY = 5;
/** Samples a second. */
export const PATH_RATE = 100 / EVERY;
/** The aim must have been this far out for a change of side to count: tremor round a straight run's middle is no weave. */
const LEAST_SWING = 50;
/** Farther off than any joint is long; keeps a hostile file inside 16 bits. */
const FARTHEST = 32_767;

export function motionPath({ u, y, trigger }: PoseColumns): MotionPath {
  const at: number[] = [];
  let burning = 0;
  for (let n = 0; n < trigger.length; n++) if (trigger[n] === 1 && burning++ % EVERY === 0) at.push(n);
  const column = (values: readonly number[]): Int16Array =>
    Int16Array.from(at, (n) => Math.max(-FARTHEST, Math.min(FARTHEST, Math.round(values[n]!))));
  return withCrossings(column(u), column(y));
}

/** The path as text for a row that is kept: four hexadecimal digits a number, across first. */
export function pathText({ u, y }: MotionPath): string {
  const digits = (v: number): string => (v & 0xffff).toString(16).padStart(4, '0');
  return `${Array.from(u, digits).join('')}${Array.from(y, digits).join('')}`;
}

/** Back from `pathText`. */
export function pathOfText(text: string): MotionPath {
  const numbers = Int16Array.from({ length: text.length / 4 }, (_, n) =>
    Number.parseInt(text.slice(4 * n, 4 * n + 4), 16),
  );
  const half = numbers.length / 2;
  return withCrossings(numbers.slice(0, half), numbers.slice(half));
}

function withCrossings(u: Int16Array, y: Int16Array): MotionPath {
  let sum = 0;
  for (const value of u) sum += value;
  const middle = u.length === 0 ? 0 : sum / u.length;
  const crossings = crossingsOf(u, () => middle);
  return {
    u,
    y,
    sumU: sumsOf(u),
    sumY: sumsOf(y),
    crossings: Float32Array.from(crossings),
    rhythm: rhythmOf(crossingsOf(u, lineThrough(u))),
  };
}

/** The last change of sign before the aim was clearly on the other side is the crossing, placed between two samples. */
function crossingsOf(u: Int16Array, middle: (n: number) => number): number[] {
  const times: number[] = [];
  let changed = 0;
  let side = 0;
  for (let n = 1; n < u.length; n++) {
    const before = u[n - 1]! - middle(n - 1);
    const now = u[n]! - middle(n);
    if (now !== 0 && Math.sign(now) !== Math.sign(before)) changed = (n - 1 + before / (before - now)) / PATH_RATE;
    if (Math.abs(now) <= LEAST_SWING || Math.sign(now) === side) continue;
    if (side !== 0) times.push(changed);
    side = Math.sign(now);
  }
  return times;
}

/** Where a weave that wanders evenly to one side has its middle: the straight line closest to it. */
function lineThrough(u: Int16Array): (n: number) => number {
  const centre = (u.length - 1) / 2;
  let [sum, slope, spread] = [0, 0, 0];
  for (let n = 0; n < u.length; n++) {
    sum += u[n]!;
    slope += (n - centre) * u[n]!;
    spread += (n - centre) * (n - centre);
  }
  const mean = u.length === 0 ? 0 : sum / u.length;
  const each = spread === 0 ? 0 : slope / spread;
  return (n) => mean + each * (n - centre);
}

function sumsOf(values: Int16Array): Float64Array {
  const sums = new Float64Array(values.length + 1);
  for (let n = 0; n < values.length; n++) sums[n + 1] = sums[n]! + values[n]!;
  return sums;
}

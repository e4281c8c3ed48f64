/**
 * Near-twins: is one hand's motion another one's, shifted in place or time, mirrored, a little noise added, or with a stretch of it spliced in?
 * By distance between the two, not by equality of the files; stretched in time, widened or drifting, by its rhythm. What neither shows is said in
 * scoring/README.md: both at once with noise, or a stranger's own hand.
 */
import { type MotionPath, PATH_RATE } from './motion-path.ts';
import { type SameRhythm, sameRhythm } from './rhythm.ts';

export interface Twin {
  kind: 'whole' | 'stretch';
  /** Root mean square distance of the two aims where they run together, mm. */
  apart_mm: number;
  /** How long they run together, s of trigger time. */
  together_s: number;
  mirrored: boolean;
  /** The other one's clock minus this one's where they agree, s. */
  later_s: number;
  /** Its place minus this one's, mm. */
  moved: { u_mm: number; y_mm: number };
}

/** Two files with one motion: by its places, or by its rhythm alone where the places were changed. */
export type Copy = Twin | SameRhythm;

/**
 * Two goes of one steady hand at one weave differ by several tenths of a millimetre in place and drift apart in time within a few cycles
 * (timed movements of one hand spread by 3 to 6 % an interval: Wing & Kristofferson 1973, from memory). Closer than this over the whole
 * attempt is the same motion.
 */
const WHOLE_APART_MM = 0.35;
/** A stretch has to agree better, because there are many stretches to compare. */
const STRETCH_APART_MM = 0.2;
const WHOLE_SHARE = 0.8;
const MOST_SHIFT_S = 3;
const LEAST_S = 6;
/** Crossings in a row that have to fall alike before a stretch is looked at, and how much alike, s. */
const RUN = 8;
/** Paths are in hundredths of a millimetre. */
const PER_MM = 100;
const ALIKE_S = 0.03;

/** In what way `b` is `a`'s motion or was made from it; null where it is not. */
export function copyOf(a: MotionPath, b: MotionPath): Copy | null {
  return twinOf(a, b) ?? sameRhythm(a.rhythm, b.rhythm);
}

/** The closest way in which the places of `b` are `a`'s; null where they are not. */
export function twinOf(a: MotionPath, b: MotionPath): Twin | null {
  return wholeTwin(a, b) ?? stretchTwin(a, b);
}

function wholeTwin(a: MotionPath, b: MotionPath): Twin | null {
  const least = WHOLE_SHARE * Math.min(a.u.length, b.u.length);
  if (least < LEAST_S * PATH_RATE) return null;
  let best: Twin | null = null;
  const most = MOST_SHIFT_S * PATH_RATE;
  for (const mirrored of [false, true])
    for (let shift = -most; shift <= most; shift++) {
      const from = Math.max(0, -shift);
      const count = Math.min(a.u.length - from, b.u.length - from - shift);
      if (count < least) continue;
      const twin = apart(a, b, { from, shift, count, mirrored, within: best?.apart_mm ?? WHOLE_APART_MM });
      if (twin !== null) best = { kind: 'whole', ...twin };
    }
  return best;
}

/** Stretches in which eight crossings in a row fall at the same intervals are candidates; the distance decides. */
function stretchTwin(a: MotionPath, b: MotionPath): Twin | null {
  let best: Twin | null = null;
  for (let i = 0; i + RUN < a.crossings.length; i++)
    for (let k = 0; k + RUN < b.crossings.length; k++) {
      if (!runsAlike(a.crossings, i, b.crossings, k)) continue;
      const shift = Math.round((b.crossings[k]! - a.crossings[i]!) * PATH_RATE);
      const from = Math.max(0, -shift, Math.floor(a.crossings[i]! * PATH_RATE));
      const to = Math.min(a.u.length, b.u.length - shift, Math.ceil(a.crossings[i + RUN]! * PATH_RATE));
      for (const mirrored of [false, true]) {
        const within = best?.apart_mm ?? STRETCH_APART_MM;
        const twin = apart(a, b, { from, shift, count: to - from, mirrored, within });
        if (twin !== null) best = { kind: 'stretch', ...grown(a, b, from, to, shift, mirrored) };
      }
    }
  return best !== null && best.together_s >= LEAST_S ? best : null;
}

function runsAlike(a: Float32Array, i: number, b: Float32Array, k: number): boolean {
  for (let n = 1; n <= RUN; n++) {
    const apart = a[i + n]! - a[i + n - 1]! - (b[k + n]! - b[k + n - 1]!);
    if (Math.abs(apart) > ALIKE_S) return false;
  }
  return true;
}

/** A stretch found, made longer at both ends as long as the two stay together. */
function grown(
  a: MotionPath,
  b: MotionPath,
  from: number,
  to: number,
  shift: number,
  mirrored: boolean,
): Omit<Twin, 'kind'> {
  let low = from;
  let high = to;
  const step = PATH_RATE / 2;
  const fits = (f: number, t: number): boolean =>
    f >= 0 &&
    f + shift >= 0 &&
    t <= a.u.length &&
    t + shift <= b.u.length &&
    apart(a, b, { from: f, shift, count: t - f, mirrored, within: STRETCH_APART_MM }) !== null;
  while (fits(low - step, high)) low -= step;
  while (fits(low, high + step)) high += step;
  return apart(a, b, { from: low, shift, count: high - low, mirrored, within: Number.POSITIVE_INFINITY })!;
}

interface Stretch {
  from: number;
  shift: number;
  count: number;
  mirrored: boolean;
  within: number;
}

/** Distance of the two over a stretch with their mean offset taken out; null where it is not within the bound. */
function apart(
  a: MotionPath,
  b: MotionPath,
  { from, shift, count, mirrored, within }: Stretch,
): Omit<Twin, 'kind'> | null {
  const sign = mirrored ? -1 : 1;
  const du = (sign * between(b.sumU, from + shift, count) - between(a.sumU, from, count)) / count;
  const dy = (between(b.sumY, from + shift, count) - between(a.sumY, from, count)) / count;
  const bound = within * within * PER_MM * PER_MM * count;
  let sum = 0;
  for (let n = from; n < from + count; n++) {
    const u = sign * b.u[n + shift]! - a.u[n]! - du;
    const y = b.y[n + shift]! - a.y[n]! - dy;
    sum += u * u + y * y;
    if (sum > bound) return null;
  }
  return {
    apart_mm: Math.sqrt(sum / count) / PER_MM,
    together_s: count / PATH_RATE,
    mirrored,
    later_s: shift / PATH_RATE,
    moved: { u_mm: (sign * du) / PER_MM, y_mm: dy / PER_MM },
  };
}

/** Sum of a stretch from the sums before each entry; whole numbers, so exact. */
function between(sums: Float64Array, from: number, count: number): number {
  return sums[from + count]! - sums[from]!;
}

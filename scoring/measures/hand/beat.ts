import { POSE_RATE_HZ } from '../../../engine/index.ts';
import type { Span, Trace } from '../../attempt/trace.ts';

/** Frequencies within this share of the beat belong to it. */
const WIDTH = 0.15;

/**
 * **Spectral concentration**: share of the sideways movement's energy within 15 % of the weave's own frequency, 0 to 1. An experienced
 * hand shows one line, beginners spread (student study, few subjects). Pauses put some energy into overtones, so a steady
 * weave with pauses reads about 0.9 and not 1. The slow drift of the aim is taken off first.
 */
export function beatShare(trace: Trace, span: Span, period_s: number): number | null {
  const n = span.to - span.from;
  const u = trace.column('aimU_mm');
  const seconds = n / POSE_RATE_HZ;
  if (n < 8 || !(period_s > 0) || seconds < 3 * period_s) return null;
  const flat = withoutTrend(u, span);
  let total = 0;
  for (const v of flat) total += v * v;
  if (total <= 0) return null;
  const first = Math.max(1, Math.ceil(((1 - WIDTH) * seconds) / period_s));
  const last = Math.min(Math.floor(n / 2) - 1, Math.floor(((1 + WIDTH) * seconds) / period_s));
  let near = 0;
  for (let k = first; k <= last; k++) near += binEnergy(flat, k);
  return Math.min(1, near / total);
}

/** Energy of one frequency bin and its mirror image. */
function binEnergy(values: Float64Array, k: number): number {
  const n = values.length;
  const stepRe = Math.cos((2 * Math.PI * k) / n);
  const stepIm = Math.sin((2 * Math.PI * k) / n);
  let re = 1;
  let im = 0;
  let sumRe = 0;
  let sumIm = 0;
  for (let i = 0; i < n; i++) {
    sumRe += values[i]! * re;
    sumIm += values[i]! * im;
    const next = re * stepRe - im * stepIm;
    im = re * stepIm + im * stepRe;
    re = next;
  }
  return (2 * (sumRe * sumRe + sumIm * sumIm)) / n;
}

function withoutTrend(u: Float64Array, span: Span): Float64Array {
  const n = span.to - span.from;
  let sum = 0;
  let cross = 0;
  let square = 0;
  const middle = (n - 1) / 2;
  for (let i = 0; i < n; i++) sum += u[span.from + i]!;
  for (let i = 0; i < n; i++) {
    cross += (i - middle) * u[span.from + i]!;
    square += (i - middle) * (i - middle);
  }
  const flat = new Float64Array(n);
  for (let i = 0; i < n; i++) flat[i] = u[span.from + i]! - sum / n - (cross / square) * (i - middle);
  return flat;
}

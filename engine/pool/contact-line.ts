import { clamp, cos, DEGREE, sin } from '../numerics/math.ts';
import { lookup, SOLIDUS_C } from '../physics/steel.ts';
import type { State } from '../state/state.ts';
import { wet } from './liquid.ts';

/** A contact line this many columns from its own column's centre stands at the far face of the next, which it has then wetted. */
const WET_AT = 1.5;

/** Slope of the dry solid beyond face `face` of column i, outward positive; 0 where unknown. */
function solidSlope(s: State, q: number, face: number): number {
  const beyond = s.near[4 * q + face]!;
  if (beyond < 0 || s.liquid[beyond]) return 0;
  const d = face < 2 ? s.plan.du : s.plan.dy;
  return clamp((s.w[beyond]! - s.w[q]!) / d, -s.cal.solidSteepest, s.cal.solidSteepest);
}

/** Height of the toe on the solid, of this slope, between the liquid column and the dry column q. */
export function toeHeight(s: State, i: number, q: number, face: number, slope = solidSlope(s, q, face)): number {
  const d = face < 2 ? s.plan.du : s.plan.dy;
  return s.w[q]! + (s.edge[4 * i + face]! - 1) * d * slope;
}

function topTemperature(s: State, i: number): number {
  return lookup(s.heat.table.temperature, s.heat.H[s.surfaceCell[i]!]!);
}

/**
 * Temperature of the solid `advanceReach` beyond a contact line that stands `toe` mm from its column's centre towards the dry column q:
 * measured along the solid's face and read between columns, so that it means the same at any cell.
 */
function plateBeyond(s: State, q: number, face: number, toe: number, slope: number): number {
  const d = face < 2 ? s.plan.du : s.plan.dy;
  const reach = toe + s.cal.advanceReach / Math.sqrt(1 + slope * slope);
  let at = q;
  let beyond = s.near[4 * at + face]!;
  let centre = d;
  while (beyond >= 0 && centre + d <= reach) {
    at = beyond;
    beyond = s.near[4 * at + face]!;
    centre += d;
  }
  const here = topTemperature(s, at);
  if (beyond < 0 || reach <= centre) return here;
  return here + ((reach - centre) / d) * (topTemperature(s, beyond) - here);
}

/** Lets every contact line in the window advance for `time` seconds; `fresh` collects columns to wet (room for all columns). */
export function advanceContactLines(s: State, time: number, fresh: Int32Array): void {
  const { plan, liquid, cal, w, near } = s;
  const { ny, nu } = plan;
  const { from, to } = s.liquidSlices;
  let count = 0;
  for (let c = 0; c < nu; c++) {
    for (let j = from; j < to; j++) {
      const i = c * ny + j;
      if (!liquid[i] || w[i]! - s.bottom[i]! < cal.leastPull) continue;
      for (let face = 0; face < 4; face++) {
        const q = near[4 * i + face]!;
        if (q < 0 || liquid[q]) continue;
        const d = face < 2 ? plan.du : plan.dy;
        const e = s.edge[4 * i + face]!;
        const ms = solidSlope(s, q, face);
        const fall = (w[i]! - toeHeight(s, i, q, face, ms)) / (e * d);
        const cold = clamp((SOLIDUS_C - plateBeyond(s, q, face, e * d, ms)) / cal.advanceSpan, 0, 1);
        const advance = (cal.advanceHot + (cal.advanceCold - cal.advanceHot) * cold) * DEGREE;
        // tan(advance - atan ms) without inverse functions or a pole at 90 degrees; beyond the right angle the slope cap rules.
        const sine = sin(advance);
        const cosine = cos(advance);
        const below = cosine + sine * ms;
        const hold = below <= 0 ? cal.surfaceSteepest : Math.min(cal.surfaceSteepest, (sine - cosine * ms) / below);
        if (fall <= hold) continue;
        const level = w[i]! - w[q]! + d * ms;
        const stand = hold + ms > 1e-3 ? level / (d * (hold + ms)) : WET_AT + 1;
        const step = Math.min(0.5 * Math.min(1, stand - e), (cal.toeSpeed * time) / d);
        if (step <= 0) continue;
        s.edge[4 * i + face] = e + step;
        if (e + step >= WET_AT) fresh[count++] = q;
      }
    }
  }
  for (let n = 0; n < count; n++) {
    const q = fresh[n]!;
    if (!liquid[q]) wet(s, q);
  }
}

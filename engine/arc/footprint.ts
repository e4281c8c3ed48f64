/**
 * The arc's footprint on the surface, soft in three dimensions. For a column at s along and r across the wire's axis
 *
 *     g = exp(-r²/2σ²) · exp(-(s - reach)/ℓ) · max(0, N·(-axis))        N = (-∂w/∂u, 1, -∂w/∂y)
 *
 * normalised to 1 over the columns, so no energy is lost. Foot and tip-to-work are its weighted means: continuous in pose and
 * surface, where a single ray would jump.
 */
import { perAcross, riseAcross, slopeAlong } from '../grid/columns.ts';
import { exp } from '../numerics/math.ts';
import type { Calibration } from '../physics/calibration.ts';
import { dimsOf, makeArrays } from '../state/allocate.ts';
import { type Arrays, FOOTPRINT_CAPACITY } from '../state/fields.ts';
import type { State } from '../state/state.ts';
import type { Axis } from './torch.ts';

/** The axis meets the surface somewhere between the joint's depth and its cap: the window is wider by its slant over this height. */
const SLANT_MM = 6;
/** The aim may lie this far past the joint's ends and still find metal. */
const PAST_END_MM = 1;

/** Columns in the footprint with their weights, of the arc's heat and with the narrow deposit radius. */
export interface Footprint extends Arrays<'footprint'> {
  count: number;
  footU: number;
  footY: number;
  footW: number;
  tipToWork: number;
  onJoint: boolean;
}

export function createFootprint(s: State): Footprint {
  const { column, weight, deposit } = makeArrays('footprint', dimsOf(s.plan, s.heat.layout));
  return {
    column,
    weight,
    deposit,
    count: 0,
    footU: 0,
    footY: 0,
    footW: 0,
    tipToWork: 0,
    onJoint: false,
  };
}

/** How far from the aim along the joint the arc may find columns, mm. */
export function reachAlong(axis: Axis, radius: number, cal: Calibration): number {
  return cal.footprintReach * radius + Math.abs(axis.dy / axis.dw) * SLANT_MM;
}

export function findFootprint(out: Footprint, s: State, axis: Axis, aimU: number, aimY: number, radius: number): void {
  const { plan, w } = s;
  const { ny, dy, du, nu } = plan;
  out.count = 0;
  out.onJoint = false;
  const reach = s.cal.footprintReach;
  const limit = reach * radius;
  const low = plan.y0 - dy / 2;
  const high = low + ny * dy;
  if (!(aimY > low - PAST_END_MM && aimY < high + PAST_END_MM)) return;
  const slantU = Math.abs(axis.du / axis.dw) * SLANT_MM;
  const slantY = Math.abs(axis.dy / axis.dw) * SLANT_MM;
  const edgeU = plan.kMax * du;
  const u = aimU < -edgeU ? -edgeU : Math.min(aimU, edgeU);
  const shift = u - aimU;
  const c0 = Math.max(0, Math.ceil((u - limit - slantU) / du) + plan.kMax);
  const c1 = Math.min(nu - 1, Math.floor((u + limit + slantU) / du) + plan.kMax);
  const j0 = Math.max(0, Math.ceil((aimY - limit - slantY - plan.y0) / dy));
  const j1 = Math.min(ny - 1, Math.floor((aimY + limit + slantY - plan.y0) / dy));
  const inv = 1 / (2 * radius * radius);
  const invDeposit = 1 / (2 * s.cal.depositRadius * s.cal.depositRadius);
  const depositLimit = reach * reach * s.cal.depositRadius * s.cal.depositRadius;
  const shade = 1 / s.cal.arcShade;
  let sum = 0;
  let su = 0;
  let sy = 0;
  let sw = 0;
  let ss = 0;
  for (let c = c0; c <= c1; c++) {
    const pu = (c - plan.kMax) * du - axis.tipU - shift;
    const invU = perAcross(s, c);
    for (let j = j0; j <= j1; j++) {
      const i = c * ny + j;
      const pw = w[i]! - axis.tipW;
      const py = plan.y0 + j * dy - axis.tipY;
      const along = pu * axis.du + pw * axis.dw + py * axis.dy;
      const r2 = pu * pu + pw * pw + py * py - along * along;
      if (r2 > limit * limit) continue;
      const wu = riseAcross(s, w, c, j) * invU;
      const wy = slopeAlong(s, w, i, j);
      const facing = wu * axis.du - axis.dw + wy * axis.dy;
      if (facing <= 0) continue;
      const g = exp(-r2 * inv - (along - axis.reach) * shade) * facing;
      const n = out.count++;
      out.column[n] = i;
      out.weight[n] = g;
      out.deposit[n] = r2 > depositLimit ? 0 : exp(-r2 * invDeposit);
      sum += g;
      su += g * (c - plan.kMax) * du;
      sy += g * (plan.y0 + j * dy);
      sw += g * w[i]!;
      ss += g * along;
      if (out.count === FOOTPRINT_CAPACITY) break;
    }
  }
  if (!(sum > 1e-12)) return;
  const scale = 1 / sum;
  for (let n = 0; n < out.count; n++) out.weight[n]! *= scale;
  out.footU = su * scale;
  out.footY = sy * scale;
  out.footW = sw * scale;
  out.tipToWork = ss * scale;
  out.onJoint = out.tipToWork < s.cal.longestTip;
}

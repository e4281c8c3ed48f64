/**
 * A short pool in a long right-angled corner, weightless, heat standing still as in groove.ts: whether its ends run off along the corner is
 * a matter of the contact angle alone.
 */

import { layColdPiece } from '../../../engine/cold-piece.ts';
import { PART } from '../../../engine/grid/rods.ts';
import { defaultJoint, defaultProcess } from '../../../engine/index.ts';
import { PAD } from '../../../engine/kernel/layout.ts';
import { createPuddleWork, settle } from '../../../engine/pool/settle.ts';
import { addMetal, createMove } from '../../../engine/state/metal.ts';
import type { State } from '../../../engine/state/state.ts';

const MUSH = 0.45;
const LIQUID_JPG = 1900;
const POSE_S = 0.01;
const WEIGHTLESS_GPMM3 = 1e-9;
const JOINT_MM = 60;
const POOL_MM = 12;
const LEG_MM = 5;

/** Length of the wetted corner after each of the times, mm; the pool starts 12 mm long and level over legs of 5 mm. */
export function wettedCorner(angle_deg: number, times_s: number[], cell_mm: number): number[] {
  const s = layColdPiece(
    { joint: { ...defaultJoint(), length_mm: JOINT_MM }, process: defaultProcess(), cell_mm },
    {
      fineEverywhere: true,
      calibration: { advanceHot: angle_deg, advanceCold: angle_deg, liquidDensity: WEIGHTLESS_GPMM3 },
    },
  );
  const { plan, heat } = s;
  const mush = Math.fround(heat.table.solidus_JPG + MUSH * (heat.table.liquidus_JPG - heat.table.solidus_JPG));
  for (let r = 0; r < plan.rods.count; r++) {
    if (plan.rods.part[r] === PART.WELD) continue;
    const base = r * heat.layout.stride + PAD;
    heat.H.fill(mush, base, base + plan.ny);
  }
  const level = LEG_MM / Math.SQRT2;
  for (let c = 0; c < plan.nu; c++)
    for (let j = 0; j < plan.ny; j++) {
      const deep = level - plan.plate[c]!;
      if (deep <= 0 || Math.abs(plan.y0 + j * plan.dy - JOINT_MM / 2) > POOL_MM / 2) continue;
      addMetal(s, c, j, { ...createMove(), volume: deep * plan.du * plan.dy, h: LIQUID_JPG });
    }
  const work = createPuddleWork(s);
  const lengths: number[] = [];
  for (let n = 1; lengths.length < times_s.length; n++) {
    s.tick += s.ticksPerPose;
    settle(s, work, 0, plan.ny, POSE_S);
    if (n >= times_s[lengths.length]! / POSE_S) lengths.push(wetLength(s));
  }
  return lengths;
}

/** Along the root, from contact line to contact line. */
function wetLength(s: State): number {
  const { plan } = s;
  const root = plan.kMax * plan.ny;
  let low = -1;
  let high = -1;
  for (let j = 0; j < plan.ny; j++) {
    if (!s.liquid[root + j]) continue;
    if (low < 0) low = j;
    high = j;
  }
  return (high - low + s.edge[4 * (root + low) + 2]! + s.edge[4 * (root + high) + 3]!) * plan.dy;
}

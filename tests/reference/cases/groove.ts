/**
 * A long pool in a right-angled groove whose contact lines are free: an attempt's own puddle (liquid set, relaxation, creeping toes), with
 * the heat standing still. The plates are held at 45 % liquid, between the shares at which a column melts and freezes, so that
 * wetted plate stays wet and dry plate stays dry: what moves a toe here is its contact angle alone.
 */
import { layColdPiece } from '../../../engine/cold-piece.ts';
import { PART } from '../../../engine/grid/rods.ts';
import { defaultJoint, defaultProcess, type Section } from '../../../engine/index.ts';
import { PAD } from '../../../engine/kernel/layout.ts';
import { cutSection } from '../../../engine/output/section.ts';
import { createPuddleWork, settle } from '../../../engine/pool/settle.ts';
import { addMetal, createMove } from '../../../engine/state/metal.ts';

const MUSH = 0.45;
const LIQUID_JPG = 1900;
const POSE_S = 0.01;
const POSES = 500;
/** Next to nothing, so that the pool neither sags nor drips. */
const WEIGHTLESS_GPMM3 = 1e-9;

export interface GroovePool {
  /** Leg on each plate from the engine's own contact lines, mm. */
  legA_mm: number;
  legB_mm: number;
  pressure_Pa: number;
  crown_mm: number;
  section: Section;
}

/** `leg_mm` only says how narrow the pool starts. */
export function settleInGroove(area_mm2: number, angle_deg: number, leg_mm: number, cell_mm: number): GroovePool {
  const s = layColdPiece(
    { joint: { ...defaultJoint(), length_mm: 20 }, process: defaultProcess(), cell_mm },
    { calibration: { advanceHot: angle_deg, advanceCold: angle_deg, liquidDensity: WEIGHTLESS_GPMM3 } },
  );
  const { plan, heat } = s;
  const mush = Math.fround(heat.table.solidus_JPG + MUSH * (heat.table.liquidus_JPG - heat.table.solidus_JPG));
  for (let r = 0; r < plan.rods.count; r++) {
    if (plan.rods.part[r] === PART.WELD) continue;
    const base = r * heat.layout.stride + PAD;
    heat.H.fill(mush, base, base + plan.ny);
  }
  // Starts narrow and level, so that every toe has to walk.
  const half = Math.floor((0.7 * leg_mm) / Math.SQRT2 / plan.du);
  let plates = 0;
  for (let k = -half; k <= half; k++) plates += plan.plate[plan.kMax + k]!;
  const level = (area_mm2 / plan.du + plates) / (2 * half + 1);
  for (let k = -half; k <= half; k++) {
    const c = plan.kMax + k;
    const volume = (level - plan.plate[c]!) * plan.du * plan.dy;
    for (let j = 0; j < plan.ny; j++) addMetal(s, c, j, { ...createMove(), volume, h: LIQUID_JPG });
  }
  const work = createPuddleWork(s);
  for (let n = 0; n < POSES; n++) {
    s.tick += s.ticksPerPose;
    settle(s, work, 0, plan.ny, POSE_S);
  }
  const j = plan.ny >> 1;
  const at = (c: number): number => c * plan.ny + j;
  let first = -1;
  let last = -1;
  for (let c = 0; c < plan.nu; c++) {
    if (!s.liquid[at(c)]) continue;
    if (first < 0) first = c;
    last = c;
  }
  const toe = (c: number, out: number): number => (Math.abs(c - plan.kMax) + out) * plan.du * Math.SQRT2;
  return {
    legA_mm: toe(last, s.edge[4 * at(last) + 1]!),
    legB_mm: toe(first, s.edge[4 * at(first)]!),
    pressure_Pa: s.pressure[at(plan.kMax)]!,
    crown_mm: s.w[at(plan.kMax)]!,
    section: cutSection(s, 10),
  };
}

/** Plates beyond the fine cells: full-thickness rods growing wider, losing heat on both faces, clamped at the far end. */
import type { JointOptions } from '../input/options.ts';
import { FINE_BEHIND_MM, type Get, rows } from './plates.ts';
import { PART, type RodBuilder } from './rods.ts';

/** Fins grow by this factor up to this width. */
const FIN_GROWTH = 1.5;
const FIN_WIDEST_MM = 10;
/** Overlap of a lap coupon. */
const LAP_OVERLAP_MM = 25;

/** A fine rod where a fin begins: how wide its face is, and would be with the cell full. */
interface Edge {
  rod: number;
  across: number;
  full: number;
}

/** Where fins are laid: the joint, its cell, how many fine cells an arm has, and what there is so far. */
interface Yard {
  joint: JointOptions;
  h: number;
  n: number;
  b: RodBuilder;
  get: Get;
}

/** One arm of a plate: how far it reaches from the fine cells, the slot it leaves them by, their edge, and where a rod at distance d stands. */
interface Arm {
  part: number;
  thickness: number;
  reach: number;
  slot: 0 | 1 | 2 | 3;
  edge: Edge[];
  place: (d: number) => [number, number];
}

export function layFins(joint: JointOptions, h: number, n: number, b: RodBuilder, get: Get): void {
  const yard: Yard = { joint, h, n, b, get };
  if (joint.kind === 'tee') finsOfTee(yard);
  else if (joint.kind === 'lap') finsOfLap(yard);
  else if (joint.kind === 'plate') finsOfPlate(yard);
  else finsOfCorner(yard);
}

/** Lays the rods of an arm, from the fine cells outward. */
function layArm({ h, b }: Yard, { part, thickness, reach, slot, edge, place }: Arm): number[] {
  const out: number[] = [];
  let from = 0;
  let wide = 2 * h;
  let last = -1;
  let lastWide = h;
  while (reach - from > 0.25 * h) {
    let w = Math.min(wide, FIN_WIDEST_MM);
    if (reach - from - w < 0.5 * w) w = reach - from;
    const [a, bb] = place(from + w / 2);
    const rod = b.add(part, a, bb, thickness * w);
    if (last < 0) for (const e of edge) b.joinFin(e.rod, rod, slot, e.full / ((h + w) / 2), e.across / ((h + w) / 2));
    else b.join(last, rod, 1, thickness / ((lastWide + w) / 2));
    b.expose(rod, 2 * w);
    out.push(rod);
    last = rod;
    lastWide = w;
    from += w;
    wide *= FIN_GROWTH;
  }
  if (last >= 0) b.sinks.push({ rod: last, share: 1 });
  else {
    const all = edge.reduce((sum, e) => sum + e.across, 0);
    for (const e of edge) b.sinks.push({ rod: e.rod, share: e.across / all });
  }
  return out;
}

/** Cells of plate A at place i, from its face inward. */
function edgeOfA({ joint, h, get }: Yard, i: number): Edge[] {
  return rows(joint.plateA_mm, h).map((across, r) => ({ rod: get(i, -1 - r), across, full: across }));
}

/** Uppermost cells of a standing plate B, from its face inward. */
function topOfB({ joint, h, n, get }: Yard): Edge[] {
  return rows(joint.plateB_mm, h).map((across, r) => ({ rod: get(-1 - r, n - 1), across, full: across }));
}

/** Plate A outward along its face. */
function armOfA(yard: Yard, reach: number): Arm {
  const { joint, h, n } = yard;
  const { plateA_mm: thickness } = joint;
  return {
    part: PART.A,
    thickness,
    reach,
    slot: 1,
    edge: edgeOfA(yard, n - 1),
    place: (d) => [n * h + d, -thickness / 2],
  };
}

/** A standing plate B upward along its face. */
function armOfB(yard: Yard, reach: number): Arm {
  const { joint, h, n } = yard;
  const { plateB_mm: thickness } = joint;
  return { part: PART.B, thickness, reach, slot: 3, edge: topOfB(yard), place: (d) => [-thickness / 2, n * h + d] };
}

function finsOfTee(yard: Yard): void {
  const { joint, h, n } = yard;
  const { plateA_mm, plateB_mm, plateWidth_mm: w, gap_mm } = joint;
  const behind = (rows(plateB_mm, h).length + Math.round(FINE_BEHIND_MM / h)) * h;
  const middle = plateB_mm / 2;
  layArm(yard, armOfA(yard, w / 2 - middle - n * h));
  layArm(yard, {
    part: PART.A,
    thickness: plateA_mm,
    reach: w / 2 + middle - behind,
    slot: 0,
    edge: edgeOfA(yard, -Math.round(behind / h)),
    place: (d) => [-behind - d, -plateA_mm / 2],
  });
  layArm(yard, armOfB(yard, w - gap_mm - n * h));
}

function finsOfLap(yard: Yard): void {
  const { joint, h, n, b, get } = yard;
  const { plateA_mm, plateB_mm, plateWidth_mm: w } = joint;
  const overlap = Math.min(LAP_OVERLAP_MM, w / 2);
  const g = Math.round(joint.gap_mm / h);
  const edgeB = Array.from({ length: Math.ceil(plateB_mm / h - 1e-9) }, (_, r) => ({
    rod: get(-n, g + r),
    across: h * Math.min(1, plateB_mm / h - r),
    full: h,
  }));
  layArm(yard, armOfA(yard, w - overlap - n * h));
  const under = layArm(yard, {
    part: PART.A,
    thickness: plateA_mm,
    reach: overlap - n * h,
    slot: 0,
    edge: edgeOfA(yard, -n),
    place: (d) => [-n * h - d, -plateA_mm / 2],
  });
  const over = layArm(yard, {
    part: PART.B,
    thickness: plateB_mm,
    reach: w - n * h,
    slot: 0,
    edge: edgeB,
    place: (d) => [-n * h - d, plateB_mm / 2],
  });
  if (g === 0 && under.length > 0 && over.length > 0) {
    const wide = Math.min(overlap - n * h, 2 * h);
    b.gaps.push({ p: under[0]!, q: over[0]!, shape: wide / h, width_mm: wide });
  }
}

function finsOfCorner(yard: Yard): void {
  const { joint, h, n } = yard;
  layArm(yard, armOfA(yard, joint.plateWidth_mm - n * h));
  layArm(yard, armOfB(yard, joint.plateWidth_mm - n * h));
}

/** A flat plate to both sides; a column's cells meet its arm by one of their two outer sides each, for the length they have in the column. */
function finsOfPlate(yard: Yard): void {
  const { joint, h, n, b, get } = yard;
  const { plateA_mm: thickness, plateWidth_mm } = joint;
  const side = ((n - 0.5) * h) / Math.SQRT2;
  const edgeOf = (k: number): Edge[] => {
    const edge: Edge[] = [];
    const deep = Math.ceil((thickness * Math.SQRT2) / h) + 1;
    for (let sum = -deep - ((deep + k) & 1); sum < 0; sum += 2) {
      const rod = get((sum + k) / 2, (sum - k) / 2);
      if (rod < 0 || !b.isPlate(rod)) continue;
      const across = Math.min(0, ((sum + 2) * h) / Math.SQRT2) - Math.max(-thickness, (sum * h) / Math.SQRT2);
      edge.push({ rod, across, full: sum === -1 ? h * Math.SQRT2 : across });
    }
    return edge;
  };
  const place =
    (sign: 1 | -1) =>
    (d: number): [number, number] => {
      const u = sign * (side + d);
      const w = -thickness / 2;
      return [(w + u) / Math.SQRT2, (w - u) / Math.SQRT2];
    };
  const reach = plateWidth_mm / 2 - side;
  layArm(yard, { part: PART.A, thickness, reach, slot: 1, edge: edgeOf(n - 1), place: place(1) });
  layArm(yard, { part: PART.A, thickness, reach, slot: 0, edge: edgeOf(-(n - 1)), place: place(-1) });
}

/** A joint's plates as cut, on the mesh every attempt uses. */

import { buildJoint, type JointPlan } from '../grid/joint.ts';
import { PART } from '../grid/rods.ts';
import type { Patch, PieceMesh, Share } from './mesh.ts';
import type { JointFace, JointPiece } from './types.ts';

export function buildJointPiece(piece: JointPiece, cell: number): PieceMesh {
  const plan = buildJoint({ ...piece, startTemp_C: 20, ambient_C: 20, sink_WpmmK: 0, tabs: false }, cell);
  const w = new Float64Array(plan.nu * plan.ny);
  for (let c = 0; c < plan.nu; c++) w.fill(plan.plate[c]!, c * plan.ny, (c + 1) * plan.ny);
  const rodAt = (i: number, j: number): number => {
    const ia = i - plan.iMin;
    const ib = j - plan.jMin;
    const rod = ia < 0 || ib < 0 || ia >= plan.na || ib >= plan.nb ? -1 : plan.rodAt[ib * plan.na + ia]!;
    return rod >= 0 && plan.fill[rod]! > 0 ? rod : -1;
  };
  return {
    plan,
    fill: plan.fill,
    w,
    y0_mm: plan.y0,
    faces: new Map<JointFace, Patch[]>([
      ['A', facePatches(plan, PART.A, (n) => rodAt(n, -1))],
      ['B', facePatches(plan, PART.B, (n) => rodAt(-1, n))],
    ]),
    level: new Map([
      ['A', 0],
      ['B', 0],
    ]),
    read: (a, b) => readFine(plan, rodAt, a, b),
    under: (a, b) => {
      const rod = rodAt(Math.floor(a / plan.h), Math.floor(b / plan.h));
      return [rod >= 0 ? rod : nearest(plan, a, b)];
    },
  };
}

function facePatches(plan: JointPlan, part: number, rodAt: (n: number) => number): Patch[] {
  const patches: Patch[] = [];
  for (let n = 0; n < Math.max(plan.na, plan.nb); n++) {
    const rod = rodAt(n);
    if (rod < 0 || plan.rods.part[rod] !== part) continue;
    const from = n * plan.h;
    patches.push({ rod, from_mm: from, to_mm: from + plan.h * plan.fill[rod]!, inside_mm: plan.h / 2 });
  }
  return patches;
}

/** Bilinear between fine cells that hold metal; beyond them the nearest rod. */
function readFine(plan: JointPlan, rodAt: (i: number, j: number) => number, a: number, b: number): Share[] {
  const x = a / plan.h - 0.5;
  const z = b / plan.h - 0.5;
  const i = Math.floor(x);
  const j = Math.floor(z);
  const shares: Share[] = [];
  let sum = 0;
  for (let n = 0; n < 4; n++) {
    const di = n & 1;
    const dj = n >> 1;
    const weight = Math.abs(1 - di - (x - i)) * Math.abs(1 - dj - (z - j));
    const rod = rodAt(i + di, j + dj);
    if (rod < 0 || weight < 1e-12) continue;
    shares.push({ rod, weight });
    sum += weight;
  }
  if (sum < 1e-9) return [{ rod: nearest(plan, a, b), weight: 1 }];
  return shares.map(({ rod, weight }) => ({ rod, weight: weight / sum }));
}

function nearest(plan: JointPlan, a: number, b: number): number {
  const { a_mm, b_mm, count } = plan.rods;
  let best = -1;
  let least = Number.POSITIVE_INFINITY;
  for (let r = 0; r < count; r++) {
    if (plan.fill[r]! <= 0) continue;
    const d = (a_mm[r]! - a) * (a_mm[r]! - a) + (b_mm[r]! - b) * (b_mm[r]! - b);
    if (d < least) {
      least = d;
      best = r;
    }
  }
  return best;
}

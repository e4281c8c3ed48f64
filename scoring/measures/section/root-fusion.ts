import type { Section } from '../../../engine/index.ts';
import { depthOf, FARTHEST_SHORT_MM, faceS, type Inward, inward, spread } from './isotherm.ts';

export interface RootFusion {
  rootFusionA_mm: number;
  rootFusionB_mm: number;
  /** The smaller of the two: the root is only as good as its colder plate. */
  rootFusion_mm: number;
}

/**
 * Distance from the root line at which fusion is read, on the weld's side along each face: half a working cell, at every mesh. At the
 * line itself the peak field is torn by the faying face, and a depth read there says more about the mesh than about the weld.
 */
export const READ_AT_MM = 0.375;

/** Short of the face by less than this, the face is as good as at its melting point: read as it is, square to the face. */
export const BARELY_SHORT_MM = 0.1;

/**
 * **Root fusion**: how far fusion reaches past the root line into each plate, square to its face as cut ("tied in at the root: 0.6 past
 * the corner"). Negative: short of it, and then the width of the unfused land along the face from the root line to where the plate is
 * fused ("0.4 short"), which is what a macro shows and what opens as a bare strip. mm. Read from the plates' own cells only, beside the line
 * where the faces met as cut, so a melted edge never moves it. Mesh error in `precision.ts`.
 */
export function rootFusion(sec: Section): RootFusion {
  const a = onPlate(sec, 'A', 0);
  const b = onPlate(sec, 'B', sec.joint.gap_mm);
  return { rootFusionA_mm: a, rootFusionB_mm: b, rootFusion_mm: Math.min(a, b) };
}

function onPlate(sec: Section, side: 'A' | 'B', from: number): number {
  const line = lineAt(sec, side, from);
  if (line === null) return -FARTHEST_SHORT_MM;
  const depth = depthOf(line, spread(sec.solidus_C, sec.start_C), sec.cell_mm);
  return depth > -BARELY_SHORT_MM ? depth : Math.min(depth, -unfusedLand_mm(sec, side, from));
}

/** Way along the face from the root to the first fused place; at most FARTHEST_SHORT_MM. */
function unfusedLand_mm(sec: Section, side: 'A' | 'B', from: number): number {
  const h = sec.cell_mm;
  const solidus = spread(sec.solidus_C, sec.start_C);
  let before = Number.NaN;
  for (let along = h / 2; along < FARTHEST_SHORT_MM + h; along += h) {
    const line = inward(sec, side, from + along);
    if (line === null) break;
    const s = faceS(line);
    if (s <= solidus) {
      const land = Number.isNaN(before) ? along : along - (h * (solidus - s)) / (before - s);
      return Math.min(land, FARTHEST_SHORT_MM);
    }
    before = s;
  }
  return FARTHEST_SHORT_MM;
}

/** Cells going into a plate READ_AT_MM from its end of the root, straight between the two nearest lines of cells in front. */
function lineAt(sec: Section, side: 'A' | 'B', from: number): Inward | null {
  const h = sec.cell_mm;
  const first = inward(sec, side, from + h / 2);
  const second = inward(sec, side, from + 1.5 * h);
  const share = READ_AT_MM / h - 0.5;
  if (first === null || second === null || share <= 0) return first;
  const s = first.s.map((value, r) => (r < second.s.length ? value + share * (second.s[r]! - value) : value));
  return { s, length_mm: first.length_mm };
}

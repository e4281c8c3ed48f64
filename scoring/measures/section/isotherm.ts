import { PART, type Section } from '../../../engine/index.ts';
import type { Side } from './outline.ts';

/**
 * Peak temperatures as a field that can be interpolated. Round a line of heat the peak falls as 1/r² (Rosenthal; fast line source), so
 * s = (T_peak - T_start)^(-1/2) is straight in distance: an isotherm between two cells is found by a straight line in s. Only cells of
 * one plate are ever combined: across the weld's edge the field jumps.
 */

/** Coldest rise taken seriously, K; below it s stops growing. */
const LEAST_RISE_K = 1;
/** A distance beyond this outside the fusion face says no more than "not fused". mm */
export const FARTHEST_SHORT_MM = 3;

/** s of a peak temperature. */
export function spread(peak_C: number, start_C: number): number {
  return 1 / Math.sqrt(Math.max(LEAST_RISE_K, peak_C - start_C));
}

/** One line of cells of one plate, starting at its face and going inward; null where the line has no cell of the plate. */
export interface Inward {
  /** s of the cells, face first. */
  s: number[];
  /** Thickness of the line, mm. */
  length_mm: number;
}

function cellS(sec: Section, part: number, ia: number, ib: number): number | null {
  if (ia < 0 || ib < 0 || ia >= sec.na || ib >= sec.nb) return null;
  const cell = ib * sec.na + ia;
  const peak = sec.peak_C[cell]!;
  if (sec.part[cell] !== part || Number.isNaN(peak)) return null;
  return spread(peak, sec.start_C);
}

/** Column index of the cell whose span holds a, row index for b. */
export function indexA(sec: Section, a: number): number {
  return Math.round((a - sec.a0_mm) / sec.cell_mm);
}
export function indexB(sec: Section, b: number): number {
  return Math.round((b - sec.b0_mm) / sec.cell_mm);
}

/** Cells of plate A under the face point a, going down (-b); cells of plate B beside the face point b, going in (-a). */
export function inward(sec: Section, side: Side, along: number): Inward | null {
  const h = sec.cell_mm;
  const s: number[] = [];
  if (side === 'A') {
    const ia = indexA(sec, along);
    for (let ib = indexB(sec, -h / 2); ib >= 0; ib--) {
      const at = cellS(sec, PART.A, ia, ib);
      if (at === null) break;
      s.push(at);
    }
  } else {
    const ib = indexB(sec, along);
    for (let ia = indexA(sec, -h / 2); ia >= 0; ia--) {
      const at = cellS(sec, PART.B, ia, ib);
      if (at === null) break;
      s.push(at);
    }
  }
  return s.length < 2 ? null : { s, length_mm: s.length * h };
}

/**
 * Signed depth of an isotherm below the face of one line of cells: positive, it lies inside the plate; negative, it falls short of the
 * face by that much (straight on in s, at most FARTHEST_SHORT_MM). The whole thickness where the line never cools below it. mm.
 */
export function depthOf(line: Inward, at: number, h: number): number {
  const { s } = line;
  const first = s[0]!;
  if (first > at) {
    const slope = (s[1]! - first) / h;
    if (!(slope > 0)) return -FARTHEST_SHORT_MM;
    return Math.max(-FARTHEST_SHORT_MM, h / 2 - (first - at) / slope);
  }
  for (let r = 1; r < s.length; r++) {
    const deep = s[r]!;
    if (deep > at) return (r - 0.5) * h + (h * (at - s[r - 1]!)) / (deep - s[r - 1]!);
  }
  return line.length_mm;
}

/** s carried on straight from the first two cells to the face itself. */
export function faceS(line: Inward): number {
  return 1.5 * line.s[0]! - 0.5 * line.s[1]!;
}

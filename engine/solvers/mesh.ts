/** What a heat case needs of a mesh, whatever its shape: rods, flat faces, and how to read the field between cell centres. */
import type { HeatPlan } from '../state/state.ts';
import type { BlockFace, JointFace } from './types.ts';

/** The part of a flat face that one rod owns. */
export interface Patch {
  rod: number;
  /** Along the face in the section (a on b-faces, b on a-faces), mm. */
  from_mm: number;
  to_mm: number;
  /** Distance from the rod's centre to the face, mm. */
  inside_mm: number;
}

export interface Share {
  rod: number;
  weight: number;
}

export interface PieceMesh {
  plan: HeatPlan;
  /** Share of each rod filled with metal. */
  fill: Float64Array;
  /** Height of the welded face over the plan's columns (none for a block). */
  w: Float64Array;
  y0_mm: number;
  faces: Map<BlockFace | JointFace, Patch[]>;
  /** Coordinate of each face along its normal, mm. */
  level: Map<BlockFace | JointFace, number>;
  /** Rods whose values, weighted, give the field at a place of the section. */
  read(a_mm: number, b_mm: number): Share[];
  /** Rods the place lies in: two on the border between two, four on a corner. */
  under(a_mm: number, b_mm: number): number[];
}

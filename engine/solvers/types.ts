/** Shapes of a heat case: a piece of metal, what it is made of, how it starts and what heats it. Units are in the names. */

import type { JointOptions } from '../input/options.ts';
import type { KernelChoice } from '../kernel/layout.ts';

/**
 * A place in the piece. Block: a from 0 to its width, b from -depth to 0 (b = 0 is its upper face), y from 0 to its length.
 * Joint: a along plate A's face, b along plate B's face, y up the joint, as everywhere in the engine.
 */
export interface Place {
  a_mm: number;
  b_mm: number;
  y_mm: number;
}

/** A rectangular bar or plate; every face that is not held or heated is insulated unless losses are on. */
export interface BlockPiece {
  kind: 'block';
  width_mm: number;
  depth_mm: number;
  length_mm: number;
  /**
   * Part of the section in even cells; beyond it cells grow by a quarter each up to 4 mm. Left out: even cells everywhere.
   * Along y cells are always even.
   */
  even?: { a_mm: readonly [number, number]; b_mm: readonly [number, number] };
}

/** A welded joint's plates as cut, without any weld metal: the very mesh of an attempt. */
export interface JointPiece
  extends Pick<JointOptions, 'kind' | 'plateA_mm' | 'plateB_mm' | 'plateWidth_mm' | 'length_mm' | 'gap_mm'> {}

/** The engine's steel: EN 1993-1-2 curves, latent heat, stirred liquid (conductivity factor, 1 is still). */
export interface SteelMaterial {
  kind: 'steel';
  stirring?: number;
}

/** A material whose properties do not change with temperature, with latent heat where `melting` is given. */
export interface ConstantMaterial {
  kind: 'constant';
  conductivity_WpmK: number;
  specificHeat_JpkgK: number;
  density_kgpm3: number;
  /** Latent heat spread evenly from solidus to liquidus. Both above 20 °C, where the engine's table of enthalpy begins. */
  melting?: { solidus_C: number; liquidus_C: number; latent_Jpkg: number };
}

/** A block's long sides: a- (a = 0), a+ (a = width), b- (b = -depth), b+ (b = 0). */
export type BlockFace = 'a-' | 'a+' | 'b-' | 'b+';
/** A block's ends along y. */
export type BlockEnd = 'y-' | 'y+';
/** Fusion faces of a joint: plate A's (b = 0), plate B's (a = 0). */
export type JointFace = 'A' | 'B';

/** A face kept at one temperature. Blocks only. */
export interface HeldFace {
  face: BlockFace | BlockEnd;
  temp_C: number;
}

/**
 * Heat on a face, Gaussian: q'' = P / (2π r²) · exp(-d² / 2r²), d measured in space from the path's point. All of the power goes in:
 * what would fall beside the faces named is spread over them in proportion.
 */
export interface SurfaceSource {
  /** Block: one of its sides. Joint: one or both fusion faces, within 15 mm of the root. */
  faces: readonly (BlockFace | JointFace)[];
  power_W: number;
  /** Standard deviation r of the Gaussian; 0 is a point. */
  radius_mm: number;
  /** Where its middle is at time t; null while it is off. On a block the distance off the face is not counted. */
  path: (t_s: number) => Place | null;
}

/** Losses of every free side along y; the end faces lose nothing, as in an attempt. */
export interface Losses {
  ambient_C: number;
  emissivity: number;
  convection_Wpm2K: number;
  /** Conductance to clamps at a joint's outer edges, W/K per mm of length and edge. */
  sink_WpmmK?: number;
}

/** Everything a heat case is computed from. Lengths in mm, temperatures in °C, time in s. */
export interface HeatCase {
  piece: BlockPiece | JointPiece;
  /** Cells are this size, or the nearest to it that divides the piece evenly. */
  cell_mm: number;
  material: SteelMaterial | ConstantMaterial;
  /** Temperature at the start: one for all, or by place (read at cell centres). */
  start_C: number | ((at: Place) => number);
  held?: readonly HeldFace[];
  sources?: readonly SurfaceSource[];
  /** Left out: nothing is lost. */
  losses?: Losses;
  /** Time step; left out, the one an attempt would take, or the longest stable one where that is shorter. */
  step_s?: number;
  kernel?: KernelChoice;
}

/** Whole fields over cells, index `rod * ny + j`; rods as centres in the section, slices along y. */
export interface HeatField {
  rods: number;
  ny: number;
  a_mm: Float64Array;
  b_mm: Float64Array;
  /** Area of the rod in the section, mm². */
  area_mm2: Float64Array;
  y0_mm: number;
  dy_mm: number;
  /** NaN where a joint holds no metal. */
  temp_C: Float32Array;
  peak_C: Float32Array;
  /** Enthalpy above 20 °C, J/mm³. */
  enthalpy_Jpmm3: Float32Array;
  /** 0 solid to 1 liquid; 0 where the material does not melt. */
  liquid: Float32Array;
}

/** Joules since the start. put + held = lost + sink + (stored - start). */
export interface HeatAccount {
  put_J: number;
  held_J: number;
  lost_J: number;
  sink_J: number;
  /** Gain of the piece. */
  gained_J: number;
  /** |put + held - lost - sink - gained| over the heat that moved (J/J). */
  error: number;
}

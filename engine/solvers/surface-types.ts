/** Shapes of a surface case: one pool of liquid on a grid of columns, and what pulls at it. Units are in the names. */

/** Towards u-, u+, y-, y+. */
export type SurfaceFace = 0 | 1 | 2 | 3;

/** Where the surface ends on one side of a liquid column. */
export interface SurfaceEdge {
  /** Height at which it is pinned. */
  height_mm: number;
  /** How far that is from the column's middle; half a column is its border. Left out: half a column. */
  reach_mm?: number;
}

/** One pool on its columns, its edges and what pulls at it. Columns are indexed c * ny + j. */
export interface SurfaceCase {
  /** Columns across (u) and along (y); every list over columns is indexed c * ny + j. */
  nu: number;
  ny: number;
  du_mm: number;
  dy_mm: number;
  /** Middle of column 0 and slice 0; only gravity and `pressure_Pa` ask for it. 0 where left out. */
  u0_mm?: number;
  y0_mm?: number;
  /** 1 where the column is liquid; left out, all of them. Liquid that does not hang together is one pool all the same. */
  liquid?: ArrayLike<number>;
  /** Height of the liquid's bottom. The surface never goes below it. */
  bottom_mm: number | ArrayLike<number>;
  /**
   * Where the surface ends: one height or a height per dry column, pinned at the border of the liquid; or by column and side. null is a
   * smooth upright wall that the surface meets squarely (a plane of symmetry). Beyond the grid there is such a wall, unless the function
   * says otherwise.
   */
  edge: number | ArrayLike<number> | ((c: number, j: number, face: SurfaceFace) => SurfaceEdge | null);
  tension_NpM: number;
  density_kgpm3: number;
  /** Gravity, m/s². Left out: 9.81 down the joint, against y. w is out of the surface. */
  gravity_mps2?: { u: number; y: number; w: number };
  /** Extra pressure on the surface, Pa. */
  pressure_Pa?: ArrayLike<number> | ((u_mm: number, y_mm: number) => number);
  /** Volume of the liquid over its bottoms. */
  volume_mm3: number;
  /** Surface to start from; left out, level over the bottoms. */
  start_mm?: ArrayLike<number>;
  /** Done when no column would move more than this in one more sweep. 1e-7 mm where left out. */
  tolerance_mm?: number;
  /** Sweeps after which it is given up. 100 000 where left out. */
  mostSweeps?: number;
}

/** The settled surface, the pressure under it, and how far the sweeps got. */
export interface SurfaceResult {
  /** Height of the surface over columns, NaN where dry. */
  height_mm: Float64Array;
  /** Pressure in the liquid at u = y = w = 0 over the surrounding gas, Pa. */
  pressure_Pa: number;
  converged: boolean;
  /** What the last sweep would have moved at most, mm. */
  residual_mm: number;
  sweeps: number;
}

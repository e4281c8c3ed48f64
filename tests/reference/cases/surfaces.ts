/** Liquid surfaces alone at an attempt's columns: strips, grooves, menisci and drops, ready for settleSurface. */
import { type SurfaceResult, settleSurface } from '../../../engine/index.ts';
import { capillaryLength, convexityOf, hangingStrip, levelDrop, meniscus, segment } from '../formulas/surface.ts';

/** Spacing of an attempt's columns at the working cell size, across and along. */
const CELL_MM = 0.75;
const DU_MM = CELL_MM / Math.SQRT2;
export const TENSION = 1.2;
export const DENSITY = 7000;
const WEIGHTLESS = { u: 0, y: 0, w: 0 };
const UPRIGHT = { u: 0, y: 0, w: -9.81 };

const pinnedAcross = (height: number) => (_c: number, _j: number, face: number) =>
  face < 2 ? { height_mm: height } : null;

/** Columns that divide a width evenly, nearest to the working spacing (or a fraction of it). */
export function columnsOf(width: number, fraction = 1): { n: number; du: number; middle(i: number): number } {
  const n = Math.max(2, Math.round(width / (DU_MM * fraction)));
  const du = width / n;
  return { n, du, middle: (i) => (i + 0.5) * du };
}

/** Face over a chord, pinned at both ends, weightless. */
export function chordFace(width: number, convexity: number, fraction = 1): SurfaceResult {
  const { n, du } = columnsOf(width, fraction);
  return settleSurface({
    nu: n,
    ny: 1,
    du_mm: du,
    dy_mm: CELL_MM,
    bottom_mm: 0,
    edge: pinnedAcross(0),
    tension_NpM: TENSION,
    density_kgpm3: DENSITY,
    gravity_mps2: WEIGHTLESS,
    volume_mm3: segment(width, convexity).area * CELL_MM,
  });
}

/** Metal a right-angled groove holds with this leg where the face meets both plates at this angle, mm². */
export function grooveArea(leg: number, angle_deg: number): number {
  const chord = leg * Math.SQRT2;
  const rise = convexityOf(chord, ((angle_deg - 45) * Math.PI) / 180);
  const cap = rise === 0 ? 0 : Math.sign(rise) * segment(chord, Math.abs(rise)).area;
  return (leg * leg) / 2 + cap;
}

/** Pool in a right-angled groove, pinned at both legs, weightless. */
export function grooveFace(leg: number, area: number, fraction = 1): SurfaceResult {
  const width = leg * Math.SQRT2;
  const { n, du, middle } = columnsOf(width, fraction);
  return settleSurface({
    nu: n,
    ny: 1,
    du_mm: du,
    dy_mm: CELL_MM,
    bottom_mm: Float64Array.from({ length: n }, (_, i) => Math.abs(middle(i) - width / 2)),
    edge: pinnedAcross(width / 2),
    tension_NpM: TENSION,
    density_kgpm3: DENSITY,
    gravity_mps2: WEIGHTLESS,
    // Columns stand on the groove's mean height over their width; the one over the root, where there is one, misses a quarter of du².
    volume_mm3: (area - (n % 2 === 1 ? (du * du) / 4 : 0)) * CELL_MM,
  });
}

/** Strip on an upright wall, pinned below and above, with its own weight. */
export function sagging(length: number, area: number, fraction = 1): SurfaceResult & { dy: number } {
  const ny = Math.round(length / (CELL_MM * fraction));
  const dy = length / ny;
  const result = settleSurface({
    nu: 1,
    ny,
    du_mm: DU_MM,
    dy_mm: dy,
    y0_mm: dy / 2,
    bottom_mm: -10,
    edge: (_c, _j, face) => (face < 2 ? null : { height_mm: 0 }),
    tension_NpM: TENSION,
    density_kgpm3: DENSITY,
    volume_mm3: (area + 10 * length) * DU_MM,
  });
  return { ...result, dy };
}

export const sagFormula = (length: number, area: number): ReturnType<typeof hangingStrip> =>
  hangingStrip(TENSION, DENSITY, length, area);

/** Bath against an upright wall that it wets to height h0. */
export function meniscusFace(h0: number, fraction = 1): SurfaceResult & { du: number } {
  const { n, du } = columnsOf(34, fraction);
  const deep = 10;
  const result = settleSurface({
    nu: n,
    ny: 1,
    du_mm: du,
    dy_mm: CELL_MM,
    bottom_mm: -deep,
    edge: (c, _j, face) => (face === 0 && c === 0 ? { height_mm: h0 } : null),
    tension_NpM: TENSION,
    density_kgpm3: DENSITY,
    gravity_mps2: UPRIGHT,
    volume_mm3: (deep * n * du + meniscus(capillaryLength(TENSION, DENSITY), h0).area) * CELL_MM,
  });
  return { ...result, du };
}

/** Long drop on level ground. */
export function dropFace(angle_deg: number, width: number): SurfaceResult & { exact: ReturnType<typeof levelDrop> } {
  const exact = levelDrop(TENSION, DENSITY, (angle_deg * Math.PI) / 180, width);
  const { n, du } = columnsOf(width);
  const result = settleSurface({
    nu: n,
    ny: 1,
    du_mm: du,
    dy_mm: CELL_MM,
    bottom_mm: 0,
    edge: pinnedAcross(0),
    tension_NpM: TENSION,
    density_kgpm3: DENSITY,
    gravity_mps2: UPRIGHT,
    volume_mm3: exact.area * CELL_MM,
  });
  return { ...result, exact };
}

/** Cap over a round rim of this radius, pinned where the circle crosses the grid's lines. */
export function roundCap(radius: number, height: number, cell: number): SurfaceResult {
  const n = 2 * Math.ceil(radius / cell) + 2;
  const x = (i: number): number => (i + 0.5 - n / 2) * cell;
  const liquid = new Uint8Array(n * n);
  for (let c = 0; c < n; c++) for (let j = 0; j < n; j++) liquid[c * n + j] = Math.hypot(x(c), x(j)) < radius ? 1 : 0;
  return settleSurface({
    nu: n,
    ny: n,
    du_mm: cell,
    dy_mm: cell,
    liquid,
    bottom_mm: 0,
    edge: (c, j, face) => {
      const across = face < 2;
      const other = across ? x(j) : x(c);
      const own = Math.abs(across ? x(c) : x(j));
      // A rim closer than a hundredth of a column would only make the matrix stiff.
      return { height_mm: 0, reach_mm: Math.max(0.01 * cell, Math.sqrt(radius * radius - other * other) - own) };
    },
    tension_NpM: TENSION,
    density_kgpm3: DENSITY,
    gravity_mps2: WEIGHTLESS,
    volume_mm3: (Math.PI * height * (3 * radius * radius + height * height)) / 6,
  });
}

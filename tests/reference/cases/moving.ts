/** Moving sources on constant metal at the working cell size, read in the frame of the source. */
import { createHeatPiece, type HeatPiece } from '../../../engine/index.ts';
import { KOU_STEEL } from '../formulas/heat.ts';
import { constantMaterial } from './constant.ts';

/** Temperature rise x ahead of the source, y beside, z below. */
export interface Wake {
  rise(x: number, y: number, z: number): number;
  piece: HeatPiece;
  /** Time since the source came on. */
  time_s: number;
}

export interface MovingCase {
  power_W: number;
  speed_mmps: number;
  radius_mm: number;
  cell_mm: number;
  /** Half width, since the source runs along a plane of symmetry; depth and length. */
  half_mm: number;
  depth_mm: number;
  length_mm: number;
  /** Even cells out to here beside and below the source. */
  even_mm: number;
  from_mm: number;
  time_s: number;
  /** Heats the lower face alike: a line source through the sheet, without waiting for the thickness to level out. */
  bothFaces?: boolean;
}

const START_C = 20;

export function runMoving(c: MovingCase): Wake {
  const at = (t: number): number => c.from_mm + c.speed_mmps * t;
  const piece = createHeatPiece({
    piece: {
      kind: 'block',
      width_mm: c.half_mm,
      depth_mm: c.depth_mm,
      length_mm: c.length_mm,
      even: {
        a_mm: [0, Math.min(c.even_mm, c.half_mm)],
        b_mm: [-Math.min(c.even_mm, c.depth_mm), 0],
      },
    },
    cell_mm: c.cell_mm,
    material: constantMaterial(KOU_STEEL),
    start_C: START_C,
    sources: [
      {
        faces: c.bothFaces ? ['b-', 'b+'] : ['b+'],
        power_W: c.power_W / 2,
        radius_mm: c.radius_mm,
        path: (t) => ({ a_mm: 0, b_mm: 0, y_mm: at(t) }),
      },
    ],
  });
  piece.run(c.time_s);
  const now = at(piece.time_s);
  return {
    rise: (x, y, z) => piece.temperature({ a_mm: y, b_mm: -z, y_mm: now + x }) - START_C,
    piece,
    time_s: piece.time_s,
  };
}

/** Kou's textbook case on thick steel: 3200 W at 2.4 mm/s. */
export const THICK: MovingCase = {
  power_W: 3200,
  speed_mmps: 2.4,
  radius_mm: 0.25,
  cell_mm: 0.75,
  half_mm: 45,
  depth_mm: 45,
  length_mm: 126,
  even_mm: 13.5,
  from_mm: 8,
  time_s: 42,
};

/** A short-circuiting arc's power on a 6 mm sheet: 0.8 x 19 V x 130 A at 4 mm/s. */
export const THIN: MovingCase = {
  power_W: 1976,
  speed_mmps: 4,
  radius_mm: 0.25,
  cell_mm: 0.75,
  half_mm: 70,
  depth_mm: 6,
  length_mm: 210,
  even_mm: 15,
  from_mm: 8,
  time_s: 46,
  bothFaces: true,
};

/** Medium plate, 12 mm. */
export const PLATE: MovingCase = { ...THICK, depth_mm: 12, half_mm: 60, power_W: 2400 };

/** A Gaussian as wide as a spread short arc on thick steel. */
export const SPREAD: MovingCase = {
  power_W: 1976,
  speed_mmps: 4,
  radius_mm: 2,
  cell_mm: 0.75,
  half_mm: 36,
  depth_mm: 36,
  length_mm: 72,
  even_mm: 13.5,
  from_mm: 14,
  time_s: 11,
};

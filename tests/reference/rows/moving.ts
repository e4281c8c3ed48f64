import { PLATE, runMoving, SPREAD, THICK, THIN } from '../cases/moving.ts';
import { eagarTsai, KOU_STEEL as metal, rosenthalPlate, rosenthalThick, rosenthalThin } from '../formulas/heat.ts';
import { once, type Section } from '../run.ts';

const thick = once(() => runMoving(THICK));
const thin = once(() => runMoving(THIN));
const plate = once(() => runMoving(PLATE));
const spread = once(() => runMoving(SPREAD));

/** Places are x ahead of the source, y beside, z below, mm. */
const ON_THICK = [
  [0, 8, 0],
  [0, 10, 0],
  [0, 0, 8],
  [0, 6, 6],
  [-10, 0, 0],
  [-20, 0, 0],
  [-30, 0, 0],
  [-10, 8, 4],
  [-20, 10, 10],
] as const;
const ON_THIN = [
  [0, 8],
  [0, 10],
  [0, 12],
  [-10, 0],
  [-20, 0],
  [-20, 10],
  [-40, 0],
] as const;
const IN_PLATE = [
  [0, 10, 6],
  [0, 0, 12],
  [-10, 0, 0],
  [-10, 0, 12],
  [-10, 10, 6],
  [-20, 0, 0],
  [-20, 0, 12],
  [-25, 0, 6],
] as const;
const UNDER_GAUSSIAN = [
  [0, 0, 0.375],
  [-2, 0, 0.375],
  [2, 0, 0.375],
  [0, 3, 0.375],
  [0, 5, 0.375],
  [-5, 0, 0.375],
  [-10, 0, 0.375],
  [-20, 0, 0.375],
  [-5, 0, 5],
  [-10, 6, 3],
  [0, 0, 2.625],
  [0, 0, 5],
] as const;

export const moving: Section = {
  name: 'moving',
  title: 'Moving sources',
  note: 'Working cells of 0.75 mm; x ahead of the source, y beside, z below, mm; rise over the start. Rosenthal is a point or a line, so it is read at least ten cells (8 mm) off, with a source a third of a cell wide. Eagar and Tsai hold everywhere and are read under the source too. There the first cell, which takes the heat, is as deep as it is wide, and straight below it everything stands 1.1 % too hot ("not held"); the finer cells at the end of this page show that going away with the square of the cell.',
  rows: [
    ...ON_THICK.map(([x, y, z]) => ({
      check: `thick plate, 3200 W, 2.4 mm/s, at (${x}, ${y}, ${z})`,
      source: 'Rosenthal, Weld. J. 20 (1941) 220s (ORNL training exercise Heat-1); case of Kou fig. 2.17 (memory)',
      unit: 'K',
      expected: rosenthalThick(metal, THICK.power_W, THICK.speed_mmps, x, y, z),
      got: () => thick().rise(x, y, z),
      tolerance: { share: 0.01 },
      slow: true,
    })),
    ...ON_THIN.map(([x, y]) => ({
      check: `thin plate 6 mm, 1976 W, 4 mm/s, at (${x}, ${y})`,
      source: 'Rosenthal (1941), thin plate with K0',
      unit: 'K',
      expected: rosenthalThin(metal, THIN.power_W, THIN.speed_mmps, THIN.depth_mm, x, y),
      got: () => thin().rise(x, y, 0),
      tolerance: { share: 0.01 },
      slow: true,
    })),
    ...IN_PLATE.map(([x, y, z]) => ({
      check: `plate 12 mm, 2400 W, 2.4 mm/s, at (${x}, ${y}, ${z})`,
      source: 'images at z = ±2ih, Grong, Metallurgical Modelling of Welding, 1.10.4',
      unit: 'K',
      expected: rosenthalPlate(metal, PLATE.power_W, PLATE.speed_mmps, PLATE.depth_mm, x, y, z),
      got: () => plate().rise(x, y, z),
      tolerance: { share: 0.01 },
    })),
    ...UNDER_GAUSSIAN.map(([x, y, z]) => ({
      check: `Gaussian of 2 mm, 1976 W, 4 mm/s, at (${x}, ${y}, ${z})`,
      source: 'Eagar & Tsai, Weld. J. 62 (1983) 346s (form checked on a secondary copy; memory)',
      unit: 'K',
      expected: () => eagarTsai(metal, SPREAD.power_W, SPREAD.speed_mmps, SPREAD.radius_mm, x, y, z, spread().time_s),
      got: () => spread().rise(x, y, z),
      tolerance: x === 0 && y === 0 && z > 1 ? { share: 0.01, notHeld: [0.01, 0.0115] as const } : { share: 0.01 },
    })),
  ],
};

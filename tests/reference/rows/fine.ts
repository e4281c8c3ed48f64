import { IMPLIED, onPlate, START_C, THICK_RUN } from '../cases/cooling.ts';
import { runMoving, SPREAD, THICK } from '../cases/moving.ts';
import { coolingWall, hotSpot, movingSpot, orderOf } from '../cases/smooth.ts';
import { growth, runFront, STEEL_FRONT } from '../cases/stefan.ts';
import { chordFace, columnsOf, grooveArea, grooveFace, TENSION } from '../cases/surfaces.ts';
import { t85Thick } from '../formulas/cooling.ts';
import { eagarTsai, KOU_STEEL as metal, neumann, rosenthalThick } from '../formulas/heat.ts';
import { segmentHeight } from '../formulas/surface.ts';
import { once, type Row, type Section } from '../run.ts';

const SOURCE_ET = 'Eagar & Tsai, Weld. J. 62 (1983) 346s (memory)';
const working = once(() => runMoving({ ...SPREAD, cell_mm: 0.75 }));
const half = once(() => runMoving({ ...SPREAD, cell_mm: 0.375 }));
const near = once(() =>
  runMoving({ ...THICK, cell_mm: 0.5, even_mm: 9, half_mm: 40, depth_mm: 40, length_mm: 112, time_s: 38 }),
);
type At = readonly [number, number, number];
const PLACES: readonly At[] = [
  [0, 0, 2.625],
  [0, 0, 5],
  [0, 0, 0.375],
];
const NEARER: readonly At[] = [
  [0, 5, 0],
  [-5, 5, 0],
  [0, 0, 5],
  [0, 4, 4],
];
const gaussian = (wake: ReturnType<typeof runMoving>, [x, y, z]: At): number =>
  eagarTsai(metal, SPREAD.power_W, SPREAD.speed_mmps, SPREAD.radius_mm, x, y, z, wake.time_s);
const errorAt = (wake: ReturnType<typeof runMoving>, at: At): number =>
  Math.abs(wake.rise(...at) / gaussian(wake, at) - 1);

const SMOOTH = [
  ['hot spot in an insulated cube', hotSpot, 0.75, 0.375],
  ['hot spot in an insulated cube', hotSpot, 0.375, 0.1875],
  ['sine of heat between held faces', (h: number): number => coolingWall(h, 'b'), 0.375, 0.1875],
  ['Gaussian moving over an insulated block', movingSpot, 0.75, 0.15],
] as const;

function frozen(wall_C: number): Row[] {
  const exact = once(() => neumann({ ...STEEL_FRONT, wall_C }));
  const times = Array.from({ length: 80 }, (_, i) => 0.5 + 0.05 * i);
  const front = once(() => runFront(wall_C, 'b', times, 0.25));
  const source = 'Stefan / Neumann, Carslaw & Jaeger ch. XI';
  return [
    {
      check: `front's growth from a wall at ${wall_C} °C, 0.25 mm cells`,
      source,
      unit: 'mm/√s',
      expected: () => exact().front(1),
      got: () => growth(front()),
      tolerance: { share: 0.01 },
    },
    {
      check: `front at any instant, wall at ${wall_C} °C, 0.25 mm cells`,
      source,
      unit: 'mm',
      expected: 0,
      got: () => Math.max(...front().map(({ time_s, front_mm }) => Math.abs(front_mm - exact().front(time_s)))),
      tolerance: { amount: 0.04 },
      digits: 2,
    },
  ];
}

const CHORD = 6 * Math.SQRT2;
function steep(fraction: number): Row[] {
  const phi = (65 * Math.PI) / 180;
  const tolerance = fraction === 1 ? ('shown beside' as const) : { share: 0.01 };
  const { n, middle } = columnsOf(CHORD, fraction);
  const crown = n >> 1;
  return [
    {
      check: `pressure in a groove at 110°, columns of ${fraction}`,
      source: 'Young-Laplace p = 2γ sin φ / w',
      unit: 'Pa',
      expected: (2 * TENSION * 1000 * Math.sin(phi)) / CHORD,
      got: () => grooveFace(6, grooveArea(6, 110), fraction).pressure_Pa,
      tolerance,
    },
    {
      check: `crown of 3 mm convexity, columns of ${fraction}`,
      source: 'circular segment (geometry)',
      unit: 'mm',
      expected: segmentHeight(CHORD, 3, middle(crown) - CHORD / 2),
      got: () => chordFace(CHORD, 3, fraction).height_mm[crown]!,
      tolerance,
    },
  ];
}

export const fine: Section = {
  name: 'fine',
  title: 'Finer cells',
  note: 'From `npm run test:slow`: what misses 1 % at the working cells comes inside it on finer ones, with the square of the cell.',
  rows: [
    ...PLACES.map((at) => ({
      check: `Gaussian of 2 mm at (${at.join(', ')}), 0.375 mm cells`,
      source: SOURCE_ET,
      unit: 'K',
      expected: () => gaussian(half(), at),
      got: () => half().rise(...at),
      tolerance: { share: 0.01 },
    })),
    ...PLACES.slice(0, 2).map(
      (at): Row => ({
        check: `order at (${at.join(', ')}) from 0.75 to 0.375 mm`,
        source: SOURCE_ET,
        unit: '',
        expected: 2,
        got: () => orderOf(errorAt(working(), at), errorAt(half(), at), 2),
        tolerance: { band: [1.8, 2.3] },
        digits: 3,
      }),
    ),
    ...NEARER.map((at) => ({
      check: `thick plate at (${at.join(', ')}), ten cells off, 0.5 mm cells`,
      source: 'Rosenthal, Weld. J. 20 (1941) 220s',
      unit: 'K',
      expected: rosenthalThick(metal, THICK.power_W, THICK.speed_mmps, ...at),
      got: () => near().rise(...at),
      tolerance: { share: 0.01 },
    })),
    ...SMOOTH.map(
      ([name, errorOf, coarse, finer]): Row => ({
        check: `${name}: order from ${coarse} to ${finer} mm`,
        source: 'closed forms of the section on order',
        unit: '',
        expected: 2,
        got: () => orderOf(errorOf(coarse), errorOf(finer), coarse / finer),
        tolerance: { band: [1.8, 3] },
        digits: 3,
      }),
    ),
    ...[20, 1000].flatMap(frozen),
    {
      check: "t8/5 of a thick plate of the formula's metal, 0.5 mm cells",
      source: 'EN 1011-2 annex D (SSAB welding handbook 3.2)',
      unit: 's',
      expected: t85Thick(1, START_C),
      got: () => onPlate({ ...THICK_RUN, material: IMPLIED, cell_mm: 0.5 }, 40, 50, 2).t85_s,
      tolerance: { share: 0.1 },
      digits: 3,
    },
    ...[1, 0.5, 0.25].flatMap(steep),
  ],
};

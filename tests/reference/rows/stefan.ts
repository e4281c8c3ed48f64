import { growth, HALF_SPACE_WALL_C, halfSpace, runFront, STEEL_FRONT } from '../cases/stefan.ts';
import { steelHalfSpace } from '../formulas/boltzmann.ts';
import { neumann } from '../formulas/heat.ts';
import { once, type Row, type Section } from '../run.ts';

const SOURCE = 'Stefan / Neumann, Carslaw & Jaeger ch. XI (ExactFieldSolutions.jl Diffusion1D_StefanProblem)';
const TIMES = Array.from({ length: 80 }, (_, i) => 0.5 + 0.05 * i);

function frozen(wall_C: number, way: 'b' | 'y'): Row[] {
  const exact = once(() => neumann({ ...STEEL_FRONT, wall_C }));
  const front = once(() => runFront(wall_C, way, TIMES));
  return [
    {
      check: `front's growth s/√t from a wall at ${wall_C} °C, along ${way}`,
      source: SOURCE,
      unit: 'mm/√s',
      expected: () => exact().front(1),
      got: () => growth(front()),
      tolerance: { share: 0.01 },
    },
    {
      check: `front at any instant, largest difference, wall at ${wall_C} °C, along ${way}`,
      source: SOURCE,
      unit: 'mm',
      expected: 0,
      got: () => Math.max(...front().map(({ time_s, front_mm }) => Math.abs(front_mm - exact().front(time_s)))),
      tolerance: { amount: 0.1 },
      digits: 2,
    },
  ];
}

const profile = once(() => steelHalfSpace(HALF_SPACE_WALL_C));
const space = once(() => halfSpace(4));

export const stefan: Section = {
  name: 'stefan',
  title: 'Melting front, and steel with its own curves',
  note: 'Liquid at its melting point freezes from a held wall; the front is the frozen share of all cells, which sways by up to an eighth of a cell (0.09 mm) while it crosses one. Melting is spread over 0.2 K. Below, a steel half space whose face jumps to 1100 °C: every term of the curves, the peak of specific heat at 735 °C with them.',
  rows: [
    ...[20, 500, 1000].flatMap((wall_C) => [...frozen(wall_C, 'b'), ...frozen(wall_C, 'y')]),
    ...[1.5, 3, 4.5, 6, 9, 12].map((x) => ({
      check: `steel at 20 °C, face at 1100 °C for 4 s, ${x} mm in`,
      source: 'Boltzmann 1894 similarity with the curves of EN 1993-1-2, by shooting',
      unit: '°C',
      expected: () => profile()(x / Math.sqrt(space().time_s)),
      got: () => space().at(x),
      tolerance: { share: 0.01 },
    })),
  ],
};

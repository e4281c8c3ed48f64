import { describe, it } from 'vitest';
import { growth, HALF_SPACE_WALL_C, halfSpace, runFront, STEEL_FRONT } from './cases/stefan.ts';
import { steelHalfSpace } from './formulas/boltzmann.ts';
import { neumann } from './formulas/heat.ts';
import { openReport } from './report.ts';

const report = openReport('stefan', 'Melting front, and steel with its own curves');
report.note(
  'Liquid at its melting point freezes from a held wall; the front is the frozen share of all cells, which sways by up to an eighth of a cell (0.09 mm) while it crosses one. Melting is spread over 0.2 K. Below, a steel half space whose face jumps to 1100 °C: every term of the curves, the peak of specific heat at 735 °C with them.',
);

const SOURCE = 'Stefan / Neumann, Carslaw & Jaeger ch. XI (ExactFieldSolutions.jl Diffusion1D_StefanProblem)';
const TIMES = Array.from({ length: 80 }, (_, i) => 0.5 + 0.05 * i);

describe('Stefan', () => {
  it.each([20, 500, 1000])('freezing from a wall at %d °C', (wall_C) => {
    const exact = neumann({ ...STEEL_FRONT, wall_C });
    for (const way of ['b', 'y'] as const) {
      const front = runFront(wall_C, way, TIMES);
      report.check({
        check: `front's growth s/√t from a wall at ${wall_C} °C, along ${way}`,
        source: SOURCE,
        unit: 'mm/√s',
        expected: exact.front(1),
        got: growth(front),
        tolerance: { share: 0.01 },
      });
      report.check({
        check: `front at any instant, largest difference, wall at ${wall_C} °C, along ${way}`,
        source: SOURCE,
        unit: 'mm',
        expected: 0,
        got: Math.max(...front.map(({ time_s, front_mm }) => Math.abs(front_mm - exact.front(time_s)))),
        tolerance: { amount: 0.1 },
        digits: 2,
      });
    }
  });
});

describe('steel half space', () => {
  it('follows the similarity profile of its own curves', () => {
    const profile = steelHalfSpace(HALF_SPACE_WALL_C);
    const { time_s, at } = halfSpace(4);
    for (const x of [1.5, 3, 4.5, 6, 9, 12])
      report.check({
        check: `steel at 20 °C, face at 1100 °C for 4 s, ${x} mm in`,
        source: 'Boltzmann 1894 similarity with the curves of EN 1993-1-2, by shooting',
        unit: '°C',
        expected: profile(x / Math.sqrt(time_s)),
        got: at(x),
        tolerance: { share: 0.01 },
      });
  });
});

report.readme();

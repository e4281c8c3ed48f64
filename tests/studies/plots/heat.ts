/** Plots of heat: histories, lines through a moving source, freezing, cooling times. */
import * as Plot from '@observablehq/plot';
import { createHeatPiece } from '../../../engine/index.ts';
import { constantMaterial } from '../../reference/cases/constant.ts';
import { IMPLIED, onPlate, START_C, STEEL, STILL_AIR, THICK_RUN, THIN_RUN } from '../../reference/cases/cooling.ts';
import { type MovingCase, runMoving, SPREAD, THICK, THIN } from '../../reference/cases/moving.ts';
import { HALF_SPACE_WALL_C, halfSpace, runFront, STEEL_FRONT } from '../../reference/cases/stefan.ts';
import { steelHalfSpace } from '../../reference/formulas/boltzmann.ts';
import { t85Thick, t85Thin } from '../../reference/formulas/cooling.ts';
import {
  eagarTsai,
  lineSource,
  KOU_STEEL as metal,
  neumann,
  planeSource,
  pointSource,
  rosenthalThick,
  rosenthalThin,
} from '../../reference/formulas/heat.ts';
import { COLOURS, dots, line, type Panel, type Point, sheet, steps, words } from './sheet.ts';

const H = 0.75;

/** Rise against time at some distances from heat set free at once. */
function instantaneous(
  title: string,
  cells: [number, number, number],
  joules: number,
  formula: (r: number, t: number) => number,
  afar: number[],
): Panel {
  const [na, nb, ny] = cells;
  const piece = createHeatPiece({
    piece: { kind: 'block', width_mm: na * H, depth_mm: nb * H, length_mm: ny * H },
    cell_mm: H,
    material: constantMaterial(metal),
    start_C: 0,
  });
  const middle = { a_mm: (na / 2) * H, b_mm: (-nb / 2) * H, y_mm: (ny / 2) * H };
  piece.putHeat(middle, joules);
  const got: Point[][] = afar.map(() => []);
  for (const t of steps(0.6, 4, 17)) {
    const time = piece.run(t);
    afar.forEach((r, k) => {
      const x = na > 1 ? r : 0;
      const z = na > 1 ? 0 : r;
      got[k]!.push({ x: time, y: piece.temperature({ ...middle, a_mm: middle.a_mm + x, b_mm: middle.b_mm - z }) });
    });
  }
  const top = 1.1 * Math.max(formula(afar[0]!, 0.6), formula(afar[0]!, 1));
  const marks = afar.flatMap((r, k) => {
    const exact = steps(0.6, 4, 120).map((t) => ({ x: t, y: formula(r, t) }));
    return [
      line(exact),
      dots(got[k]!, COLOURS[k]!),
      words(`${r} mm`, 0.8 + 0.9 * k, formula(r, 0.8 + 0.9 * k) + top / 22, COLOURS[k]),
    ];
  });
  return {
    title,
    options: { marks, x: { label: 'time, s' }, y: { label: 'rise, K', domain: [0, top] } },
  };
}

/** Temperature against time at fixed places that the source passes. */
function passing(
  title: string,
  c: MovingCase,
  places: [number, number][],
  labels: number[],
  exact: (x: number, y: number, z: number) => number,
): Panel {
  const wake = runMoving(c);
  const reach = 26;
  const marks = places.flatMap(([y, z], k) => {
    // Quasi-steady: places along the path at one instant are one place at as many instants.
    const got = steps(-reach, 8, 34).map((x) => ({ x: -x / c.speed_mmps, y: wake.rise(x, y, z) }));
    const want = steps(-reach, 8, 200).map((x) => ({ x: -x / c.speed_mmps, y: exact(x, y, z) }));
    return [
      line(want),
      dots(got, COLOURS[k]!),
      words(`${y} beside, ${z} below`, (reach / c.speed_mmps) * 0.55, labels[k]!, COLOURS[k]),
    ];
  });
  return { title, options: { marks, x: { label: 'time after the source passed, s' }, y: { label: 'rise, K' } } };
}

export function histories(): string {
  return sheet('Temperature against time: model (dots, 0.75 mm cells) and formula (lines)', [
    instantaneous(
      'Plane source, 100 J/mm²',
      [1, 81, 1],
      100 * H * H,
      (r, t) => planeSource(metal, 100, r, t),
      [3, 6, 9],
    ),
    instantaneous('Line source, 100 J/mm', [61, 61, 1], 100 * H, (r, t) => lineSource(metal, 100, r, t), [3, 6, 9]),
    instantaneous('Point source, 1000 J', [49, 49, 49], 1000, (r, t) => pointSource(metal, 1000, r, t), [3, 4.5, 6]),
    passing(
      'Rosenthal, thick plate, 3200 W, 2.4 mm/s',
      THICK,
      [
        [6, 0],
        [8, 0],
        [6, 6],
      ],
      [950, 780, 380],
      (x, y, z) => rosenthalThick(metal, THICK.power_W, THICK.speed_mmps, x, y, z),
    ),
    passing(
      'Rosenthal, 6 mm sheet, 1976 W, 4 mm/s',
      THIN,
      [
        [6, 0],
        [8, 0],
        [12, 0],
      ],
      [680, 450, 280],
      (x, y) => rosenthalThin(metal, THIN.power_W, THIN.speed_mmps, THIN.depth_mm, x, y),
    ),
    quench(),
  ]);
}

/** Steel with its own curves: the profile against distance. */
function quench(): Panel {
  const profile = steelHalfSpace(HALF_SPACE_WALL_C);
  const marks = [0.5, 2, 6].flatMap((t, k) => {
    const { time_s, at } = halfSpace(t);
    const got = steps(0.75, 18, 23).map((x) => ({ x, y: at(x) }));
    const want = steps(0, 18, 180).map((x) => ({ x, y: profile(x / Math.sqrt(time_s)) }));
    const x = 3.5 + 2.2 * k;
    return [line(want), dots(got, COLOURS[k]!), words(`${t} s`, x, profile(x / Math.sqrt(time_s)) + 30, COLOURS[k])];
  });
  return {
    title: 'Steel curves of EN 1993-1-2, face at 1100 °C: similarity solution',
    options: { marks, x: { label: 'distance in, mm' }, y: { label: '°C' } },
  };
}

export function moving(): string {
  const { power_W, speed_mmps, radius_mm } = SPREAD;
  const wake = runMoving(SPREAD);
  const panel = (
    title: string,
    label: string,
    at: (s: number) => [number, number, number],
    from: number,
    to: number,
  ): Panel => ({
    title,
    options: {
      marks: [
        line(
          steps(from, to, 160).map((s) => ({ x: s, y: eagarTsai(metal, power_W, speed_mmps, radius_mm, ...at(s)) })),
        ),
        dots(
          steps(from, to, 28).map((s) => ({ x: s, y: wake.rise(...at(s)) })),
          COLOURS[0],
        ),
      ],
      x: { label },
      y: { label: 'rise, K' },
    },
  });
  return sheet('Eagar and Tsai: 1976 W, 4 mm/s, Gaussian of 2 mm; model (dots, 0.75 mm cells) and formula (lines)', [
    panel('Along the path, 0.375 mm below the face', 'behind (-) and ahead (+), mm', (s) => [s, 0, H / 2], -24, 8),
    panel('Along the path, 3 mm below the face', 'behind (-) and ahead (+), mm', (s) => [s, 0, 3], -24, 8),
    panel('Across, 0.375 mm below the face', 'beside, mm', (s) => [0, s, H / 2], 0, 12),
    panel('Straight down', 'below, mm', (s) => [0, 0, s], H / 2, 12),
  ]);
}

export function stefan(): string {
  const walls = [20, 500, 1000];
  const times = steps(0.2, 4.4, 42);
  const front = walls.flatMap((wall_C, k) => {
    const exact = neumann({ ...STEEL_FRONT, wall_C });
    return [
      line(steps(0, 2.1, 60).map((root) => ({ x: root, y: exact.front(root * root) }))),
      dots(
        runFront(wall_C, 'b', times).map(({ time_s, front_mm }) => ({ x: Math.sqrt(time_s), y: front_mm })),
        COLOURS[k]!,
      ),
      words(`wall at ${wall_C} °C`, 0.1, 9.4 - 0.7 * k, COLOURS[k]),
    ];
  });
  const off = walls.flatMap((wall_C, k) => {
    const exact = neumann({ ...STEEL_FRONT, wall_C });
    const got = runFront(wall_C, 'b', times).map(({ time_s, front_mm }) => ({
      x: exact.front(time_s) / H,
      y: front_mm - exact.front(time_s),
    }));
    return [dots(got, COLOURS[k]!)];
  });
  return sheet('Freezing from a held wall: model (dots, 0.75 mm cells) and Neumann (lines)', [
    { title: 'Front against √t', options: { marks: front, x: { label: '√t, √s' }, y: { label: 'frozen, mm' } } },
    {
      title: 'Difference, against the front in cells: it sways as the front crosses each',
      options: {
        marks: [Plot.ruleY([0]), ...off],
        x: { label: 'front, cells' },
        y: { label: 'mm', domain: [-0.12, 0.12] },
        grid: true,
      },
    },
  ]);
}

export function cooling(): string {
  const show = (title: string, runs: [string, ReturnType<typeof onPlate>][], formula: number, until: number): Panel => {
    const marks = runs.flatMap(([name, run], k) => {
      const cut = run.history.findIndex((p) => p.temp_C === run.peak_C);
      const at800 = run.history.findIndex((p, i) => i > cut && p.temp_C < 800);
      const zero = run.history[at800]!.time_s;
      const data = run.history
        .filter((p, i) => i % 4 === 0 && p.time_s - zero > -4 && p.temp_C <= 1200)
        .map((p) => ({ x: p.time_s - zero, y: p.temp_C }));
      return [
        Plot.line(data, { x: 'x', y: 'y', stroke: COLOURS[k]!, strokeWidth: 1.6 }),
        words(`${name}: ${run.t85_s.toFixed(1)} s`, until * 0.08, 1080 - 60 * k, COLOURS[k]),
      ];
    });
    return {
      title,
      options: {
        marks: [
          Plot.ruleY([500, 800], { stroke: '#999' }),
          Plot.ruleX([0, formula], { stroke: '#222', strokeDasharray: '4 3' }),
          words(`formula: ${formula.toFixed(1)} s`, until * 0.08, 1140),
          ...marks,
        ],
        x: { label: 'time after 800 °C, s', domain: [-4, until] },
        y: { label: '°C', domain: [400, 1200] },
        clip: true,
      },
    };
  };
  return sheet('Cooling time from 800 to 500 °C: EN 1011-2 (dashed) and the model on three metals', [
    show(
      'Thick plate, 1 kJ/mm',
      [
        ["formula's metal", onPlate({ ...THICK_RUN, material: IMPLIED }, 40, 50, 2)],
        ['steel curves', onPlate({ ...THICK_RUN, material: STEEL }, 30, 45, 2)],
      ],
      t85Thick(1, START_C),
      8,
    ),
    show(
      'Thin plate, 6 mm, 0.6 kJ/mm',
      [
        ["formula's metal", onPlate({ ...THIN_RUN, material: IMPLIED }, 6, 70, 2)],
        ['steel curves, insulated', onPlate({ ...THIN_RUN, material: STEEL }, 6, 75, 2)],
        ['steel curves, losses to air', onPlate({ ...THIN_RUN, material: STEEL, losses: STILL_AIR }, 6, 75, 2)],
      ],
      t85Thin(0.6, 6, START_C),
      18,
    ),
  ]);
}

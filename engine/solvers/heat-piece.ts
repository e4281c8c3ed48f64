/**
 * Heat alone: the engine's conduction on a piece of plain shape, without arc, wire or puddle, so that its answers can be held against
 * closed forms and other people's numbers. It runs on the rods and kernels of an attempt, through the same `tickHeat`.
 *
 *     const bar = createHeatPiece({
 *       piece: { kind: 'block', width_mm: 40, depth_mm: 20, length_mm: 120 },
 *       cell_mm: 0.75,
 *       material: { kind: 'steel' },
 *       start_C: 20,
 *       sources: [{ faces: ['b+'], power_W: 2000, radius_mm: 2, path: (t) => ({ a_mm: 20, b_mm: 0, y_mm: 10 + 3 * t }) }],
 *     });
 *     bar.run(20);
 *     bar.temperature({ a_mm: 20, b_mm: -5, y_mm: 40 });
 */

import { lossTable } from '../heat/losses.ts';
import { layHeat } from '../heat/program.ts';
import { tickHeat } from '../heat/step.ts';
import { EngineError } from '../input/error.ts';
import { firstCell } from '../kernel/layout.ts';
import { storedEnergy } from '../output/balance.ts';
import { calibration } from '../physics/calibration.ts';
import { DENSITY_GPMM3, enthalpyAt, liquidFraction, lookup, type MaterialTable } from '../physics/steel.ts';
import { locateAll } from '../state/metal.ts';
import type { Heated } from '../state/state.ts';
import { buildBlock, holding } from './block.ts';
import { checkHeatCase } from './check.ts';
import { buildWalls, conductWalls } from './held.ts';
import { lagrange, nearestFour } from './interpolate.ts';
import { buildJointPiece } from './joint-piece.ts';
import type { PieceMesh } from './mesh.ts';
import { createSourceWork, heatFaces } from './source.ts';
import { longestStep, stepOfCubes } from './step.ts';
import { tableOf } from './substance.ts';
import type { HeatAccount, HeatCase, HeatField, Place } from './types.ts';

/** A piece of metal being heated. */
export interface HeatPiece {
  readonly kernel: 'reference' | 'simd';
  /** Length of a step and time done, s. */
  readonly step_s: number;
  readonly time_s: number;
  /** Cells computed. */
  readonly cells: number;
  /** Steps until the step nearest to `until_s` is done; `watch` is called after every step. Returns the time reached. */
  run(until_s: number, watch?: (piece: HeatPiece) => void): number;
  /** Heat set free at once, in the cell that holds the place (shared evenly where the place lies between cells). */
  putHeat(at: Place, joules: number): void;
  /** °C, between cell centres by Lagrange's cubic in blocks, linear in joints. */
  temperature(at: Place): number;
  /** Highest temperature so far, °C. */
  peak(at: Place): number;
  /** Temperature, peak, enthalpy and liquid share of every cell now; fresh arrays each time. */
  field(): HeatField;
  /** Joules in, out and kept since the start. */
  account(): HeatAccount;
}

/** A piece laid out in cells, before its first step. */
interface LaidPiece {
  mesh: PieceMesh;
  walls: ReturnType<typeof buildWalls>;
  table: MaterialTable;
  s: Heated;
}

function meshOf({ piece, cell_mm, held = [] }: HeatCase): PieceMesh {
  if (piece.kind !== 'block') return buildJointPiece(piece, cell_mm);
  return buildBlock(
    piece,
    cell_mm,
    held.map((h) => h.face),
  );
}

/** @throws EngineError for a step that is not stable */
function layPiece(heatCase: HeatCase): LaidPiece {
  const { losses, held = [] } = heatCase;
  const mesh = meshOf(heatCase);
  const { plan } = mesh;
  const table = tableOf(heatCase.material);
  const walls = buildWalls(mesh, table, held);
  const longest = longestStep(mesh, walls, table.steepest);
  const dt = heatCase.step_s ?? Math.min(longest, stepOfCubes(plan, table.steepest));
  if (dt > longest)
    throw new EngineError('out-of-range', 'step_s', dt, `at most ${longest} s, where the step is still stable`);
  const faces = { emissivity: losses?.emissivity ?? 0, convection: (losses?.convection_Wpm2K ?? 0) * 1e-6 };
  const off = lossTable(table, losses?.ambient_C ?? 20, faces);
  const heat = layHeat({
    rods: plan.rods,
    ny: plan.ny,
    dy: plan.dy,
    dt,
    table,
    losses: off,
    gapConductance: calibration().gapConductance,
    fill: mesh.fill,
    startH: 0,
    tiles: 0,
    kernel: heatCase.kernel ?? 'auto',
  });
  const s: Heated = {
    plan,
    heat,
    lossTable: off,
    fine: { from: 0, to: plan.ny },
    dt,
    tick: 0,
    w: mesh.w,
    surfacePlace: new Int32Array(mesh.w.length),
    surfaceCell: new Int32Array(mesh.w.length),
    underCell: new Int32Array(mesh.w.length),
    ledger: { lost_J: 0, sink_J: 0 },
    options: { joint: { ambient_C: losses?.ambient_C ?? 20, sink_WpmmK: losses?.sink_WpmmK ?? 0 } },
  };
  locateAll(s);
  start(heatCase, mesh, s);
  return { mesh, walls, table, s };
}

/** Where the joules are: what was put in, what went through held walls and sides, what is kept since the start. */
function accountOf({ ledger }: Heated, put: number, through: number, atStart: number, now: number): HeatAccount {
  const { lost_J, sink_J } = ledger;
  const gained = now - atStart;
  const off = put + through - lost_J - sink_J - gained;
  const moved = Math.max(Math.abs(put) + Math.abs(through), Math.abs(lost_J) + Math.abs(sink_J), Math.abs(atStart));
  return {
    put_J: put,
    held_J: through,
    lost_J,
    sink_J,
    gained_J: gained,
    error: moved > 0 ? Math.abs(off) / moved : 0,
  };
}

/**
 * Lays the piece out in cells at its starting temperature; `run` then takes it through time.
 * @throws EngineError with the field's path when the case cannot be computed.
 */
export function createHeatPiece(heatCase: HeatCase): HeatPiece {
  checkHeatCase(heatCase);
  const { sources = [] } = heatCase;
  const { mesh, walls, table, s } = layPiece(heatCase);
  const { plan, heat, dt } = s;
  const atStart = storedEnergy(s);
  const work = createSourceWork(mesh);
  const yEdges = Float64Array.from({ length: plan.ny + 1 }, (_, j) => mesh.y0_mm + (j - 0.5) * plan.dy);
  const yMiddles = Float64Array.from({ length: plan.ny }, (_, j) => mesh.y0_mm + j * plan.dy);
  let put = 0;
  let through = 0;

  // Conduction first, then the step's heat: the plain explicit step, whose steady state is exact. (Heat first and read after conduction
  // would be colder under the source by one step's heat; an attempt does so, but takes its peaks and fluxes in between.)
  const step = (): void => {
    const middle = (s.tick + 0.5) * dt;
    s.tick++;
    tickHeat(s);
    for (const source of sources) {
      const at = source.path(middle);
      if (at !== null) put += heatFaces(mesh, heat, work, source, at, source.power_W * dt);
    }
    if (walls.length > 0) through += conductWalls(mesh, heat, walls);
  };

  const read = (values: Float32Array, at: Place): number => {
    const first = nearestFour(yMiddles, at.y_mm);
    const along = lagrange(yMiddles, first, at.y_mm);
    let sum = 0;
    for (const { rod, weight } of mesh.read(at.a_mm, at.b_mm)) {
      const base = firstCell(heat.layout, rod) + first;
      along.forEach((share, k) => {
        sum += weight * share * lookup(table.temperature, values[base + k]!);
      });
    }
    return sum;
  };

  const self: HeatPiece = {
    kernel: heat.kernel.name,
    step_s: dt,
    get time_s() {
      return s.tick * dt;
    },
    cells: plan.rods.count * plan.ny,
    run(until_s, watch) {
      const last = Math.round(until_s / dt);
      while (s.tick < last) {
        step();
        watch?.(self);
      }
      return s.tick * dt;
    },
    putHeat(at, joules) {
      const rods = mesh.under(at.a_mm, at.b_mm);
      const slices = holding(yEdges, at.y_mm);
      if (rods.length === 0 || slices.length === 0)
        throw new EngineError('out-of-range', 'at', Object.values(at).join(', '), 'a place inside the piece');
      const share = joules / (rods.length * slices.length);
      for (const rod of rods)
        for (const j of slices) {
          const cell = firstCell(heat.layout, rod) + j;
          heat.H[cell]! += share / (plan.rods.area_mm2[rod]! * plan.dy * DENSITY_GPMM3 * heat.fill[cell]!);
        }
      put += joules;
    },
    temperature: (at) => read(heat.H, at),
    peak: (at) => read(heat.peak, at),
    field: () => fieldOf(mesh, s),
    account: () => accountOf(s, put, through, atStart, storedEnergy(s)),
  };
  return self;
}

function start(heatCase: HeatCase, mesh: PieceMesh, s: Heated): void {
  const { heat, plan } = s;
  const { start_C } = heatCase;
  const { a_mm, b_mm, count } = plan.rods;
  const at: Place = { a_mm: 0, b_mm: 0, y_mm: 0 };
  for (let r = 0; r < count; r++) {
    const base = firstCell(heat.layout, r);
    at.a_mm = a_mm[r]!;
    at.b_mm = b_mm[r]!;
    for (let j = 0; j < plan.ny; j++) {
      at.y_mm = mesh.y0_mm + j * plan.dy;
      const temp = typeof start_C === 'number' ? start_C : start_C(at);
      if (!Number.isFinite(temp))
        throw new EngineError('out-of-range', `start_C at ${at.a_mm}, ${at.b_mm}, ${at.y_mm} mm`, temp, 'finite °C');
      heat.H[base + j] = enthalpyAt(heat.table, temp);
    }
  }
  heat.peak.set(heat.H);
}

function fieldOf(mesh: PieceMesh, s: Heated): HeatField {
  const { plan, heat } = s;
  const { rods, ny } = plan;
  const n = rods.count * ny;
  const field: HeatField = {
    rods: rods.count,
    ny,
    a_mm: rods.a_mm.slice(),
    b_mm: rods.b_mm.slice(),
    area_mm2: rods.area_mm2.slice(),
    y0_mm: mesh.y0_mm,
    dy_mm: plan.dy,
    temp_C: new Float32Array(n).fill(Number.NaN),
    peak_C: new Float32Array(n).fill(Number.NaN),
    enthalpy_Jpmm3: new Float32Array(n),
    liquid: new Float32Array(n),
  };
  for (let r = 0; r < rods.count; r++) {
    if (mesh.fill[r]! <= 0) continue;
    const base = firstCell(heat.layout, r);
    for (let j = 0; j < ny; j++) {
      const h = heat.H[base + j]!;
      field.temp_C[r * ny + j] = lookup(heat.table.temperature, h);
      field.peak_C[r * ny + j] = lookup(heat.table.temperature, heat.peak[base + j]!);
      field.enthalpy_Jpmm3[r * ny + j] = h * DENSITY_GPMM3;
      field.liquid[r * ny + j] = liquidFraction(heat.table, h);
    }
  }
  return field;
}

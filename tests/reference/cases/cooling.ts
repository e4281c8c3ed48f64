/** Runs of a source along a plate or joint, and how long chosen places take from 800 to 500 °C. */
import {
  type ConstantMaterial,
  createHeatPiece,
  type HeatCase,
  type Losses,
  type Place,
  type SteelMaterial,
} from '../../../engine/index.ts';
import { impliedMetal } from '../formulas/cooling.ts';
import { constantMaterial } from './constant.ts';

export const START_C = 20;
/** Losses of an attempt. */
export const STILL_AIR: Losses = { ambient_C: 20, emissivity: 0.5, convection_Wpm2K: 20 };
export const STEEL: SteelMaterial = { kind: 'steel' };
/** The metal the formulas stand for; it melts without latent heat, so that a faying face closes under the weld. */
export const IMPLIED: ConstantMaterial = {
  ...constantMaterial(impliedMetal(START_C)),
  melting: { solidus_C: 1460, liquidus_C: 1520, latent_Jpkg: 0 },
};

const END_MM = 10;
const SAMPLE_S = 0.05;

export interface Cooling {
  t85_s: number;
  peak_C: number;
  /** Temperature at the place, a sample every 0.05 s. */
  history: { time_s: number; temp_C: number }[];
}

export interface CoolingRun {
  /** Arc heat per length, kJ/mm, and travel, mm/s. */
  heat_kJpmm: number;
  speed_mmps: number;
  radius_mm: number;
  length_mm: number;
  /** The place read lies this far before the end of the run. */
  back_mm: number;
  cell_mm: number;
  material: SteelMaterial | ConstantMaterial;
  losses?: Losses;
}

function follow(c: HeatCase, run: CoolingRun, at: Place, late_s: number): Cooling {
  const piece = createHeatPiece(c);
  const history: Cooling['history'] = [];
  let last = START_C;
  let peak = START_C;
  let from = Number.NaN;
  for (;;) {
    const before = piece.time_s;
    const time_s = piece.run(before + SAMPLE_S);
    const temp_C = piece.temperature(at);
    history.push({ time_s, temp_C });
    peak = Math.max(peak, temp_C);
    const crossed = (level: number): number => before + ((last - level) / (last - temp_C)) * (time_s - before);
    if (last >= 800 && temp_C < 800) from = crossed(800);
    if (last >= 500 && temp_C < 500) return { t85_s: crossed(500) - from, peak_C: peak, history };
    if (time_s > late_s) throw new Error(`still ${temp_C} °C after ${time_s} s, ${run.length_mm} mm run`);
    last = temp_C;
  }
}

const path =
  (run: CoolingRun) =>
  (t: number): Place | null => {
    const y = END_MM + run.speed_mmps * t;
    return y > run.length_mm - END_MM ? null : { a_mm: 0, b_mm: 0, y_mm: y };
  };

const late = (run: CoolingRun): number => run.length_mm / run.speed_mmps + 120;

/** On a flat plate, read under the middle of the run. Half the plate is computed. */
export function onPlate(run: CoolingRun, thick_mm: number, half_mm: number, depth_mm: number): Cooling {
  const even = Math.min(12, thick_mm);
  return follow(
    {
      piece: {
        kind: 'block',
        width_mm: half_mm,
        depth_mm: thick_mm,
        length_mm: run.length_mm,
        even: { a_mm: [0, 12], b_mm: [-even, 0] },
      },
      cell_mm: run.cell_mm,
      material: run.material,
      start_C: START_C,
      sources: [
        {
          faces: ['b+'],
          power_W: (run.heat_kJpmm * 1000 * run.speed_mmps) / 2,
          radius_mm: run.radius_mm,
          path: path(run),
        },
      ],
      ...(run.losses ? { losses: run.losses } : {}),
    },
    run,
    { a_mm: 0, b_mm: -depth_mm, y_mm: run.length_mm - END_MM - run.back_mm },
    late(run),
  );
}

/** In a joint, both faces heated at the root, read in plate A. */
export function inJoint(run: CoolingRun, kind: 'tee' | 'lap' | 'corner', thick_mm: number, width_mm: number): Cooling {
  return follow(
    {
      piece: {
        kind,
        plateA_mm: thick_mm,
        plateB_mm: thick_mm,
        plateWidth_mm: width_mm,
        length_mm: run.length_mm,
        gap_mm: 0,
      },
      cell_mm: run.cell_mm,
      material: run.material,
      start_C: START_C,
      sources: [
        {
          faces: ['A', 'B'],
          power_W: run.heat_kJpmm * 1000 * run.speed_mmps,
          radius_mm: run.radius_mm,
          path: path(run),
        },
      ],
      ...(run.losses ? { losses: run.losses } : {}),
    },
    run,
    { a_mm: 1, b_mm: -1.5, y_mm: run.length_mm - END_MM - run.back_mm },
    late(run),
  );
}

/** The runs of the table: thick plate 1 kJ/mm on 30 mm, thin plate 0.6 kJ/mm on 6 mm. */
export const THICK_RUN: CoolingRun = {
  heat_kJpmm: 1,
  speed_mmps: 2,
  radius_mm: 2,
  length_mm: 100,
  back_mm: 26,
  cell_mm: 0.75,
  material: STEEL,
};

export const THIN_RUN: CoolingRun = {
  heat_kJpmm: 0.6,
  speed_mmps: 2,
  radius_mm: 2,
  length_mm: 130,
  back_mm: 48,
  cell_mm: 0.75,
  material: STEEL,
};

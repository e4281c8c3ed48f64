/** Freezing against a held wall, and steel with its own curves against a hot face. */
import { createHeatPiece } from '../../../engine/index.ts';

/** Round numbers for steel; the wall's temperature is set apart. */
export const STEEL_FRONT = {
  melt_C: 1500,
  latent_Jpkg: 270e3,
  specificHeat_JpkgK: 700,
  conductivity_WpmK: 30,
  density_kgpm3: 7300,
};

/** Melting is spread over this: liquid that is just as much too warm starts to freeze ahead of the front. */
const SPREAD_K = 0.2;
const CELL_MM = 0.75;

export function runFront(
  wall_C: number,
  way: 'b' | 'y',
  times: readonly number[],
  cell_mm = CELL_MM,
): { time_s: number; front_mm: number }[] {
  const long = 24;
  const { melt_C } = STEEL_FRONT;
  const piece = createHeatPiece({
    piece: {
      kind: 'block',
      width_mm: cell_mm,
      depth_mm: way === 'b' ? long : cell_mm,
      length_mm: way === 'y' ? long : cell_mm,
    },
    cell_mm,
    material: {
      kind: 'constant',
      conductivity_WpmK: STEEL_FRONT.conductivity_WpmK,
      specificHeat_JpkgK: STEEL_FRONT.specificHeat_JpkgK,
      density_kgpm3: STEEL_FRONT.density_kgpm3,
      melting: {
        solidus_C: melt_C - SPREAD_K / 2,
        liquidus_C: melt_C + SPREAD_K / 2,
        latent_Jpkg: STEEL_FRONT.latent_Jpkg,
      },
    },
    start_C: melt_C + SPREAD_K / 2,
    held: [{ face: way === 'b' ? 'b+' : 'y-', temp_C: wall_C }],
  });
  const frozen = (): number => {
    const { liquid } = piece.field();
    return (liquid.reduce((sum, share) => sum + 1 - share, 0) / liquid.length) * long;
  };
  // The table's rounding leaves a trace of solid in liquid that is just at its melting point.
  const atStart = frozen();
  return times.map((t) => ({ time_s: piece.run(t), front_mm: frozen() - atStart }));
}

/** Growth constant s/√t of a front by least squares of s² against t: steps from cell to cell even out. mm/√s */
export function growth(front: readonly { time_s: number; front_mm: number }[]): number {
  let top = 0;
  let bottom = 0;
  for (const { time_s, front_mm } of front) {
    top += front_mm * front_mm * time_s;
    bottom += time_s * time_s;
  }
  return Math.sqrt(top / bottom);
}

export const HALF_SPACE_WALL_C = 1100;

export function halfSpace(until_s: number, cell_mm = CELL_MM): { time_s: number; at(x: number): number } {
  const piece = createHeatPiece({
    piece: { kind: 'block', width_mm: cell_mm, depth_mm: 60, length_mm: cell_mm },
    cell_mm,
    material: { kind: 'steel' },
    start_C: 20,
    held: [{ face: 'b+', temp_C: HALF_SPACE_WALL_C }],
  });
  const time_s = piece.run(until_s);
  return { time_s, at: (x) => piece.temperature({ a_mm: cell_mm / 2, b_mm: -x, y_mm: cell_mm / 2 }) };
}

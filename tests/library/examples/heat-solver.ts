// Heat alone: a source drawn along a steel block, without arc, wire or puddle.
import { createHeatPiece } from 'toehold/engine/solvers';

const block = createHeatPiece({
  piece: { kind: 'block', width_mm: 40, depth_mm: 10, length_mm: 60, even: { a_mm: [12, 28], b_mm: [-8, 0] } },
  cell_mm: 1,
  material: { kind: 'steel' },
  start_C: 20,
  sources: [{ faces: ['b+'], power_W: 1200, radius_mm: 2, path: (t) => ({ a_mm: 20, b_mm: 0, y_mm: 10 + 4 * t }) }],
  losses: { ambient_C: 20, emissivity: 0.5, convection_Wpm2K: 20 },
});
block.run(8);

/** Peak temperature at three depths under the path, °C. */
export const peaks = [-1, -3, -6].map((b_mm) => block.peak({ a_mm: 20, b_mm, y_mm: 30 }));
export const account = block.account();
export const time_s = block.time_s;

console.log(peaks, account);

import { createSimulation, defaultOptions } from '../../../engine/index.ts';

const STEPS = 60;

/** Welds a moment on a throw-away piece, so that the browser has compiled the engine before the first arc and not during it. */
export function warmUp(): void {
  const options = defaultOptions();
  const piece = createSimulation({ ...options, joint: { ...options.joint, length_mm: 20 } });
  for (let n = 0; n < STEPS; n++)
    piece.step({ u_mm: 0, y_mm: 8, tipToWork_mm: 12, workAngle_deg: 45, travelAngle_deg: 8, trigger: true });
  piece.section(8);
}

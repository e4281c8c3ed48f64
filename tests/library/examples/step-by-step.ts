// Weld pose by pose: a straight run up a lap, watching the front of the puddle; then cut it and see what was laid.
import { createSimulation, defaultJoint, defaultProcess, metalLaid_mm2 } from 'toehold/engine';

const process = { ...defaultProcess(), volts_V: 18, feed_mpmin: 4.6 };
const sim = createSimulation({ joint: { ...defaultJoint(), kind: 'lap', length_mm: 40 }, process, cell_mm: 0.75 });
const travel_mmps = 3;

/** Highest place the puddle's front was seen at, mm up the joint. */
export let front_mm = 0;
for (let n = 0; n < 1200; n++) {
  const y_mm = 4 + (travel_mmps * n) / 100;
  const trigger = y_mm < 34;
  const trace = sim.step({ u_mm: 0, y_mm, tipToWork_mm: 12, workAngle_deg: 45, travelAngle_deg: 8, trigger });
  front_mm = Math.max(front_mm, trace.frontY_mm ?? 0);
}

const cut = sim.section(20);
const column_mm = cut.u_mm[1]! - cut.u_mm[0]!;
/** Metal standing over the joint as cut, mm². */
export const onTheCut_mm2 = cut.w_mm.reduce((sum, w, i) => sum + (w - cut.plate_mm[i]!) * column_mm, 0);
export const fed_mm2 = metalLaid_mm2(process, travel_mmps);
export const accounts = sim.accounts();
export const hash = sim.hash();

console.log(front_mm, onTheCut_mm2, fed_mm2, accounts, hash);

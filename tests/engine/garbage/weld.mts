/**
 * Run by garbage.test.ts in a process of its own with room enough that nothing is ever collected: what the heap holds more at the end was
 * made on the way. Prints bytes a tick over 30 s of weld, or that something was collected after all.
 */
import { createSimulation, defaultOptions, defaultWeave, weaveHand } from '../../../engine/index.ts';

const WARM_S = 12;
const WELD_S = 30;
const options = defaultOptions();
const sim = createSimulation({ ...options, joint: { ...options.joint, length_mm: 100 } });
const poses = [...weaveHand({ ...defaultWeave(), length_mm: 90 })].slice(0, 100 * (WARM_S + WELD_S));
const used = (): number => process.memoryUsage().heapUsed;

for (const pose of poses.slice(0, 100 * WARM_S)) sim.step(pose);
const rest = poses.slice(100 * WARM_S);
globalThis.gc!();
const before = used();
let last = before;
let collected = false;
for (const [n, pose] of rest.entries()) {
  sim.step(pose);
  if (n % 100 !== 99) continue;
  collected ||= used() < last;
  last = used();
}
const ticks = rest.length * 2;
process.stdout.write(JSON.stringify({ seconds: rest.length / 100, collected, bytesPerTick: (last - before) / ticks }));

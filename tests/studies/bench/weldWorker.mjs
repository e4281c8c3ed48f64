/** Welds the standard weave on the built library and reports times; two warm-ups (the compiler settles in the second), then the counted repeats, or one each time it is asked. */
import { parentPort, workerData } from 'node:worker_threads';
import { createSimulation, defaultOptions, defaultWeave, weaveHand } from '../../../dist/engine/index.js';

const { length_mm, seconds, repeats } = workerData;
const options = defaultOptions();
options.joint.length_mm = length_mm;
const weave = { ...defaultWeave(), start_mm: 4, length_mm: Math.min(length_mm - 8, 2 * (seconds - 0.8)) };

function once() {
  const sim = createSimulation(options);
  const cpu = process.cpuUsage();
  const wall = performance.now();
  let poses = 0;
  for (const pose of weaveHand(weave)) {
    if (poses >= seconds * 100) break;
    sim.step(pose);
    poses++;
  }
  const wall_s = (performance.now() - wall) / 1000;
  const used = process.cpuUsage(cpu);
  return {
    welded_s: poses / 100,
    // Threads of one process share its clock: with several workers only wall time is meant.
    cpu_s: Math.min(wall_s, (used.user + used.system) / 1e6),
    wall_s,
    heap_MB: (process.memoryUsage().heapUsed + process.memoryUsage().arrayBuffers) / 1e6,
  };
}

once();
once();
if (repeats > 0) parentPort.postMessage(Array.from({ length: repeats }, once), []);
else parentPort.on('message', () => parentPort.postMessage([once()], []));

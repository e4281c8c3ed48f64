/**
 * Welds 20 mm of a joint anew with more volts, as *what if* does: on the piece as it lay when the arc came there, until it is solid, then cut
 * and read. First in this thread as it starts, with nothing compiled; then again and again. Runs on the built library.
 */
import { parentPort } from 'node:worker_threads';
import { createSimulation, defaultOptions, defaultWeave, POSE_RATE_HZ, weaveHand } from '../../../dist/engine/index.js';
import { readSection } from '../../../dist/scoring/index.js';

const LENGTH_MM = 20;
const FROM_MM = 16;
const FREEZE_S = 1;

const options = defaultOptions();
options.joint.length_mm = 60;
const weave = { ...defaultWeave(), start_mm: 4, length_mm: 52 };
const poses = [...weaveHand(weave)];
const firstAt = (y_mm) => Math.round((weave.shelf_s + (y_mm - weave.start_mm) / weave.travel_mmps) * POSE_RATE_HZ);
const from = firstAt(FROM_MM);
const to = firstAt(FROM_MM + LENGTH_MM);
const changed = { ...options, process: { ...options.process, volts_V: options.process.volts_V + 1 } };

function stretch(state) {
  const cpu = process.cpuUsage();
  const began = performance.now();
  const piece = createSimulation(changed);
  if (state) piece.restore(state);
  for (let n = from; n < to; n++) piece.step(poses[n]);
  const rest = { ...poses[to - 1], trigger: false };
  for (let n = 0; n < FREEZE_S * POSE_RATE_HZ; n++) piece.step(rest);
  const readings = readSection(piece.section(FROM_MM + LENGTH_MM / 2));
  if (!readings) throw new Error('nothing to read');
  const used = process.cpuUsage(cpu);
  // Time waited for other programs does not count; compiling on another core does not either.
  return Math.min(performance.now() - began, (used.user + used.system) / 1000);
}

const cold = stretch(null);
const piece = createSimulation(options);
for (let n = 0; n < from; n++) piece.step(poses[n]);
const state = piece.snapshot();
for (let n = from; n < poses.length; n++) piece.step(poses[n]);
parentPort.postMessage({ cold_ms: cold, warm_ms: Array.from({ length: 5 }, () => stretch(state)) });

/**
 * Digests of what an attempt shows to the outside, so that "the bits moved" and "the check number is made another way" can be told apart.
 * SHA-256 over trace, surface, accounts, cuts and opened root, from the engine's public door only.
 */
import { createHash, type Hash } from 'node:crypto';
import { createSimulation, type Simulation, type TraceSample } from '../../engine/index.ts';
import type { Scene } from '../scenes/scenes.ts';

/** One second of weld: check number of the state as the engine gives it, and digest of everything shown so far. */
export interface Second {
  state: string;
  shown: string;
}

/** What is digested of a pose; a later field of the trace may join without moving what stands. */
const TRACED = [
  'arcOn',
  'footU_mm',
  'footY_mm',
  'tipToWork_mm',
  'current_A',
  'power_W',
  'frontY_mm',
  'puddleBottom_mm',
  'puddleTop_mm',
  'puddleVolume_mm3',
  'wetA_mm',
  'wetB_mm',
  'fillA_mm',
  'fillB_mm',
  'nozzleTouching',
  'dripped_g',
  'spatter_g',
] as const satisfies readonly (keyof TraceSample)[];

/** Steps a scene and takes both numbers every second of weld, up to `last_s`, or to the end and there once more with cuts and opened root. */
export function witness(scene: Scene, last_s = Number.POSITIVE_INFINITY): Second[] {
  const sim = createSimulation(scene.options);
  const sha = createHash('sha256');
  const seconds: Second[] = [];
  const take = (): void => {
    seconds.push({ state: sim.hash(), shown: sha.copy().digest('hex').slice(0, 24) });
  };
  const row = new Float64Array(TRACED.length);
  for (const pose of scene.poses()) {
    const trace = sim.step(pose);
    TRACED.forEach((name, n) => {
      const value = trace[name];
      row[n] = value === null ? -1e9 : Number(value);
    });
    add(sha, row);
    sha.update(trace.regime);
    if (sim.steps % 100 !== 0) continue;
    surface(sha, sim);
    take();
    if (seconds.length >= last_s) return seconds;
  }
  surface(sha, sim);
  cuts(sha, sim);
  take();
  return seconds;
}

function surface(sha: Hash, sim: Simulation): void {
  const view = sim.surface();
  for (const field of [view.height_mm, view.temp_C, view.peak_C, view.liquid, view.frozen_s]) add(sha, field);
  sha.update(JSON.stringify(Object.entries(sim.accounts())));
}

function cuts(sha: Hash, sim: Simulation): void {
  for (const y_mm of [9, 15.3, 22]) {
    const cut = sim.section(y_mm);
    for (const field of [cut.u_mm, cut.w_mm, cut.plate_mm, cut.fill, cut.wet_s, cut.frozen_s, cut.peak_C])
      add(sha, field);
    sha.update(cut.part);
  }
  const strip = sim.rootStrip();
  add(sha, strip.depthA_mm);
  add(sha, strip.depthB_mm);
  sha.update(strip.fused);
}

/** NaN stands for "never"; its bits are the JavaScript engine's choice, so it goes in as a number nothing else has. */
function add(sha: Hash, field: Float32Array | Float64Array): void {
  const plain = field.map((v) => (Number.isNaN(v) ? -1e9 : v));
  sha.update(new Uint8Array(plain.buffer, plain.byteOffset, plain.byteLength));
}

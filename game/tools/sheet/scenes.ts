/** Scenes of the close view, welded in the engine, with their skins as the page would get them. */
import {
  createSimulation,
  type HandFaults,
  noFaults,
  type Pose,
  type SimulationOptions,
  type WeaveOptions,
  weaveHand,
} from '../../../engine/index.ts';
import { exerciseNamed } from '../../../scoring/index.ts';
import { RippleClock } from '../../core/bench/ripple-clock.ts';
import { Skin } from '../../core/bench/skin.ts';
import { CELL_MM } from '../../core/session/setup.ts';
import type { Still } from './still.ts';

export type Moment = 'root' | 'left' | 'right' | 'finished';

export interface Scene {
  name: string;
  exercise: string;
  length_mm: number;
  feed?: number;
  volts?: number;
  weave?: Partial<WeaveOptions>;
  faults?: Partial<HandFaults>;
  /** Moments of the weld, each at the first such place after `from_s`. */
  moments: readonly Moment[];
  from_s: number;
}

const IS_AT = {
  root: (u: number, half: number) => Math.abs(u) < Math.max(0.25, 0.12 * half),
  left: (u: number, half: number) => u < -0.92 * half,
  right: (u: number, half: number) => u > 0.92 * half,
};
/** The skin is read this often, so that what it settles over time has settled. */
const READ_EVERY = 4;
const COOL_STEPS = 4000;
const RUN_OUT_MM = 8;

/** Welds a scene and hands over a still at each of its moments. */
export function weldScene(scene: Scene, keep: (moment: Moment, still: Still) => void): void {
  const exercise = exerciseNamed(scene.exercise);
  if (!exercise) throw new Error(`${scene.exercise} is not a ready exercise.`);
  const settings = { ...exercise.process };
  if (scene.feed) settings.feed_mpmin = scene.feed;
  if (scene.volts) settings.volts_V = scene.volts;
  const joint = { ...exercise.joint, length_mm: scene.length_mm };
  const options: SimulationOptions = { joint, process: settings, cell_mm: CELL_MM };
  const simulation = createSimulation(options);
  const ripples = new RippleClock();
  const { nu, ny } = simulation.surface();
  const skin = new Skin(nu, ny);
  const moments = [...scene.moments];
  const hand = { ...exercise.demonstration, ...scene.weave, length_mm: scene.length_mm - RUN_OUT_MM };
  let half = 0;
  const take = (moment: Moment, torch: Still['torch']): void => {
    const t_s = simulation.steps / 100;
    const view = simulation.surface();
    skin.read(view, t_s, ripples);
    const { u0_mm, du_mm, y0_mm, dy_mm } = view;
    const grid = { nu, ny, u0_mm, du_mm, y0_mm, dy_mm };
    keep(moment, {
      joint,
      wire_mm: settings.wire_mm,
      ...grid,
      t_s,
      torch,
      skin: Buffer.from(skin.texels.buffer).toString('base64'),
    });
  };
  for (const pose of weaveHand(hand, { ...noFaults(1), ...scene.faults })) {
    const sample = simulation.step(pose);
    if (sample.arcOn) ripples.add(sample.t_s, sample.footU_mm);
    if (sample.t_s > 3) half = Math.max(half, Math.abs(sample.footU_mm));
    if (simulation.steps % READ_EVERY === 0) skin.read(simulation.surface(), sample.t_s, ripples);
    const next = moments[0];
    if (!next || next === 'finished' || !sample.arcOn || sample.t_s <= scene.from_s) continue;
    if (!IS_AT[next](sample.footU_mm, half)) continue;
    moments.shift();
    take(next, { ...pose, footU_mm: sample.footU_mm, footY_mm: sample.footY_mm });
  }
  if (moments[0] !== 'finished') return;
  const rest: Pose = { u_mm: 0, y_mm: 0, tipToWork_mm: 12, workAngle_deg: 45, travelAngle_deg: 8, trigger: false };
  for (let n = 0; n < COOL_STEPS; n++) simulation.step(rest);
  take('finished', null);
}

// Welds the scenes of the sheet in the engine and keeps their surfaces as the page would get them.
import { mkdirSync, writeFileSync } from 'node:fs';
import {
  createSimulation,
  type HandFaults,
  noFaults,
  type SimulationOptions,
  type WeaveOptions,
  weaveHand,
} from '../../../engine/index.ts';
import { exerciseNamed } from '../../../scoring/index.ts';
import { CELL_MM } from '../../setup.ts';
import { RippleClock } from '../../view/lens/ripples.ts';
import { Skin } from '../../view/lens/skin.ts';

interface Scene {
  name: string;
  exercise: string;
  length_mm: number;
  feed?: number;
  volts?: number;
  weave?: Partial<WeaveOptions>;
  faults?: Partial<HandFaults>;
  /** Moments of the weld, each at the first such place after `from_s`; null is the finished piece. */
  moments: ('root' | 'left' | 'right' | null)[];
  from_s: number;
}

const SCENES: Scene[] = [
  { name: 'warm', exercise: 'tee-inverted-v', length_mm: 42, moments: ['root', 'left', 'right', null], from_s: 12 },
  {
    name: 'cold',
    exercise: 'tee-inverted-v',
    length_mm: 34,
    feed: 3.1,
    volts: 15.5,
    moments: ['root', 'left', null],
    from_s: 10,
  },
  {
    name: 'hot',
    exercise: 'tee-inverted-v',
    length_mm: 34,
    feed: 6.6,
    volts: 20.5,
    moments: ['root', 'left'],
    from_s: 10,
  },
  {
    name: 'far-back',
    exercise: 'tee-inverted-v',
    length_mm: 34,
    faults: { lead_mm: -5 },
    moments: ['root', 'left'],
    from_s: 10,
  },
  { name: 'straight', exercise: 'straight-run', length_mm: 36, moments: ['root', null], from_s: 8 },
  { name: 'lap', exercise: 'lap-5', length_mm: 36, moments: ['root', 'right', null], from_s: 10 },
];

const AT = {
  root: (u: number, half: number) => Math.abs(u) < Math.max(0.25, 0.12 * half),
  left: (u: number, half: number) => u < -0.92 * half,
  right: (u: number, half: number) => u > 0.92 * half,
};

const out = process.argv[2];
const only = process.argv[3]?.split(',');
mkdirSync(out, { recursive: true });
for (const scene of SCENES) if (!only || only.includes(scene.name)) weld(scene);

function weld(scene: Scene): void {
  const exercise = exerciseNamed(scene.exercise);
  if (!exercise) throw new Error(`${scene.exercise} is not a ready exercise.`);
  const process_ = {
    ...exercise.process,
    ...(scene.feed ? { feed_mpmin: scene.feed } : {}),
    ...(scene.volts ? { volts_V: scene.volts } : {}),
  };
  const options: SimulationOptions = {
    joint: { ...exercise.joint, length_mm: scene.length_mm },
    process: process_,
    cell_mm: CELL_MM,
  };
  const weave = { ...exercise.demonstration, ...scene.weave, length_mm: scene.length_mm - 8 };
  const simulation = createSimulation(options);
  const ripples = new RippleClock();
  const { nu, ny } = simulation.surface();
  const skin = new Skin(nu, ny);
  const moments = [...scene.moments];
  let half = 0;
  for (const pose of weaveHand(weave, { ...noFaults(1), ...scene.faults })) {
    const sample = simulation.step(pose);
    if (sample.arcOn) ripples.add(sample.t_s, sample.footU_mm);
    if (sample.t_s > 3) half = Math.max(half, Math.abs(sample.footU_mm));
    if (simulation.steps % 4 === 0) skin.read(simulation.surface(), sample.t_s, ripples);
    const next = moments[0];
    if (next && sample.arcOn && sample.t_s > scene.from_s && AT[next](sample.footU_mm, half)) {
      moments.shift();
      keep(scene, next, simulation.steps / 100, { ...pose, footU_mm: sample.footU_mm, footY_mm: sample.footY_mm });
    }
  }
  if (moments.at(-1) === null) {
    const rest = { u_mm: 0, y_mm: 0, tipToWork_mm: 12, workAngle_deg: 45, travelAngle_deg: 8, trigger: false };
    for (let n = 0; n < 4000; n++) simulation.step(rest);
    keep(scene, 'finished', simulation.steps / 100, null);
  }

  function keep(of: Scene, moment: string, t_s: number, torch: object | null): void {
    skin.read(simulation.surface(), t_s, ripples);
    const { u0_mm, du_mm, y0_mm, dy_mm } = simulation.surface();
    const meta = {
      joint: options.joint,
      wire_mm: process_.wire_mm,
      nu,
      ny,
      u0_mm,
      du_mm,
      y0_mm,
      dy_mm,
      t_s,
      torch,
      crossings: ripples.phaseAt(t_s),
    };
    writeFileSync(
      `${out}/${of.name}-${moment}.json`,
      JSON.stringify({ ...meta, skin: Buffer.from(skin.texels.buffer).toString('base64') }),
    );
    process.stdout.write(`${of.name}-${moment} `);
  }
}

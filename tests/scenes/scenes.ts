/**
 * Named welds that stand for everything the engine can be asked to do: every joint, wire and pattern, and what hands do to it by mistake.
 * Only the engine's public door is used, so that no move inside can change a scene.
 */
import {
  createRandom,
  defaultOptions,
  defaultWeave,
  handOfAmount,
  type JointOptions,
  noFaults,
  type Pose,
  type ProcessOptions,
  type SimulationOptions,
  type WeaveOptions,
  weaveHand,
} from '../../engine/index.ts';

export interface Scene {
  name: string;
  options: SimulationOptions;
  poses: () => Iterable<Pose>;
}

interface Choice {
  joint?: Partial<JointOptions>;
  process?: Partial<ProcessOptions>;
  cell_mm?: number;
}

function options(c: Choice): SimulationOptions {
  const o = defaultOptions();
  return {
    joint: { ...o.joint, length_mm: 40, ...c.joint },
    process: { ...o.process, ...c.process },
    cell_mm: c.cell_mm ?? 0.75,
  };
}

function woven(name: string, c: Choice, weave: Partial<WeaveOptions>, faults = noFaults(1)): Scene {
  const o = options(c);
  const w = { ...defaultWeave(), start_mm: 4, length_mm: o.joint.length_mm - 10, ...weave };
  return { name, options: o, poses: () => weaveHand(w, faults) };
}

function steered(name: string, c: Choice, poses: () => Iterable<Pose>): Scene {
  return { name, options: options(c), poses };
}

const held = (seconds: number, pose: Partial<Pose>): Pose[] =>
  Array.from({ length: Math.round(seconds * 100) }, () => ({
    u_mm: 0,
    y_mm: 10,
    tipToWork_mm: 12,
    workAngle_deg: 45,
    travelAngle_deg: 8,
    trigger: true,
    ...pose,
  }));

const climb = (from: number, to: number, seconds: number): Pose[] =>
  held(seconds, {}).map((pose, n, all) => ({ ...pose, y_mm: from + ((to - from) * n) / all.length }));

/** Strikes, climbs, stops until the crater is solid, strikes above it, drops back in and goes on. */
function restart(): Pose[] {
  return [
    ...climb(5, 16, 6),
    ...held(4, { trigger: false, y_mm: 17 }),
    ...climb(22, 15, 0.6),
    ...held(0.6, { y_mm: 15.5 }),
    ...climb(15.5, 27, 6),
  ];
}

/** Aim, angles and trigger at random within and beyond what a hand can do; seed 20261126. */
function scribble(): Pose[] {
  const random = createRandom(20261126);
  const from = (low: number, high: number): number => low + (high - low) * random.next();
  const out: Pose[] = [];
  while (out.length < 900) {
    const pose = {
      u_mm: from(-14, 14),
      y_mm: from(-6, 46),
      tipToWork_mm: from(2, 45),
      workAngle_deg: from(0, 90),
      travelAngle_deg: from(-60, 60),
      trigger: random.next() < 0.8,
    };
    const stay = Math.ceil(from(1, 40));
    for (let n = 0; n < stay; n++) out.push(pose);
  }
  return out;
}

export const SCENES: readonly Scene[] = [
  woven('tee, inverted V, 0.9 wire', {}, {}),
  woven('tee, straight, 1.0 wire', { process: { wire_mm: 1.0 } }, { pattern: 'straight', travel_mmps: 2.6 }),
  woven('tee, triangle, left toe first', {}, { pattern: 'triangle', firstToe: 'B' }),
  woven(
    'tee, zigzag, 1.2 wire, carbon dioxide',
    { process: { wire_mm: 1.2, feed_mpmin: 3, volts_V: 20, gas: 'C1' } },
    { pattern: 'zigzag' },
  ),
  woven('tee, crescent, poor hand', {}, { pattern: 'crescent' }, handOfAmount(11, 0.6)),
  woven('lap, 0.8 wire', { joint: { kind: 'lap' }, process: { wire_mm: 0.8, feed_mpmin: 6.5, volts_V: 19 } }, {}),
  woven(
    'lap, overfull',
    { joint: { kind: 'lap' }, process: { wire_mm: 0.8, feed_mpmin: 7.1, volts_V: 19 } },
    { travel_mmps: 1.9, width_mm: 6, cyclesPerSecond: 1, pauseA_s: 0.2, pauseB_s: 0.2 },
  ),
  woven('corner', { joint: { kind: 'corner' } }, {}),
  woven('tee with a gap of 1.5', { joint: { gap_mm: 1.5 } }, {}),
  woven('tee, warm narrow plates with tabs', { joint: { startTemp_C: 200, plateWidth_mm: 40, tabs: true } }, {}),
  woven(
    'thin tee, cold and back in the puddle',
    { joint: { plateA_mm: 4, plateB_mm: 3 }, process: { volts_V: 16 } },
    {},
    {
      ...noFaults(1),
      lead_mm: -3,
    },
  ),
  woven('tee, 1 mm cells, long', { joint: { length_mm: 120 }, cell_mm: 1 }, { travel_mmps: 4 }),
  woven('tee, 0.6 mm cells, short', { joint: { length_mm: 24 }, cell_mm: 0.6 }, { length_mm: 12 }),
  woven(
    'bead on a flat plate',
    { joint: { kind: 'plate', plateA_mm: 8 } },
    { pattern: 'straight', travel_mmps: 5, shelf_s: 0 },
  ),
  steered('restart in the crater', {}, restart),
  steered('held until it drops', { process: { volts_V: 21, feed_mpmin: 6 } }, () => held(9, { y_mm: 20 })),
  steered('jump to a cold place', {}, () => [...climb(6, 14, 4), ...climb(30, 34, 2.5)]),
  steered('vertical-down', {}, () => climb(36, 6, 6)),
  steered('hostile scribble', {}, scribble),
];

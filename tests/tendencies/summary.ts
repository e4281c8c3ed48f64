/** Welds a case once per cell size and reads what tendencies are about: means over the settled middle of the run. */
import {
  createSimulation,
  defaultProcess,
  defaultWeave,
  noFaults,
  type Pose,
  type Simulation,
  weaveHand,
} from '../../engine/index.ts';
import { readSection } from '../../scoring/index.ts';
import { optionsOf, type WeldCase, weld } from '../support/weld.ts';

export interface Summary {
  legA: number;
  legB: number;
  leg: number;
  convexity: number;
  throat: number;
  faceWidth: number;
  overlap: number;
  /** Deepest undercut at either toe anywhere between. */
  undercut: number;
  root: number;
  rootA: number;
  rootB: number;
  depthA: number;
  depthB: number;
  leastB: number;
  edgeBack: number;
  /** Root over the first 14 mm of the weave, and leg over the last quarter. */
  rootStart: number;
  legLow: number;
  legTop: number;
  current: number;
  dripped: number;
  /** Standard deviation of the crest's height along the middle: ripples. */
  ripple: number;
}

/** A tendency case: the robot's weave, or poses of its own. */
export interface TendencyCase extends WeldCase {
  poses?: () => Iterable<Pose>;
  /** Read between these heights instead of 20 mm to 12 mm below the top. */
  between?: [number, number];
}

const memo = new Map<string, Summary>();

export function summarise(c: TendencyCase, cell_mm: number): Summary {
  const full = filled(c, cell_mm);
  const key = JSON.stringify([full, c.poses?.toString()]);
  const known = memo.get(key);
  if (known) return known;
  const sim = weldCase(c, cell_mm);
  const result = read(sim, c.between ?? [20, sim.options.joint.length_mm - 12]);
  memo.set(key, result);
  return result;
}

function filled(c: TendencyCase, cell_mm: number): TendencyCase {
  return { ...c, cell_mm, process: { ...defaultProcess(), feed_mpmin: 5, ...c.process } };
}

/** The whole weld of a case. */
export function weldCase(c: TendencyCase, cell_mm: number): Simulation {
  const full = filled(c, cell_mm);
  return c.poses
    ? weldPoses(full, c.poses())
    : weld({ ...full, weave: { travel_mmps: 1.9, cyclesPerSecond: 1, ...c.weave } });
}

function weldPoses(c: TendencyCase, poses: Iterable<Pose>): Simulation {
  const sim = createSimulation(optionsOf(c));
  for (const pose of poses) sim.step(pose);
  return sim;
}

function read(sim: Simulation, [from, to]: [number, number]): Summary {
  const sums: Record<string, number> = {};
  const crest: number[] = [];
  const legs: number[] = [];
  let undercut = 0;
  let count = 0;
  for (let y = from; y <= to; y += 1) {
    const section = sim.section(y);
    const st = readSection(section)?.station;
    // A weld that failed is not a cold one: without a bead there is nothing to compare.
    if (!st) throw new Error(`no bead at ${y} mm between ${from} and ${to}: this case cannot show a tendency`);
    const values: Record<string, number> = {
      legA: st.legA_mm,
      legB: st.legB_mm,
      convexity: st.convexity_mm,
      throat: st.throat_mm,
      faceWidth: st.faceWidth_mm,
      overlap: Math.max(st.overlapA_mm, st.overlapB_mm),
      // What could not be read makes the mean NaN, and a comparison with that fails.
      root: st.rootFusion_mm ?? Number.NaN,
      rootA: st.rootFusionA_mm ?? Number.NaN,
      rootB: st.rootFusionB_mm ?? Number.NaN,
      depthA: st.fusionDepthA_mm,
      depthB: st.fusionDepthB_mm,
      leastB: st.leastFusionB_mm,
      // Only a lap has an edge to melt back.
      edgeBack: st.edgeMeltedBack_mm ?? 0,
    };
    undercut = Math.max(undercut, st.undercutA_mm, st.undercutB_mm);
    for (const [name, value] of Object.entries(values)) sums[name] = (sums[name] ?? 0) + value;
    crest.push(Math.max(...section.w_mm));
    legs.push((values.legA! + values.legB!) / 2);
    count++;
  }
  const mean = (name: string): number => sums[name]! / count;
  const strip = sim.rootStrip();
  const early = [...strip.y_mm].map((y, i) => ({ y, d: strip.depthA_mm[i]! })).filter((p) => p.y > 5 && p.y < 14);
  const quarter = Math.max(1, Math.floor(legs.length / 4));
  const accounts = sim.accounts();
  const average = (list: number[]): number => list.reduce((a, b) => a + b, 0) / list.length;
  const middle = average(crest);
  return {
    legA: mean('legA'),
    legB: mean('legB'),
    leg: (mean('legA') + mean('legB')) / 2,
    convexity: mean('convexity'),
    throat: mean('throat'),
    faceWidth: mean('faceWidth'),
    overlap: mean('overlap'),
    undercut,
    root: mean('root'),
    rootA: mean('rootA'),
    rootB: mean('rootB'),
    depthA: mean('depthA'),
    depthB: mean('depthB'),
    leastB: mean('leastB'),
    edgeBack: mean('edgeBack'),
    rootStart: average(early.map((p) => p.d)),
    legLow: average(legs.slice(0, quarter)),
    legTop: average(legs.slice(-quarter)),
    current: accounts.meanCurrent_A,
    dripped: accounts.dripped_g,
    ripple: Math.sqrt(average(crest.map((w) => (w - middle) ** 2))),
  };
}

/** Poses of a hand that first welds `a`, then `b`, with a wait between (trigger off), s. */
export function* after(a: Iterable<Pose>, wait_s: number, b: Iterable<Pose>): Generator<Pose> {
  let last: Pose | null = null;
  for (const pose of a) {
    last = pose;
    yield pose;
  }
  if (last) for (let n = 0; n < wait_s * 100; n++) yield { ...last, trigger: false };
  yield* b;
}

export function hand(weave: Partial<ReturnType<typeof defaultWeave>>): Iterable<Pose> {
  return weaveHand({ ...defaultWeave(), travel_mmps: 1.9, cyclesPerSecond: 1, ...weave }, noFaults());
}

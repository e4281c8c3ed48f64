/** Welds an exercise with one hand and judges it, as the game would when the arc has gone out. */
import { createRecorder, createSimulation, type DeviceInfo, type RecordingMeta } from '../../../engine/index.ts';
import { checkRecording, type Exercise, judgeAttempt, type Line, type Result, Trace } from '../../../scoring/index.ts';
import type { Hand } from './hands.ts';
import { machineFor } from './set.ts';

/** What a hand came to at an exercise. */
export interface Came {
  exercise: string;
  kind: Hand['kind'];
  seed: number;
  habit: string | null;
  verdict: Result['verdict'];
  reasons: string[];
  /** The lines with least room, in units of their own plus-minus: 1 and more is within for certain. All that are not within, and three at least. */
  lines: { name: string; reading: number; limit: number; room: number; verdict: Line['verdict'] }[];
  crater_mm: number | null;
  lump_mm: number | null;
}

const PEN: DeviceInfo = {
  kind: 'pen',
  measures: { tipToWork: true, workAngle: true, travelAngle: true },
  scale: 1,
};
const MOUSE: DeviceInfo = {
  kind: 'mouse',
  measures: { tipToWork: false, workAngle: false, travelAngle: false },
  scale: null,
};

export function weldWith(exercise: Exercise, hand: Hand): Came {
  const meta: RecordingMeta = {
    simulation: { joint: exercise.joint, process: machineFor(exercise), cell_mm: 0.75 },
    origin: { kind: 'hand' },
    device: hand.kind === 'mouse' ? MOUSE : PEN,
    aids: { pacer: false, beat: false, toeMarks: false, plainView: false, handRig: null },
    exercise,
  };
  const sim = createSimulation(meta.simulation);
  const recorder = createRecorder(sim, meta);
  const trace = new Trace();
  for (const pose of hand.poses) trace.add(sim.step(recorder.add(pose)));
  const recording = checkRecording(JSON.parse(JSON.stringify(recorder.finish('hand-finished'))), exercise.name);
  const result = judgeAttempt(recording, {
    simulation: recording.simulation,
    trace,
    section: (y_mm) => sim.section(y_mm),
    accounts: sim.accounts(),
    stateHash: sim.hash(),
    states: recorder.states(),
  });
  return cameTo(exercise, hand, result);
}

function cameTo(exercise: Exercise, hand: Hand, r: Result): Came {
  const stop = r.bead.stops.at(-1);
  return {
    exercise: exercise.name,
    kind: hand.kind,
    seed: hand.seed,
    habit: hand.habit,
    verdict: r.verdict,
    reasons: r.reasons.map((x) => x.code),
    lines: tightest(r.lines),
    crater_mm: stop?.craterDepth_mm ?? null,
    lump_mm: r.bead.start?.lump_mm ?? null,
  };
}

/** Lines kept beside those that are not within. */
const KEPT = 3;

function tightest(lines: readonly Line[]): Came['lines'] {
  const all = lines
    .map((l) => ({
      name: l.side === null ? l.measure : `${l.measure} ${l.side}`,
      reading: l.reading,
      limit: l.limit,
      room: roomOf(l),
      verdict: l.verdict,
    }))
    .sort((a, b) => a.room - b.room);
  return all.filter((l, k) => l.verdict !== 'within' || k < KEPT);
}

function roomOf(l: Line): number {
  const way = l.sense === 'at most' ? l.limit - l.reading : l.reading - l.limit;
  return Math.round((100 * way) / Math.max(l.plusMinus, 1e-3)) / 100;
}

import { checkOptions, createRandom } from '../../engine/index.ts';
import { type AttemptRecording, MOST_POSES } from '../schema/recording.ts';
import type { Change } from '../schema/result.ts';
import { climbing } from './climb.ts';
import { type RecordedHand, readRecordedHand } from './hand.ts';
import type { Knob } from './steps.ts';
import { type Columns, waiting, warp, whole } from './warp.ts';

/** Narrowest and widest weave a change may lead to, mm across the welder's view. */
const WIDTH_MM = { least: 1, most: 14 } as const;

/**
 * The same hand with one thing changed, as a recording to weld again. Everything else, tremor and all, stays as recorded.
 * @returns null where the change means nothing for this hand (a wider straight run, a tip the device never measured) or the settings
 * would leave what the machine can do
 */
export function applyChange(recording: AttemptRecording, change: Change): AttemptRecording | null {
  const { what, by } = change;
  if (what === 'volts_V' || what === 'feed_mpmin') return withSettings(recording, what, by);
  const hand = readRecordedHand(recording);
  const columns = changed(recording, hand, change);
  if (columns === null || columns.u.length > MOST_POSES) return null;
  return { ...recording, poses: columns, stateHash: null, chain: null };
}

/** What can be changed on this hand and machine: nothing the device never measured, nothing of a weave on a straight run. */
export function knobsOf(recording: AttemptRecording): Knob[] {
  const { measures } = recording.device;
  const weave = readRecordedHand(recording).half_mm > 0;
  const can: Record<Knob, boolean> = {
    travel_mmps: true,
    volts_V: true,
    feed_mpmin: true,
    width_mm: weave,
    pauseA_s: weave,
    pauseB_s: weave,
    lead_mm: weave,
    centre_mm: true,
    tipToWork_mm: measures.tipToWork,
    workAngle_deg: measures.workAngle,
    travelAngle_deg: measures.travelAngle,
    // A quicker beat is not a matter of moving what was recorded.
    cyclesPerSecond: false,
  };
  return (Object.keys(can) as Knob[]).filter((what) => can[what]);
}

function withSettings(
  recording: AttemptRecording,
  what: 'volts_V' | 'feed_mpmin',
  by: number,
): AttemptRecording | null {
  const value = Math.round((recording.simulation.process[what] + by) * 1000) / 1000;
  const process = { ...recording.simulation.process, [what]: value };
  const simulation = { ...recording.simulation, process };
  return checkOptions(simulation).length > 0 ? null : { ...recording, simulation, stateHash: null, chain: null };
}

function changed(recording: AttemptRecording, hand: RecordedHand, { what, by }: Change): Columns | null {
  const columns = recording.poses;
  const { measures } = recording.device;
  const weave = hand.half_mm > 0;
  switch (what) {
    case 'pauseA_s':
    case 'pauseB_s':
      return weave ? warp(columns, waiting(hand, what === 'pauseA_s' ? 'A' : 'B', Math.round(by * 100))) : null;
    case 'width_mm':
      return weave ? wider(columns, hand, by) : null;
    case 'lead_mm':
      return weave ? reachingAhead(columns, hand, by, recording.exercise?.demonstration.pattern === 'triangle') : null;
    case 'centre_mm':
      return { ...columns, u: columns.u.map((u) => whole(u + 100 * by)) };
    case 'travel_mmps':
      return climbing(columns, hand, by);
    case 'tipToWork_mm':
      return measures.tipToWork ? { ...columns, tip: columns.tip.map((x) => whole(x + 100 * by)) } : null;
    case 'workAngle_deg':
      return measures.workAngle ? { ...columns, work: columns.work.map((x) => whole(x + 10 * by)) } : null;
    case 'travelAngle_deg':
      return measures.travelAngle ? { ...columns, travel: columns.travel.map((x) => whole(x + 10 * by)) } : null;
    default:
      return null;
  }
}

function wider(columns: Columns, hand: RecordedHand, by_mm: number): Columns | null {
  const width = 2 * hand.half_mm + by_mm;
  if (width < WIDTH_MM.least || width > WIDTH_MM.most) return null;
  const scale = width / (2 * hand.half_mm);
  const centre = 100 * hand.centre_mm;
  return { ...columns, u: columns.u.map((u) => whole(centre + scale * (u - centre))) };
}

/**
 * Crosses the root higher: the aim is lifted most in the middle of a crossing and not at all at the toes.
 * @param upperOnly a looping triangle is lifted on its high way only
 */
function reachingAhead(columns: Columns, hand: RecordedHand, by_mm: number, upperOnly: boolean): Columns {
  const low = upperOnly ? lowWay(columns, hand) : null;
  let k = 0;
  const y = columns.y.map((at, i) => {
    if (columns.trigger[i] !== 1) return at;
    while (k + 1 < hand.turns.length && i > hand.turns[k + 1]!.at) k++;
    if (low !== null && hand.turns[k]!.toe === low) return at;
    const away = Math.abs(columns.u[i]! / 100 - hand.centre_mm) / hand.half_mm;
    return whole(at + 100 * by_mm * Math.max(0, 1 - away));
  });
  return { ...columns, y };
}

/** The toe from which a looping triangle sets out on its low way. */
function lowWay(columns: Columns, hand: RecordedHand): 'A' | 'B' {
  const rise = { A: 0, B: 0 };
  for (let k = 0; k + 1 < hand.turns.length; k++) {
    const from = hand.turns[k]!;
    const to = hand.turns[k + 1]!;
    const middle = Math.round((from.at + to.at) / 2);
    rise[from.toe] += columns.y[middle]! - (columns.y[from.at]! + columns.y[to.at]!) / 2;
  }
  return rise.A < rise.B ? 'A' : 'B';
}

/** How differently the same hand goes the next time: rms of the aim, mm, and how fast it wanders, s. Practice, no source. */
const WANDER_MM = 0.15;
const WANDER_S = 0.15;
const SEED = 2;

/** The recorded hand as it might go another time: a little wander on top of the aim, always the same one. */
export function anotherTime(recording: AttemptRecording): AttemptRecording {
  const random = createRandom(SEED);
  const keep = 0.01 / WANDER_S;
  const kick = 100 * WANDER_MM * Math.sqrt(2 * keep);
  const wander = (column: readonly number[]): number[] => {
    let off = 0;
    return column.map((x) => {
      off += -keep * off + kick * random.normal();
      return whole(x + off);
    });
  };
  const { poses } = recording;
  return { ...recording, poses: { ...poses, u: wander(poses.u), y: wander(poses.y) }, stateHash: null, chain: null };
}

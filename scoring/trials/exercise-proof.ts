import { type HandFaults, handOfAmount, noFaults, type Pose, recordPoses, weaveHand } from '../../engine/index.ts';
import { attemptOf } from '../attempt/attempt.ts';
import type { Exercise } from '../schema/exercise.ts';
import { checkRecording } from '../schema/recording.ts';
import type { AdviceCode, Line, Verdict } from '../schema/result.ts';
import { judgeAttempt } from '../score.ts';

type Weave = Exercise['demonstration'];

/** Faults an exercise should tell from a good hand; each is one thing done otherwise than asked. */
export const proofFaults = [
  'arc-back',
  'tip-far',
  'no-pause-right',
  'no-pause-left',
  'narrow',
  'wide',
  'fast',
  'slow',
  'to-one-side',
  'uneven',
  'stopped-early',
  'straight-instead',
] as const;
/** A fault by its name. */
export type ProofFault = (typeof proofFaults)[number];

/** One robot hand that is to weld an exercise. */
export interface ProofHand {
  /** What it is to show about the exercise. */
  group: 'good hand' | 'named fault' | 'wider hand';
  /** The fault; null where the hand only has some of every human failing. */
  fault: ProofFault | null;
  /** How much of every human failing it has, 0 none to 1 a beginner (`handOfAmount`); 0 with a fault. */
  amount: number;
  seed: number;
}

/** What a hand came to. */
export interface ProofRow {
  hand: ProofHand;
  verdict: Verdict;
  /** First fix. */
  advice: AdviceCode | null;
  says: string | null;
  /** The line that stands nearest its limit, or farthest outside it. */
  nearest: { measure: Line['measure']; side: Line['side']; by: number } | null;
}

/** A hand counts as good with this much of every failing: a trained one, as the tests' own skilled hand. From memory, no source. */
const GOOD = [0, 0.15] as const;
const WIDER = [0.3, 0.45, 0.6, 0.8] as const;
const GOOD_SEEDS = [1, 2, 3] as const;

/** The hands an exercise is proved with: good ones, every named fault that its weave can have, and hands less and less good. */
export function proofHands({ demonstration }: Exercise): ProofHand[] {
  const good = GOOD.flatMap((amount) =>
    (amount === 0 ? [1] : GOOD_SEEDS).map((seed): ProofHand => ({ group: 'good hand', fault: null, amount, seed })),
  );
  const faults = proofFaults
    .filter((fault) => hasFault(fault, demonstration))
    .map((fault): ProofHand => ({ group: 'named fault', fault, amount: 0, seed: 1 }));
  const wider = WIDER.map((amount): ProofHand => ({ group: 'wider hand', fault: null, amount, seed: 4 }));
  return [...good, ...faults, ...wider];
}

/** A straight run has no toes to leave early and no width to change. */
function hasFault(fault: ProofFault, weave: Weave): boolean {
  if (weave.pattern === 'straight') return ['tip-far', 'fast', 'slow', 'to-one-side', 'stopped-early'].includes(fault);
  if (fault === 'no-pause-right') return weave.pauseA_s > 0;
  if (fault === 'no-pause-left') return weave.pauseB_s > 0;
  return true;
}

/** How far each fault goes: as far as an instructor would see it from the next bench. Common practice, no source. */
function faulty(fault: ProofFault, w: Weave): { weave: Weave; lead_mm?: number; shift_mm?: number; timing?: number } {
  switch (fault) {
    case 'arc-back':
      return { weave: w, lead_mm: -3 };
    case 'tip-far':
      return { weave: { ...w, tipToWork_mm: w.tipToWork_mm + 8 } };
    case 'no-pause-right':
      return { weave: { ...w, pauseA_s: 0 } };
    case 'no-pause-left':
      return { weave: { ...w, pauseB_s: 0 } };
    case 'narrow':
      return { weave: { ...w, width_mm: 0.45 * w.width_mm } };
    case 'wide':
      return { weave: { ...w, width_mm: Math.min(14, 1.7 * w.width_mm) } };
    case 'fast':
      return { weave: { ...w, travel_mmps: 1.6 * w.travel_mmps } };
    case 'slow':
      return { weave: { ...w, travel_mmps: 0.55 * w.travel_mmps } };
    case 'to-one-side':
      return { weave: w, shift_mm: 2 };
    case 'uneven':
      return { weave: w, timing: 0.6 };
    case 'stopped-early':
      return { weave: { ...w, length_mm: 0.55 * w.length_mm } };
    case 'straight-instead':
      return { weave: { ...w, pattern: 'straight' } };
  }
}

/** A named fault as a robot hand does it: weave, failings and poses. @param share how much of the fault, 0 none to 1 all of it */
export function faultHand(
  exercise: Exercise,
  fault: ProofFault,
  seed: number,
  share = 1,
): { weave: Weave; faults: HandFaults; poses: Pose[] } {
  const shown = exercise.demonstration;
  const all = faulty(fault, shown);
  const part = (k: keyof Weave): unknown => {
    const [from, to] = [shown[k], all.weave[k]];
    return typeof from === 'number' && typeof to === 'number' && share !== 1 ? from + share * (to - from) : to;
  };
  const weave = Object.fromEntries((Object.keys(all.weave) as (keyof Weave)[]).map((k) => [k, part(k)])) as Weave;
  const base = noFaults(seed);
  const faults = { ...base, lead_mm: share * (all.lead_mm ?? 0), timing: share * (all.timing ?? 0) };
  const shift_mm = share * (all.shift_mm ?? 0);
  return {
    weave,
    faults,
    poses: [...weaveHand(weave, faults)].map((pose) => ({ ...pose, u_mm: pose.u_mm + shift_mm })),
  };
}

/**
 * Welds an exercise with one robot hand and judges it by the exercise. The robot is judged as a hand would be: what the device of a robot
 * measures is measured.
 */
export function weldProof(exercise: Exercise, hand: ProofHand): ProofRow {
  const { weave, lead_mm, shift_mm, timing } =
    hand.fault === null ? { weave: exercise.demonstration } : faulty(hand.fault, exercise.demonstration);
  const base = hand.amount > 0 ? handOfAmount(hand.seed, hand.amount) : noFaults(hand.seed);
  const faults = { ...base, lead_mm: base.lead_mm + (lead_mm ?? 0), timing: base.timing + (timing ?? 0) };
  const poses = [...weaveHand(weave, faults)].map((pose) => ({ ...pose, u_mm: pose.u_mm + (shift_mm ?? 0) }));
  const welded = recordPoses(
    {
      simulation: { joint: exercise.joint, process: exercise.process, cell_mm: 0.75 },
      origin: { kind: 'robot', weave, faults },
      device: { kind: 'robot', measures: { tipToWork: true, workAngle: true, travelAngle: true }, scale: 1 },
      aids: { pacer: false, beat: false, toeMarks: false, plainView: false, handRig: null },
      exercise,
    },
    poses,
  );
  const recording = checkRecording(welded, 'robot hand');
  const result = judgeAttempt(recording, attemptOf(recording), { exercise });
  const first = result.advice[0] ?? null;
  return {
    hand,
    verdict: result.verdict,
    advice: first?.code ?? null,
    says: first?.text ?? result.reasons[0]?.text ?? null,
    nearest: nearestOf(result.lines),
  };
}

/** Of all lines the one with least room, in units of its own plus-minus; negative: outside. */
function nearestOf(lines: readonly Line[]): ProofRow['nearest'] {
  let nearest: ProofRow['nearest'] = null;
  for (const line of lines) {
    const room = line.sense === 'at most' ? line.limit - line.reading : line.reading - line.limit;
    const by = Math.round((10 * room) / Math.max(line.plusMinus, 1e-3)) / 10;
    if (nearest === null || by < nearest.by) nearest = { measure: line.measure, side: line.side, by };
  }
  return nearest;
}

/** What the hands say about an exercise together. */
export interface Proof {
  /** Good hands that were within, of how many; least room of any of them, in units of the plus-minus (null: no line). */
  good: { within: number; of: number; least: number | null };
  /** Named faults that were outside or got no verdict, of how many; those too close to call, and those within all the same, by name. */
  faults: { told: number; of: number; close: ProofFault[]; missed: ProofFault[] };
  /** The most of every failing that was still within, all smaller amounts being within too; null: not even the least. */
  tolerates: number | null;
}

/** Sums up what has been welded so far. */
export function proofOf(rows: readonly ProofRow[]): Proof {
  const good = rows.filter((r) => r.hand.group === 'good hand');
  const faults = rows.filter((r) => r.hand.group === 'named fault');
  const named = (verdict: Verdict): ProofFault[] =>
    faults.flatMap((r) => (r.verdict === verdict && r.hand.fault !== null ? [r.hand.fault] : []));
  const close = named('too close to call');
  const missed = named('within');
  const rooms = good.flatMap((r) => (r.nearest === null ? [] : [r.nearest.by]));
  let tolerates: number | null = null;
  const amounts = rows.filter((r) => r.hand.fault === null).sort((a, b) => a.hand.amount - b.hand.amount);
  for (const { hand, verdict } of amounts) {
    if (verdict !== 'within') break;
    tolerates = hand.amount;
  }
  return {
    good: {
      within: good.filter((r) => r.verdict === 'within').length,
      of: good.length,
      least: rooms.length === 0 ? null : Math.min(...rooms),
    },
    faults: { told: faults.length - close.length - missed.length, of: faults.length, close, missed },
    tolerates,
  };
}

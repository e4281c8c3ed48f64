import { ENGINE_VERSION, noFaults, POSE_RATE_HZ, type Pose, type Recording, weaveHand } from '../../../engine/index.ts';
import {
  type Advice,
  type AdviceCode,
  type Exercise,
  exerciseNamed,
  faultHand,
  type Result,
} from '../../../scoring/index.ts';
import { PoseChunks } from '../bench/pose-chunk.ts';
import { editExercise, simulationOf } from '../session/setup.ts';
import type { Coupon, Level, NamingView } from './views.ts';

/** Length of a coupon, mm: enough for a few cycles between the ends, and soon welded. */
const COUPON_MM = 60;

/** Level 1: plain faults on a tee. 2: thin plate too, and what is seen in the hand alone. 3: a lap too, less of each fault, more to choose from. */
const coupon = (level: Level, exercise: string, fault: Coupon['fault'], is: AdviceCode, share = 1): Coupon => ({
  level,
  exercise,
  fault,
  share,
  is,
});

export const COUPONS: readonly Coupon[] = [
  coupon(1, 'tee-inverted-v', 'arc-back', 'arc-back-on-puddle'),
  coupon(1, 'tee-inverted-v', 'fast', 'climbed-fast'),
  coupon(1, 'tee-inverted-v', 'slow', 'climbed-slowly'),
  coupon(1, 'tee-inverted-v', 'wide', 'too-wide'),
  coupon(1, 'tee-inverted-v', 'no-pause-right', 'toe-left-early'),
  coupon(2, 'tee-thin', 'narrow', 'too-narrow'),
  coupon(2, 'tee-thin', 'to-one-side', 'to-one-side'),
  coupon(2, 'tee-inverted-v', 'tip-far', 'tip-too-far'),
  coupon(2, 'tee-inverted-v', 'cold', 'cold-root'),
  coupon(2, 'tee-thin', 'fast', 'climbed-fast'),
  coupon(3, 'lap-5', 'arc-back', 'arc-back-on-puddle', 0.8),
  coupon(3, 'lap-5', 'slow', 'climbed-slowly', 0.8),
  coupon(3, 'tee-thin', 'wide', 'too-wide', 0.8),
  coupon(3, 'tee-inverted-v', 'to-one-side', 'to-one-side', 0.8),
  coupon(3, 'tee-inverted-v', 'narrow', 'too-narrow', 0.8),
];

/** Answers to choose from at each level; those that are easiest taken for each other come first beside the right one. */
const CHOICES: Record<Level, number> = { 1: 3, 2: 4, 3: 5 };
const LIKE: Partial<Record<AdviceCode, readonly AdviceCode[]>> = {
  'arc-back-on-puddle': ['cold-root', 'tip-too-far', 'climbed-slowly', 'too-wide'],
  'climbed-fast': ['too-narrow', 'cold-root', 'toe-left-early', 'arc-back-on-puddle'],
  'climbed-slowly': ['too-wide', 'arc-back-on-puddle', 'toe-left-early', 'to-one-side'],
  'too-wide': ['climbed-slowly', 'to-one-side', 'arc-back-on-puddle', 'climbed-fast'],
  'too-narrow': ['toe-left-early', 'climbed-fast', 'climbed-slowly', 'cold-root'],
  'toe-left-early': ['too-narrow', 'climbed-fast', 'to-one-side', 'too-wide'],
  'to-one-side': ['toe-left-early', 'too-wide', 'too-narrow', 'arc-back-on-puddle'],
  'tip-too-far': ['cold-root', 'arc-back-on-puddle', 'climbed-fast', 'too-narrow'],
  'cold-root': ['tip-too-far', 'arc-back-on-puddle', 'climbed-fast', 'too-narrow'],
};

/** Answers in an order that gives nothing away. */
export function choicesOf(c: Coupon): AdviceCode[] {
  return [c.is, ...(LIKE[c.is] ?? []).slice(0, CHOICES[c.level] - 1)].sort();
}

/** The coupon after one, at a level: each once before any comes again. */
export function nextCoupon(level: Level, before: number): Coupon {
  const own = COUPONS.filter((c) => c.level === level);
  return own[before % own.length];
}

const COLD = { volts_V: -2.5, feed_mpmin: -1 };

/** What is welded: the exercise's own joint, shorter, with the lines and bands of the exercise. */
function couponExercise({ exercise, fault }: Coupon): Exercise {
  const ready = exerciseNamed(exercise);
  if (ready === undefined) throw new Error(`no ready exercise ${exercise}`);
  const { volts_V, feed_mpmin } = ready.process;
  const process = fault === 'cold' ? { volts_V: volts_V + COLD.volts_V, feed_mpmin: feed_mpmin + COLD.feed_mpmin } : {};
  const made = editExercise(ready, { joint: { length_mm: COUPON_MM }, process });
  return { ...made, asked: ready.asked, target: ready.target };
}

/** The coupon as a recording that has still to be welded. */
export function couponRecording(c: Coupon, seed: number): Recording {
  const exercise = couponExercise(c);
  const hand =
    c.fault === 'cold'
      ? {
          weave: exercise.demonstration,
          faults: noFaults(seed),
          poses: [...weaveHand(exercise.demonstration, noFaults(seed))],
        }
      : faultHand(exercise, c.fault, seed, c.share);
  return {
    format: 'toehold-recording',
    version: 2,
    engine: ENGINE_VERSION,
    simulation: simulationOf(exercise),
    rate_Hz: POSE_RATE_HZ,
    poses: columnsOf(hand.poses),
    origin: { kind: 'robot', weave: hand.weave, faults: hand.faults },
    device: { kind: 'robot', measures: { tipToWork: true, workAngle: true, travelAngle: true }, scale: null },
    aids: { pacer: false, beat: false, toeMarks: false, plainView: false, handRig: null },
    trainee: null,
    started: null,
    exercise,
    seed,
    ended: 'hand-finished',
    stateHash: null,
    chain: null,
  };
}

function columnsOf(list: readonly Pose[]): Recording['poses'] {
  const chunks = new PoseChunks();
  for (const pose of list) chunks.add(pose);
  return chunks.rest();
}

/** What the first sentence on a coupon names, where that is one of the answers; else what was done, with the sentence left out. */
export function toldOf(view: NamingView, result: Pick<Result, 'advice'>): { was: AdviceCode; says: string | null } {
  const [first]: (Advice | undefined)[] = result.advice;
  const named = first !== undefined && view.choices.includes(first.code);
  return named ? { was: first.code, says: first.text } : { was: view.coupon.is, says: null };
}

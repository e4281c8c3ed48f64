import type { JointOptions } from '../../engine/index.ts';
import type { Attempt } from '../attempt/attempt.ts';
import type { ProvedAdvice, Trial } from '../schema/proved.ts';
import type { AttemptRecording } from '../schema/recording.ts';
import type { Advice, Change, Result } from '../schema/result.ts';
import type { Language } from '../words/language.ts';
import { upper } from '../words/names.ts';
import { wordsIn } from '../words/words.ts';
import { faultOf } from './fault.ts';
import { OTHER_ATTEMPT, proveAdvice } from './prove-advice.ts';

/** What became of the first sentence when it was welded again. */
export interface FirstProof {
  /** `proved`: its own change mends the fault. `replaced`: another one does, or its own makes the fault worse. `not mended`: no single change does. */
  standing: 'proved' | 'replaced' | 'not mended';
  /** The first sentence as it stands after that. */
  says: string;
  /** What was welded and what came of it. */
  note: string;
  /** The same before it is said. */
  told: ProofTold;
  /** The change that mends, or null. */
  change: Change | null;
  reruns: number;
}

/** The first sentence speaks of something that a change of one thing could mend, so that welding again can tell. */
export function canBeProved(result: Result): boolean {
  const [first] = result.advice;
  return (
    result.exercise !== null &&
    first !== undefined &&
    !OTHER_ATTEMPT.includes(first.code) &&
    faultOf(first, result) !== null
  );
}

/**
 * Welds the attempt again, one thing changed at a time, until the fault of its first sentence is mended: the sentence then stands proved, or the
 * change that does mend takes its place. Same recording and result, same digits.
 * @param attempt the attempt as welded, where it is at hand
 * @returns null where there is nothing that could be proved
 * @throws InputError and EngineError as `scoreAttempt` does
 */
export function proveFirst(recording: AttemptRecording, result: Result, attempt?: Attempt): FirstProof | null {
  const [first] = result.advice;
  if (first === undefined || !canBeProved(result)) return null;
  const proved = proveAdvice(
    recording,
    { ...result, advice: [first] },
    { enough: 1, ...(attempt === undefined ? {} : { attempt }) },
  );
  const [tried] = proved.advice;
  if (tried === undefined || tried.untried !== null) return null;
  return { ...standing(first, tried, recording.simulation.joint.kind), change: tried.change, reruns: proved.reruns };
}

type FaultAt = NonNullable<ProvedAdvice['fault']> & Pick<NonNullable<Trial['after']>, 'reading' | 'y_mm'>;

/** What was tried for a first sentence and what came of it, before it is said. */
export type ProofTold = {
  kind: JointOptions['kind'];
  /** The first sentence stays; else the change that does mend, or the fault itself, takes its place. */
  stays: boolean;
  before: FaultAt;
} & (
  | { mends: true; change: Change; after: FaultAt }
  | { mends: false; tried: number; nearest: { change: Change; after: FaultAt } | null; drill: string }
);

/** A first sentence as it stands after what was tried, in a language. @param first the sentence as it was said, in that language */
export function proofSaid(told: ProofTold, first: string, language: Language): { says: string; note: string } {
  const { kind, before } = told;
  const w = wordsIn(language);
  const fault = w.proof.fault(before, kind);
  if (told.mends) {
    const note = w.proof.proved(told.change, before, told.after, kind);
    return told.stays
      ? { says: first, note }
      : { says: `${upper(w.changeSaid(told.change, kind))}.`, note: `${fault} ${note}` };
  }
  return {
    says: told.stays ? first : fault,
    note: w.proof.notMended(told.tried, told.nearest, w.ready(told.drill), kind),
  };
}

/** How a first sentence stands after what was tried for its fault. */
export function standing(
  first: Advice,
  tried: ProvedAdvice,
  kind: JointOptions['kind'],
): Pick<FirstProof, 'standing' | 'says' | 'note' | 'told'> {
  const { told, standing: how } = outcome(first, tried, kind);
  return { standing: how, ...proofSaid(told, first.text, 'en'), told };
}

function outcome(
  first: Advice,
  tried: ProvedAdvice,
  kind: JointOptions['kind'],
): Pick<FirstProof, 'standing' | 'told'> {
  const { fault, before, after, change, drill } = tried;
  const line = (r: Trial['after']) => ({ ...fault!, reading: r!.reading, y_mm: r!.y_mm });
  if (tried.proved && change !== null) {
    const stays = sameWay(first.change, change);
    return {
      standing: stays ? 'proved' : 'replaced',
      told: { kind, stays, before: line(before), mends: true, change, after: line(after) },
    };
  }
  const runs = tried.tried.filter((t) => t.after !== null && t.spoils.length === 0);
  const gap = (t: Trial): number => wayOut(tried, t.after!.reading);
  const nearest = runs.reduce<Trial | null>((a, b) => (a === null || gap(b) < gap(a) ? b : a), null);
  const own = tried.tried.find((t) => sameWay(first.change, t.change));
  const worse = own !== undefined && own.after !== null && gap(own) > wayOut(tried, before!.reading);
  return {
    standing: worse ? 'replaced' : 'not mended',
    told: {
      kind,
      stays: !worse,
      before: line(before),
      mends: false,
      tried: tried.tried.length,
      nearest: nearest === null ? null : { change: nearest.change, after: line(nearest.after) },
      drill: drill?.title ?? '',
    },
  };
}

/** How far a reading lies outside the fault's limit; negative: within. */
function wayOut({ fault }: ProvedAdvice, reading: number): number {
  return fault!.sense === 'at most' ? reading - fault!.limit : fault!.limit - reading;
}

function sameWay(a: Change | null, b: Change): boolean {
  return a !== null && a.what === b.what && a.by * b.by > 0;
}

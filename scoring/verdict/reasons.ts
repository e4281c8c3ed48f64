import type { Attempt } from '../attempt/attempt.ts';
import type { Way } from '../measures/hand/passes.ts';
import { accountsOpen } from '../measures/open-accounts.ts';
import { type Exercise, judgedOn } from '../schema/exercise.ts';
import type { AttemptRecording } from '../schema/recording.ts';
import type { Line, Result } from '../schema/result.ts';
import type { AidName, FoundReason } from './found.ts';
import { editsIn } from './integrity.ts';
import { tooLittle } from './least.ts';
import { outsideTransfer } from './transfer.ts';

/** More metal dropped out than this share of the wire fed, and the bead is no bead to judge. */
export const HEAVY_DROP = 0.1;
/** More of the judged length welded over again than this is a second pass, mm. */
const SECOND_PASS_MM = 5;

/** What has to be known to say why there is no verdict, and what else is of note. */
export interface ReasonQuestion {
  recording: AttemptRecording;
  attempt: Attempt;
  /** The exercise judged by; null: none. */
  exercise: Exercise | null;
  /** The exercise came with the question and not with the file. */
  exerciseGiven: boolean;
  bead: Result['bead'];
  lines: readonly Line[];
  /** Length of the judged joint over which the arc came back to finished bead. */
  weldedTwice_mm: number;
  /** Which way the torch went over the judged length. */
  way: Way;
}

/** Why an attempt gets no verdict; empty: it gets one. */
export function reasonsFor(q: ReasonQuestion): FoundReason[] {
  const { recording, attempt, exercise } = q;
  const { accounts } = attempt;
  if (accounts.arcTime_s === 0 && !accountsOpen(accounts)) return [{ code: 'no-arc', data: {} }];
  if (exercise === null) return [{ code: accountsOpen(accounts) ? 'books-open' : 'no-exercise', data: {} }];
  const edits = [...tooLittle(exercise), ...editsIn(recording, attempt, exercise, q.exerciseGiven)];
  // Whatever else seems to be wrong with such a bead may be the model's fault.
  if (accountsOpen(accounts)) return [{ code: 'books-open', data: {} }, ...edits];
  const reasons: FoundReason[] = [];
  if (recording.ended === 'too-slow') reasons.push({ code: 'machine-too-slow', data: {} });
  const bare_mm = q.bead.bare_mm.length;
  if (bare_mm > 0)
    reasons.push({
      code: 'judged-length-not-covered',
      data: { ...judgedOn(exercise, recording.simulation.joint), bare_mm },
    });
  const twice_mm = q.weldedTwice_mm;
  if (q.way === 'down') reasons.push({ code: 'vertical-down', data: {} });
  else if (q.way === 'nowhere') reasons.push({ code: 'no-climb', data: {} });
  else if (twice_mm > SECOND_PASS_MM) reasons.push({ code: 'second-pass', data: { twice_mm } });
  const { dripped_g, fed_g } = accounts;
  if (dripped_g > HEAVY_DROP * fed_g) reasons.push({ code: 'dropped-out', data: { dripped_g, fed_g } });
  // Outside its limits such a bead is all the same; within them it proves nothing.
  const transfer = outsideTransfer(recording, exercise);
  if (transfer !== null && q.lines.every((line) => line.verdict !== 'outside'))
    reasons.push({ code: 'outside-transfer', data: transfer });
  const aids = isTest(exercise) ? aidsUsed(recording, exercise) : [];
  if (aids.length > 0) reasons.push({ code: 'aids-in-test', data: { aids } });
  return [...reasons, ...edits];
}

/** An exercise that allows no pacer, beat or marks is a test. */
function isTest({ aids }: Exercise): boolean {
  return !aids.pacer && !aids.beat && !aids.toeMarks;
}

/** Aids that were on and that the exercise does not allow. */
export function aidsUsed({ aids }: AttemptRecording, exercise: Exercise | null): AidName[] {
  if (exercise === null) return [];
  const used: AidName[] = (['pacer', 'beat', 'toeMarks'] as const).filter((a) => aids[a] && !exercise.aids[a]);
  return aids.handRig !== null && !exercise.aids.handRig ? [...used, 'handRig'] : used;
}

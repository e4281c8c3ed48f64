import { type Attempt, attemptOf } from '../attempt/attempt.ts';
import { judgedOf } from '../exercises/workshop.ts';
import { Survey } from '../measures/bead/survey.ts';
import { type Measures, measure } from '../measures/measures.ts';
import { checkAccounts } from '../measures/open-accounts.ts';
import type { Exercise } from '../schema/exercise.ts';
import { describeFound, InputError } from '../schema/problem.ts';
import type { AttemptRecording } from '../schema/recording.ts';

/** A stretch of an attempt welded in one technique. */
export interface TechniquePart {
  name: string;
  attempt: Attempt;
  survey: Survey;
  /** The stretch that is compared. */
  from_mm: number;
  to_mm: number;
  measures: Measures;
}

/**
 * Left out to either side of where the hand changes, mm: the puddle is some 8 mm long, and what freezes there is of both (from the model's own
 * welds).
 */
const CHANGE_MM = 5;
/** Least length a technique is compared over, mm: three cycles of an ordinary weave. */
const LEAST_MM = 8;
/** Lead band for the hand where no exercise gives one, mm. */
const LEAD = { from: -1, to: 1.5 };

function partOf(
  name: string,
  { attempt, survey }: Welded,
  { from_mm, to_mm }: Exercise['judged'],
  recording: AttemptRecording,
): TechniquePart {
  const { exercise } = recording;
  const measures = measure(attempt, {
    survey,
    judged: { from_mm, to_mm },
    asked: exercise?.asked ?? null,
    device: recording.device,
    lead: exercise?.target.lead_mm ?? LEAD,
    upperOnly: exercise?.demonstration.pattern === 'triangle',
  });
  return { name, attempt, survey, from_mm, to_mm, measures };
}

interface Welded {
  attempt: Attempt;
  survey: Survey;
}

function weldedAgain(recording: AttemptRecording, file: string): Welded {
  const attempt = attemptOf(recording);
  checkAccounts(attempt.accounts, file);
  return { attempt, survey: new Survey(attempt.section) };
}

/**
 * Lower and upper half of one coupon, the hand having changed in the middle of the judged length or at a given height.
 * @param at_mm where the technique changed; left out: the middle
 * @throws InputError when either half is too short to be read
 */
export function halvesOf(recording: AttemptRecording, at_mm?: number): [TechniquePart, TechniquePart] {
  const { joint } = recording.simulation;
  const judged = recording.exercise?.judged ?? judgedOf(joint.length_mm);
  const change = at_mm ?? (judged.from_mm + judged.to_mm) / 2;
  const lower = { from_mm: judged.from_mm, to_mm: change - CHANGE_MM };
  const upper = { from_mm: change + CHANGE_MM, to_mm: judged.to_mm };
  if (Math.min(lower.to_mm - lower.from_mm, upper.to_mm - upper.from_mm) < LEAST_MM) {
    throw new InputError('halves', [
      {
        path: 'change',
        found: describeFound(change),
        allowed: `a height with ${LEAST_MM} mm to read on either side, ${CHANGE_MM} mm round it left out (judged ${judged.from_mm} to ${judged.to_mm} mm)`,
      },
    ]);
  }
  const welded = weldedAgain(recording, 'attempt');
  return [partOf('lower half', welded, lower, recording), partOf('upper half', welded, upper, recording)];
}

/**
 * Both sides of one lap, or of one tee: two attempts, the judged length of each. The model welds each on cold plates of its own: what the first side
 * leaves of its warmth in the second is not carried over.
 * @throws InputError when the joints are not of the same kind and plates
 */
export function sidesOf(first: AttemptRecording, second: AttemptRecording): [TechniquePart, TechniquePart] {
  const [a, b] = [first.simulation.joint, second.simulation.joint];
  const differs = (['kind', 'plateA_mm', 'plateB_mm'] as const).find((name) => a[name] !== b[name]);
  if (differs !== undefined) {
    throw new InputError('second side', [
      {
        path: `joint.${differs}`,
        found: describeFound(b[differs]),
        allowed: `${describeFound(a[differs])}, as on the first side`,
      },
    ]);
  }
  const one = (name: string, recording: AttemptRecording): TechniquePart =>
    partOf(
      name,
      weldedAgain(recording, name),
      recording.exercise?.judged ?? judgedOf(recording.simulation.joint.length_mm),
      recording,
    );
  return [one('first side', first), one('second side', second)];
}

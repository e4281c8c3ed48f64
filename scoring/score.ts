import { ENGINE_VERSION } from '../engine/index.ts';
import { adviceFor } from './advice/choose.ts';
import { type Attempt, attemptOf } from './attempt/attempt.ts';
import { exerciseNamed } from './exercises/ready.ts';
import { judgedOf } from './exercises/workshop.ts';
import { allLines } from './lines/lines.ts';
import { SLICE_MM, Survey } from './measures/bead/survey.ts';
import { type Measures, measure } from './measures/measures.ts';
import { accountsOpen, nothingRead } from './measures/open-accounts.ts';
import { micro, runKindOf } from './measures/precision.ts';
import { profileOf } from './profiles/of-exercise.ts';
import type { BeadStop } from './schema/ends.ts';
import { type Exercise, judgedOn } from './schema/exercise.ts';
import { describeFound, InputError } from './schema/problem.ts';
import type { Profile } from './schema/profile.ts';
import type { AttemptRecording } from './schema/recording.ts';
import type { ExerciseInResult, Line, Result } from './schema/result.ts';
import { notesFor } from './verdict/notes.ts';
import { reasonsFor } from './verdict/reasons.ts';
import { trendScore, verdictOf } from './verdict/verdict.ts';
import { SCORING_VERSION } from './version.ts';
import { type Judgement, resultOf } from './words/judgement.ts';

/** Judge by something else than the recording carries. */
export interface ScoreOptions {
  /** Judge by this exercise instead of the one in the file. */
  exercise?: Exercise;
  /** Judge by this profile instead of the exercise's. */
  profile?: Profile;
}

/** How an attempt already welded is judged. */
export interface JudgeOptions extends ScoreOptions {
  /** Its cuts, where they are wanted for more than the result; left out: cut here. */
  survey?: Survey;
}

/** Lead band for the hand where no exercise gives one, mm. */
const LEAD_WITHOUT_EXERCISE = { from: -1, to: 1.5 };

/**
 * Scores a recording: welds it again and judges what comes out. Same recording, same digits, in Node and in every browser.
 * @throws InputError when the exercise names a profile that does not exist
 * @throws EngineError when the recording's settings are out of range
 */
export function scoreAttempt(recording: AttemptRecording, options: ScoreOptions = {}): Result {
  return judgeAttempt(recording, attemptOf(recording), options);
}

/**
 * Judges an attempt already welded: the game's own, when the arc has just gone out. Said in English, as files carry it.
 * @throws InputError when the exercise names a profile that does not exist
 */
export function judgeAttempt(recording: AttemptRecording, attempt: Attempt, options: JudgeOptions = {}): Result {
  return resultOf(judgementOf(recording, attempt, options));
}

/**
 * The same before it is said: measures, lines, verdict, advice, in this order; none looks back, and words come last (`resultOf`). In one piece,
 * so that it reads as the list it is. Where the attempt's accounts of heat or metal are open, nothing is read off it and nothing advised.
 * @throws InputError when the exercise names a profile that does not exist
 */
export function judgementOf(recording: AttemptRecording, attempt: Attempt, options: JudgeOptions = {}): Judgement {
  const exercise = options.exercise ?? recording.exercise;
  const profile = exercise === null ? null : (options.profile ?? namedProfile(exercise));
  const { joint, process } = recording.simulation;
  const judged = exercise === null ? judgedOf(joint.length_mm) : judgedOn(exercise, joint);

  const open = accountsOpen(attempt.accounts);
  const measures = open
    ? nothingRead(attempt.accounts)
    : measure(attempt, {
        survey: options.survey ?? new Survey(attempt.section),
        judged,
        asked: exercise?.asked ?? null,
        device: recording.device,
        lead: exercise?.target.lead_mm ?? LEAD_WITHOUT_EXERCISE,
        upperOnly: exercise?.demonstration.pattern === 'triangle',
      });
  const { motion, bead, weldedTwice_mm } = measures;
  const lines = open || exercise === null || profile === null ? [] : linesOf(recording, measures, exercise, profile);

  const question = {
    recording,
    attempt,
    exercise,
    exerciseGiven: options.exercise !== undefined,
    bead,
    lines,
    way: measures.way,
    weldedTwice_mm,
  };
  const reasons = reasonsFor(question);
  const verdict = verdictOf(lines, reasons);
  const { curve } = measures;
  const facts = { joint, process, motion, curve, bead, stamps: measures.stamps, lines, figures: measures.process };
  const advice =
    open || exercise === null
      ? []
      : adviceFor({ ...facts, exercise: onPiece(exercise, judged), verdict, reasons, weldedTwice_mm });
  return {
    format: 'toehold-result',
    version: 2,
    verdict,
    reasons,
    score: exercise === null ? null : trendScore(verdict, lines, motion, exercise.target),
    engine: ENGINE_VERSION,
    scoring: SCORING_VERSION,
    stateHash: attempt.stateHash,
    exercise: exercise === null ? null : exerciseInResult(exercise),
    profile: profile === null ? null : { name: profile.name, title: profile.title, edition: profile.edition },
    origin: recording.origin,
    device: recording.device,
    aids: recording.aids,
    notes: notesFor(question, profile?.name ?? null),
    motion,
    bead,
    process: measures.process,
    books: { massError: missing(attempt.accounts.massError), energyError: missing(attempt.accounts.energyError) },
    lines,
    advice,
    notMeasured: measures.notMeasured,
  };
}

/** The exercise with the judged length that this piece has; the very same where that is its own. */
function onPiece(exercise: Exercise, judged: Exercise['judged']): Exercise {
  const { from_mm, to_mm } = exercise.judged;
  return from_mm === judged.from_mm && to_mm === judged.to_mm ? exercise : { ...exercise, judged };
}

/** A share as JSON can hold it. */
function missing(share: number): number | null {
  return Number.isFinite(share) ? micro(share) : null;
}

function linesOf(
  recording: AttemptRecording,
  { bead, motion }: Measures,
  exercise: Exercise,
  profile: Profile,
): Line[] {
  const { joint, cell_mm } = recording.simulation;
  return allLines(profile, {
    stations: bead.stations,
    stops: bead.stops.filter((stop) => isJudged(stop, exercise.judged)),
    joint,
    cell_mm,
    run: runKindOf(motion.width_mm),
    asked: exercise.asked,
    step_mm: SLICE_MM,
  });
}

/**
 * A crater counts where its deepest place lies in the judged length: AWS D1.1 leaves out the ends of welds outside their effective length
 * (from memory), and an exercise says which length is judged.
 */
function isJudged(stop: BeadStop, judged: Exercise['judged']): boolean {
  const at = stop.craterAt_mm;
  return at !== null && at >= judged.from_mm && at <= judged.to_mm;
}

function namedProfile(exercise: Exercise): Profile {
  const profile = profileOf(exercise);
  if (profile === undefined) {
    throw new InputError(`exercise ${exercise.name}`, [
      {
        path: 'profile',
        found: describeFound(exercise.profile),
        allowed: 'the name of an acceptance profile that comes with Toehold, or its own limits beside it',
      },
    ]);
  }
  return profile;
}

/** What of an exercise goes into a result. */
function exerciseInResult(e: Exercise): ExerciseInResult {
  return {
    name: e.name,
    title: e.title,
    ready: exerciseNamed(e.name) !== undefined,
    asked: e.asked,
    judged: e.judged,
    cuts_mm: e.cuts_mm,
    ...(e.attempts === undefined ? {} : { attempts: e.attempts }),
    ...(e.vary === undefined ? {} : { varies: true }),
    ...(e.piece === undefined ? {} : { piece: { number: e.piece.number, seed: e.piece.seed } }),
  };
}

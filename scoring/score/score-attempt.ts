import { ENGINE_VERSION } from '../../engine/index.ts';
import { adviceFor } from '../advice/choose.ts';
import { micro } from '../bead/round.ts';
import { judgedOf } from '../exercises/index.ts';
import { readHand } from '../hand/motion.ts';
import { readStops } from '../hand/stops.ts';
import { type Span, spanBetween, type Trace } from '../hand/trace.ts';
import { profileNamed } from '../profiles/index.ts';
import {
  type AttemptRecording,
  type BeadStop,
  describeFound,
  type Exercise,
  InputError,
  type Profile,
  type Result,
} from '../schema/index.ts';
import { SCORING_VERSION } from '../version.ts';
import { type Attempt, attemptOf } from './attempt.ts';
import { readBead, STEP_MM } from './bead-summary.ts';
import { readEnds } from './ends.ts';
import { allLines } from './exercise-lines.ts';
import { exerciseInResult } from './exercise-summary.ts';
import { processFigures } from './figures.ts';
import { weldedTwice_mm } from './passes.ts';
import { notesFor, reasonsFor } from './reasons.ts';
import { CAUTIONS, NOT_MODELLED } from './statements.ts';
import { trendScore } from './trend.ts';
import { verdictOf } from './verdict.ts';

/** Judge by something else than the recording carries. */
export interface ScoreOptions {
  /** Judge by this exercise instead of the one in the file. */
  exercise?: Exercise;
  /** Judge by this profile instead of the exercise's. */
  profile?: Profile;
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

/** Judges an attempt already welded: the game's own, when the arc has just gone out. */
export function judgeAttempt(recording: AttemptRecording, attempt: Attempt, options: ScoreOptions = {}): Result {
  const exercise = options.exercise ?? recording.exercise;
  const profile = exercise === null ? null : (options.profile ?? namedProfile(exercise));
  const { joint } = recording.simulation;
  const judged = exercise?.judged ?? judgedOf(joint.length_mm);
  const span = spanBetween(attempt.trace, judged.from_mm, judged.to_mm);
  const hand = readHand(attempt.trace, span ?? wholeSpan(attempt.trace), {
    device: recording.device,
    lead: exercise?.target.lead_mm ?? LEAD_WITHOUT_EXERCISE,
    upperOnly: exercise?.demonstration.pattern === 'triangle',
  });
  const stopped = readStops(attempt.trace);
  const ends = readEnds(attempt, stopped);
  const motion = { ...hand.motion, ...ends.motion };
  const { bead: along, stamps } = readBead(attempt, judged, exercise?.asked ?? null);
  const bead = { ...along, ...ends.bead };
  const twice = weldedTwice_mm(attempt.trace, judged.from_mm, judged.to_mm, stopped.technique);
  const question = {
    recording,
    attempt,
    exercise,
    exerciseGiven: options.exercise !== undefined,
    bead,
    weldedTwice_mm: twice,
    technique: stopped.technique,
  };
  const reasons = reasonsFor(question);
  const lines =
    exercise === null || profile === null
      ? []
      : allLines(profile, {
          stations: bead.stations,
          stops: bead.stops.filter((stop) => isJudged(stop, judged)),
          joint,
          cell_mm: recording.simulation.cell_mm,
          asked: exercise.asked,
          step_mm: STEP_MM,
        });
  const verdict = verdictOf(lines, reasons);
  const figures = processFigures(recording.simulation, attempt.accounts, motion.travel_mmps, exercise?.asked ?? null);
  const advice =
    exercise === null
      ? []
      : adviceFor({
          joint,
          process: recording.simulation.process,
          exercise,
          motion,
          bead,
          stamps,
          lines,
          figures,
          verdict,
          reasons,
          weldedTwice_mm: twice,
        });
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
    process: figures,
    books: { massError: micro(attempt.accounts.massError), energyError: micro(attempt.accounts.energyError) },
    lines,
    advice,
    notMeasured: [...hand.notMeasured, ...ends.notMeasured],
    notModelled: [...NOT_MODELLED],
    cautions: [...CAUTIONS],
  };
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
  const profile = profileNamed(exercise.profile);
  if (profile === undefined) {
    throw new InputError(`exercise ${exercise.name}`, [
      {
        path: 'profile',
        found: describeFound(exercise.profile),
        allowed: 'the name of an acceptance profile that comes with Toehold',
      },
    ]);
  }
  return profile;
}

/** Where the arc burned at all: a drill that never reached the judged length still shows what the hand did. */
function wholeSpan(trace: Trace): Span | null {
  return spanBetween(trace, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY);
}

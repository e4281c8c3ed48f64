import { z } from 'zod';
import { checkOptions, ENDINGS } from '../../engine/index.ts';
import { aidsInUseSchema, deviceSchema, originSchema, simulationSchema, traineeSchema } from './bench.ts';
import { exerciseSchema } from './exercise.ts';
import { refuseOtherKind } from './kind.ts';
import { describeFound, InputError, parseWith } from './problem.ts';
import { recordingVersions, upToCurrent } from './version.ts';

/** Longest recording taken in: 20 minutes at 100 poses a second. */
export const MOST_POSES = 120_000;
/** Largest recording file taken in, characters. */
export const MOST_RECORDING_TEXT = 16_000_000;

/** A link a second, the seal and the end. */
const MOST_LINKS = MOST_POSES / 100 + 2;

const column = z.array(z.int()).max(MOST_POSES);

/** File format of a recording. `checkRecording` checks more: columns of one length, settings that can be welded. */
export const recordingSchema = z.strictObject({
  format: z.literal('toehold-recording'),
  version: z.literal(2),
  engine: z.string().min(1).max(40),
  simulation: simulationSchema,
  rate_Hz: z.literal(100),
  /** Whole numbers of the quanta stated by the engine's recorder, one entry per 1/100 s. */
  poses: z.strictObject({ u: column, y: column, tip: column, work: column, travel: column, trigger: column }),
  origin: originSchema,
  device: deviceSchema,
  aids: aidsInUseSchema,
  /** Who welded, and where; null where nobody said. */
  trainee: traineeSchema.nullable(),
  /** When the attempt began; null where that is not known. */
  started: z.iso.datetime({ offset: true }).nullable(),
  /** Seed of the robot hand's faults; null for a hand. */
  seed: z.number().nullable(),
  /** The exercise as it stood, or null for an attempt without one. */
  exercise: exerciseSchema.nullable(),
  ended: z.enum(ENDINGS),
  stateHash: z.string().max(64).nullable(),
  /**
   * Seal of everything above the poses, then a link a second of weld and one at the end: poses and state. Null in files of version 1 and
   * where poses or settings were changed on purpose.
   */
  chain: z.array(z.string().max(64)).max(MOST_LINKS).nullable(),
});

/** A recording as this project reads it: the engine's recording with the exercise understood. */
export type AttemptRecording = z.infer<typeof recordingSchema>;

const COLUMNS = ['u', 'y', 'tip', 'work', 'travel', 'trigger'] as const;

/**
 * Checks a parsed recording. The long columns are checked first and by hand, so that a spoilt file gives one sentence instead of a
 * hundred thousand. The engine's own check then decides whether joint and settings can be welded.
 * @throws InputError
 */
export function checkRecording(input: unknown, file: string): AttemptRecording {
  const head = input as { format?: unknown; version?: unknown; poses?: unknown } | null;
  if (typeof head !== 'object' || head === null || Array.isArray(head)) {
    throw new InputError(file, [
      { path: '', found: describeFound(input), allowed: 'a recording written by Toehold (a JSON object)' },
    ]);
  }
  refuseOtherKind(head, 'recording', file);
  if (head.format !== 'toehold-recording') {
    throw new InputError(file, [
      {
        path: 'format',
        found: describeFound(head.format),
        allowed: '"toehold-recording"; this file is not a recording of an attempt',
      },
    ]);
  }
  const current = upToCurrent({ ...head }, file, recordingVersions);
  checkColumns(current.poses, file);
  const recording = parseWith(recordingSchema, current, file);
  const problems = checkOptions(recording.simulation);
  if (problems.length > 0) {
    throw new InputError(
      file,
      problems.map((p) => ({ path: `simulation.${p.path}`, found: describeFound(p.found), allowed: p.allowed })),
    );
  }
  return recording;
}

function checkColumns(poses: unknown, file: string): void {
  if (typeof poses !== 'object' || poses === null) return;
  const columns = poses as Record<string, unknown>;
  let length: number | null = null;
  for (const name of COLUMNS) {
    const values = columns[name];
    const path = `poses.${name}`;
    if (!Array.isArray(values)) {
      throw new InputError(file, [{ path, found: describeFound(values), allowed: 'a list of whole numbers' }]);
    }
    if (values.length > MOST_POSES) {
      throw new InputError(file, [
        {
          path,
          found: describeFound(values),
          allowed: `at most ${MOST_POSES} entries (20 minutes at 100 poses a second)`,
        },
      ]);
    }
    if (length !== null && values.length !== length) {
      throw new InputError(file, [
        { path, found: describeFound(values), allowed: `${length} entries, as poses.u has` },
      ]);
    }
    length = values.length;
    for (let i = 0; i < values.length; i++) {
      if (!Number.isSafeInteger(values[i])) {
        throw new InputError(file, [
          { path: `${path}[${i}]`, found: describeFound(values[i]), allowed: 'a whole number' },
        ]);
      }
      if (name === 'trigger' && values[i] !== 0 && values[i] !== 1) {
        throw new InputError(file, [{ path: `${path}[${i}]`, found: describeFound(values[i]), allowed: '0 or 1' }]);
      }
    }
  }
}

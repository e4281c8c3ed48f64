import { attemptFileName, readAttemptName } from '../../../scoring/index.ts';
import type { Clock } from '../ports.ts';
import { fileName } from '../session/files.ts';
import type { AttemptEntry } from '../session/shelf.ts';
import { exerciseOf, type Finished } from '../session/state.ts';

/** Part of a file's name where the attempt has no exercise. */
const NAMELESS = 'attempt';

/**
 * What an attempt is saved as: under the name it was opened by where that is one of a class's; by a class's pattern where a trainee is named
 * in it (`2026-03-14_b2_ines-calder_lap-5_03.json`); else day, exercise and time of day.
 * @param shelf what this browser keeps; attempts of the same day are counted in it
 */
export function nameOfFile(done: Finished, shelf: readonly AttemptEntry[], clock: Pick<Clock, 'written'>): string {
  if (done.file !== null && readAttemptName(done.file).trainee !== null) return done.file;
  const { trainee } = done.recording;
  const written = clock.written(done.made_ms);
  const exercise = exerciseOf(done.recording)?.name ?? null;
  if (trainee === null) return fileName(written, exercise ?? NAMELESS);
  const before = shelf.filter(
    (entry) =>
      entry.own &&
      entry.id !== done.id &&
      entry.trainee === trainee.name &&
      entry.exercise === exercise &&
      entry.made_ms < done.made_ms &&
      clock.written(entry.made_ms).day === written.day,
  );
  const { day: date } = written;
  const attempt = before.length + 1;
  return attemptFileName({
    date,
    bench: trainee.bench,
    trainee: trainee.name,
    exercise: exercise ?? NAMELESS,
    attempt,
  });
}

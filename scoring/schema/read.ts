import type { Exercise } from './exercise.ts';
import { checkExercise } from './exercise-check.ts';
import { refuseOtherKind } from './kind.ts';
import { InputError, parseWith } from './problem.ts';
import { type Profile, profileSchema } from './profile.ts';
import { type AttemptRecording, checkRecording, MOST_RECORDING_TEXT } from './recording.ts';
import { exerciseVersions, upToCurrent } from './version.ts';

/** Largest exercise or profile file taken in, characters. */
const MOST_TEXT = 500_000;

/**
 * Parses JSON text from a file.
 * @param most largest length taken in, characters
 * @throws InputError when the text is too long, empty, cut off or not JSON
 */
export function parseJson(text: string, file: string, most: number): unknown {
  if (text.length > most) {
    throw new InputError(file, [
      { path: '', found: `${text.length} characters`, allowed: `at most ${most} characters` },
    ]);
  }
  const body = text.charCodeAt(0) === 0xfeff ? text.slice(1) : text;
  if (body.trim() === '') throw new InputError(file, [{ path: '', found: 'an empty file', allowed: 'JSON text' }]);
  try {
    return JSON.parse(body);
  } catch (cause) {
    const where = whereItBroke(cause instanceof Error ? cause.message : '', body);
    throw new InputError(file, [
      { path: '', found: `text that is not JSON${where === '' ? '' : ` (${where})`}`, allowed: 'complete JSON text' },
    ]);
  }
}

/** Where JSON broke, in our own words: every JavaScript engine, and every version of one, says it in others. Empty where it does not say. */
function whereItBroke(said: string, text: string): string {
  if (/end of (JSON|data|input)|unterminated/i.test(said)) return 'the file is cut off';
  const lineColumn = /line (\d+) column (\d+)/.exec(said);
  const position = /position (\d+)/.exec(said);
  if (position !== null && Number(position[1]) >= text.length) return 'the file is cut off';
  if (lineColumn !== null) return `at line ${lineColumn[1]}, column ${lineColumn[2]}`;
  if (position === null) return '';
  const before = text.slice(0, Number(position[1])).split('\n');
  return `at line ${before.length}, column ${before[before.length - 1]!.length + 1}`;
}

/**
 * Reads a recording from the text of its file.
 * @param text JSON text
 * @param file name used in messages
 * @throws InputError
 */
export function readRecording(text: string, file = 'recording'): AttemptRecording {
  return checkRecording(parseJson(text, file, MOST_RECORDING_TEXT), file);
}

/** Reads an exercise from the text of its file. @throws InputError */
export function readExercise(text: string, file = 'exercise'): Exercise {
  const found = parseJson(text, file, MOST_TEXT);
  const older = typeof found === 'object' && found !== null && (found as { version?: unknown }).version === 1;
  refuseOtherKind(found, 'exercise', file);
  const current = older ? upToCurrent({ ...found }, file, exerciseVersions) : found;
  return checkExercise(current, file);
}

/** Reads an acceptance profile from the text of its file. @throws InputError */
export function readProfile(text: string, file = 'profile'): Profile {
  const found = parseJson(text, file, MOST_TEXT);
  refuseOtherKind(found, 'profile', file);
  return parseWith(profileSchema, found, file);
}

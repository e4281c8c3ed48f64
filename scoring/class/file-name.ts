import { exercises } from '../exercises/ready.ts';

/** What the name of an attempt's file says; null where it says nothing that can be understood. */
export interface AttemptName {
  /** Day of the attempt, ISO 8601. */
  date: string | null;
  bench: string | null;
  /** Trainee as written in the name, hyphens kept. */
  trainee: string | null;
  exercise: string | null;
  /** Attempt number, from 1. */
  attempt: number | null;
}

const NOTHING: AttemptName = { date: null, bench: null, trainee: null, exercise: null, attempt: null };

/** Letters, marks and digits of any script, with hyphens, dots and apostrophes between. */
const WORDS = /^[\p{L}\p{M}\p{N}]+([-.'’ ][\p{L}\p{M}\p{N}]+)*$/u;

/**
 * Reads `date_bench_name_exercise_attempt.json`, such as 2026-03-14_b2_ines-calder_inverted-v-tee_03.json. A name of another make is
 * no fault: all its parts are null. A part that cannot be what it should is null and the others stand.
 */
export function readAttemptName(file: string): AttemptName {
  const parts = file
    .normalize('NFC')
    .replace(/\.json$/i, '')
    .split('_');
  if (parts.length !== 5) return NOTHING;
  const [date, bench, trainee, exercise, attempt] = parts as [string, string, string, string, string];
  const words = (text: string): string | null => (WORDS.test(text) ? text : null);
  return {
    date: isDay(date) ? date : null,
    bench: words(bench),
    trainee: words(trainee),
    exercise: words(exercise),
    attempt: /^[0-9]{1,4}$/.test(attempt) && Number(attempt) > 0 ? Number(attempt) : null,
  };
}

function isDay(text: string): boolean {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (parts === null) return false;
  const day = new Date(Date.UTC(Number(parts[1]), Number(parts[2]) - 1, Number(parts[3])));
  return day.toISOString().slice(0, 10) === text;
}

/** "ines-calder" as said: "Ines Calder". */
export function personSaid(trainee: string): string {
  return trainee
    .split(/[- ]/)
    .map((word) => word.charAt(0).toLocaleUpperCase('en') + word.slice(1))
    .join(' ');
}

/** The ready exercise a name means, whichever way round its words stand (inverted-v-tee is tee-inverted-v); null: none. */
export function exerciseMeant(text: string): string | null {
  const key = wordsOf(text);
  return exercises.find((e) => wordsOf(e.name) === key)?.name ?? null;
}

function wordsOf(text: string): string {
  return text.toLowerCase().split('-').sort().join('-');
}

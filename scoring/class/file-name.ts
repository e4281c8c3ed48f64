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
    // A browser that saves a name a second time adds this; the attempt is the same.
    .replace(/ ?\([0-9]{1,3}\)$/, '')
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

/** Most characters of a name or a bench in a file's name. */
const MOST_IN_NAME = 40;
/** Stands where there is nothing to say; it is read back as nothing. */
const NONE = '-';

/** The name of an attempt's file, as `readAttemptName` reads it. What is not known is a hyphen. */
export function attemptFileName(name: AttemptName): string {
  const part = (text: string | null): string => (text === null ? null : wordsInName(text)) ?? NONE;
  const attempt = name.attempt === null ? NONE : String(name.attempt).padStart(2, '0');
  return `${[name.date ?? NONE, part(name.bench), part(name.trainee), part(name.exercise), attempt].join('_')}.json`;
}

/**
 * A name or a bench as it stands in a file's name: "Inés Calder" is inés-calder, "B 2" is b-2. Letters and digits of any script stay; all
 * else becomes a hyphen. Null where neither a letter nor a digit is in it.
 */
export function wordsInName(text: string): string | null {
  const words = text
    .normalize('NFC')
    .toLocaleLowerCase('en')
    .replace(/[^\p{L}\p{M}\p{N}.'’]+/gu, '-')
    .replace(/[-.'’]{2,}/g, '-')
    .replace(/(^|-)\p{M}+/gu, '$1');
  const most = [...words]
    .slice(0, MOST_IN_NAME)
    .join('')
    .replace(/^[-.'’]+|[-.'’]+$/g, '');
  return WORDS.test(most) ? most : null;
}

/** The same for one person however the name is written: INES-CALDER and ines-calder. */
export function personKey(trainee: string | null): string | null {
  return trainee === null ? null : (wordsInName(trainee) ?? trainee);
}

/** Alphabets with letters that look like those of another one. */
const ALIKE = [/\p{Script=Latin}/u, /\p{Script=Cyrillic}/u, /\p{Script=Greek}/u, /\p{Script=Armenian}/u];

/** Whether a word of a name has letters of two alphabets, as no name has that was typed on one keyboard. */
export function mixesAlphabets(name: string): boolean {
  return name.split(/[-.'’ ]/).some((word) => ALIKE.filter((letters) => letters.test(word)).length > 1);
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

import { type Command, InvalidArgumentError } from 'commander';
import { OPTION_RANGES } from '../../../engine/index.ts';
import { checkWork, MOST_WORK_S } from '../../attempt/work.ts';
import { exerciseNamed, exercises } from '../../exercises/ready.ts';
import { profileNamed, profiles } from '../../profiles/ready.ts';
import type { Exercise } from '../../schema/exercise.ts';
import { describeFound, InputError } from '../../schema/problem.ts';
import type { Profile } from '../../schema/profile.ts';
import { readExercise, readProfile, readRecording } from '../../schema/read.ts';
import type { AttemptRecording } from '../../schema/recording.ts';
import { readText } from '../files.ts';

/** The exercise an option names: a ready one, or a file. @throws InputError */
export function exerciseFor(name: string, command = 'score'): Exercise {
  const ready = exerciseNamed(name);
  if (ready !== undefined) return ready;
  if (name.endsWith('.json')) return readExercise(readText(name), name);
  throw new InputError(command, [
    {
      path: '--exercise',
      found: describeFound(name),
      allowed: `a .json file or one of ${exercises.map((e) => e.name).join(', ')}`,
    },
  ]);
}

/** The acceptance profile an option names: one that comes with Toehold, or a file. @throws InputError */
export function profileFor(name: string, command = 'score'): Profile {
  const ready = profileNamed(name);
  if (ready !== undefined) return ready;
  if (name.endsWith('.json')) return readProfile(readText(name), name);
  throw new InputError(command, [
    {
      path: '--profile',
      found: describeFound(name),
      allowed: `a .json file or one of ${profiles.map((p) => p.name).join(', ')}`,
    },
  ]);
}

/** A number option within bounds; commander names the option, this says what was found and what is allowed. */
export function number(low: number, high: number, unit: string): (text: string) => number {
  return (text) => {
    const value = text.trim() === '' ? Number.NaN : Number(text);
    if (!Number.isFinite(value) || value < low || value > high) {
      throw new InvalidArgumentError(
        `found ${JSON.stringify(text)}, allowed: ${low} to ${high}${unit === '' ? '' : ` ${unit}`}`,
      );
    }
    return value;
  };
}

/** A whole number within bounds. */
export function whole(low: number, high: number): (text: string) => number {
  return (text) => {
    const value = /^\d{1,9}$/.test(text.trim()) ? Number(text) : Number.NaN;
    if (!(value >= low && value <= high)) {
      throw new InvalidArgumentError(`found ${JSON.stringify(text)}, allowed: a whole number, ${low} to ${high}`);
    }
    return value;
  };
}

/** Adds the limit on the work of a file to a command that welds one. */
export function workOption(command: Command): Command {
  return command.option(
    '--max-work <min>',
    `refuse a file that would take a core of today longer to weld, minutes; 0: weld whatever it takes (default: ${MOST_WORK_S / 60})`,
    number(0, 100_000, 'minutes'),
  );
}

/** The limit in seconds, from the option in minutes. */
export function mostWork_s(minutes: number | undefined): number {
  return minutes === undefined ? MOST_WORK_S : minutes === 0 ? Number.POSITIVE_INFINITY : 60 * minutes;
}

/** A recording from a file, when it is no more work than asked for. @throws InputError */
export function recordingFrom(file: string, maxWork: number | undefined): AttemptRecording {
  const recording = readRecording(readText(file), file);
  checkWork(recording, file, mostWork_s(maxWork));
  return recording;
}

export interface Hand {
  seed: number;
  amount: number;
}

/** `seed:amount`, such as 7:0.4. */
export function hand(text: string): Hand {
  const parts = /^(\d{1,9}):(\d+(?:\.\d+)?|\.\d+)$/.exec(text.trim());
  const amount = parts === null ? Number.NaN : Number(parts[2]);
  if (parts === null || !(amount >= 0 && amount <= 2)) {
    throw new InvalidArgumentError(
      `found ${JSON.stringify(text)}, allowed: seed:amount, a whole number and 0 to 2, such as 7:0.4`,
    );
  }
  return { seed: Number(parts[1]), amount };
}

type Settings = 'joint' | 'process';

/** Least, most and unit of a setting of joint or machine: what the engine can weld. */
export function rangeOf(group: Settings, name: string): [low: number, high: number, unit: string] {
  const rule = OPTION_RANGES[group]?.[name];
  if (rule === undefined || !('low' in rule)) throw new Error(`${group}.${name} has no range`);
  return [rule.low, rule.high, rule.unit];
}

/** A number option of joint or machine, within its range. */
export function setting(group: Settings, name: string): (text: string) => number {
  return number(...rangeOf(group, name));
}

/** The values a setting may be chosen from, as a terminal's choices. */
export function choicesOf(group: Settings, name: string): string[] {
  const rule = OPTION_RANGES[group]?.[name];
  if (rule === undefined || !('oneOf' in rule)) throw new Error(`${group}.${name} is no choice`);
  // A wire is sold as 1.0, never as 1.
  return rule.oneOf.map((value) => (typeof value === 'number' ? value.toFixed(1) : value));
}

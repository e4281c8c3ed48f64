import { Command } from 'commander';
import { exerciseNamed, exercises } from '../exercises/index.ts';
import { profileNamed, profiles } from '../profiles/index.ts';
import {
  describeFound,
  type Exercise,
  InputError,
  type Profile,
  readExercise,
  readProfile,
  readRecording,
} from '../schema/index.ts';
import { type ScoreOptions, scoreAttempt } from '../score/index.ts';
import { readText } from './files.ts';
import { reportText } from './report.ts';

interface ScoreFlags {
  exercise?: string;
  profile?: string;
  json?: true;
  strict?: true;
}

const HELP = `
Welds the recording again and measures what comes out: sentences first, then each line with reading, give or take, limit and rule.

Examples:
    $ toehold score attempt.json
    $ toehold score attempt.json --json > result.json
    $ toehold score attempt.json --profile iso-5817-c
    $ toehold score attempt.json --strict && echo "every line within"

Exit code 0: scored. 1: with --strict, anything but "within". 2: bad input.`;

/** @param finish called with the exit code */
export function scoreCommand(print: (text: string) => void, finish: (code: number) => void): Command {
  return new Command('score')
    .description('measure and judge an attempt, and say what to change first')
    .argument('<attempt>', 'recording to score')
    .option('--exercise <name>', 'judge by this exercise (name, or file) instead of the one in the recording')
    .option('--profile <name>', "judge by this acceptance profile (name, or file) instead of the exercise's")
    .option('--json', 'print the whole result as JSON')
    .option('--strict', 'exit with 1 unless every line is within')
    .addHelpText('after', HELP)
    .action((file: string, flags: ScoreFlags) => {
      const recording = readRecording(readText(file), file);
      const options: ScoreOptions = {};
      if (flags.exercise !== undefined) options.exercise = exerciseFor(flags.exercise);
      if (flags.profile !== undefined) options.profile = profileFor(flags.profile);
      const result = scoreAttempt(recording, options);
      print(flags.json ? JSON.stringify(result, null, 2) : reportText(result, recording.simulation.joint.kind));
      finish(flags.strict && result.verdict !== 'within' ? 1 : 0);
    });
}

function exerciseFor(name: string): Exercise {
  const ready = exerciseNamed(name);
  if (ready !== undefined) return ready;
  if (name.endsWith('.json')) return readExercise(readText(name), name);
  throw new InputError('score', [
    {
      path: '--exercise',
      found: describeFound(name),
      allowed: `a .json file or one of ${exercises.map((e) => e.name).join(', ')}`,
    },
  ]);
}

function profileFor(name: string): Profile {
  const ready = profileNamed(name);
  if (ready !== undefined) return ready;
  if (name.endsWith('.json')) return readProfile(readText(name), name);
  throw new InputError('score', [
    {
      path: '--profile',
      found: describeFound(name),
      allowed: `a .json file or one of ${profiles.map((p) => p.name).join(', ')}`,
    },
  ]);
}

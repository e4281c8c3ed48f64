import { Command } from 'commander';
import { describeFound, InputError } from '../../schema/problem.ts';
import { type ScoreOptions, scoreAttempt } from '../../score.ts';
import { reportLines } from '../../words/result.ts';
import { isFolder } from '../attempt-files.ts';
import { MOST_WORKERS } from '../score-folder.ts';
import { exerciseFor, profileFor, recordingFrom, whole, workOption } from './options.ts';
import { type ScoreFolderFlags, scoreFolderCommand } from './score-folder.ts';
import type { Screen } from './screen.ts';

const HELP = `
Welds the recording again and measures what comes out: sentences first, then each line with reading, give or take, limit and rule.

Examples:
    $ toehold score attempt.json
    $ toehold score attempt.json --json > result.json
    $ toehold score attempt.json --profile iso-5817-c
    $ toehold score attempt.json --strict && echo "every line within"

A folder is scored file by file on worker threads, in the order of the file names. A file that cannot be read is named and the rest is
scored. Finished scores are kept in a hidden file of the folder, so that an interrupted run goes on where it stopped. Where others may write
into the folder, a secret keeps them from making up scores in it: rows without its seal are named and scored again.
    $ toehold score monday/ --out monday.csv
    $ toehold score monday/ --exercise tee-inverted-v --out monday.jsonl --workers 2
    $ toehold score monday/ --journal-secret ~/toehold-secret

Files named date_bench_name_exercise_attempt, such as 2026-03-14_b2_ines-calder_inverted-v-tee_03.json, are understood; others are
scored all the same.

Exit code 0: scored. 1: with --strict, anything but "within". 2: bad input; of a folder, the good files are scored and written.`;

/** @param finish called with the exit code */
export function scoreCommand(screen: Screen, finish: (code: number) => void): Command {
  const command = new Command('score')
    .description('measure and judge an attempt or a folder of them, and say what to change first')
    .argument('<attempt>', 'recording to score, or a folder of recordings')
    .option('--json', 'print the whole result as JSON (a folder: one row a line)')
    .option('--strict', 'exit with 1 unless every line is within');
  return folderOptions(command)
    .option('--out <file>', 'a folder only: write the rows to this .csv or .jsonl file')
    .addHelpText('after', HELP)
    .action(async (path: string, flags: ScoreFolderFlags) => {
      if (isFolder(path)) finish(await scoreFolderCommand(path, flags, screen));
      else finish(scoreFile(path, flags, screen));
    });
}

/** Options of every command that scores a folder. */
export function folderOptions(command: Command): Command {
  return workOption(command)
    .option('--exercise <name>', 'judge by this exercise (name, or file) instead of the one in the recording')
    .option('--profile <name>', "judge by this acceptance profile (name, or file) instead of the exercise's")
    .option('--workers <n>', 'a folder only: worker threads (default: one a core)', whole(1, MOST_WORKERS))
    .option('--fresh', 'a folder only: score every file again')
    .option('--journal <file>', 'a folder only: keep finished scores here instead of in the folder')
    .option(
      '--journal-secret <file>',
      'a folder only: seal finished scores with the secret in this file, made if it is not there (or TOEHOLD_JOURNAL_SECRET=<file>)',
    )
    .option('--no-journal', 'a folder only: keep no finished scores');
}

function scoreFile(file: string, flags: ScoreFolderFlags, screen: Screen): number {
  if (flags.out !== undefined) {
    throw new InputError('score', [
      {
        path: '--out',
        found: describeFound(flags.out),
        allowed: 'with a folder; of one attempt use --json, or toehold report',
      },
    ]);
  }
  const recording = recordingFrom(file, flags.maxWork);
  const options: ScoreOptions = {};
  if (flags.exercise !== undefined) options.exercise = exerciseFor(flags.exercise);
  if (flags.profile !== undefined) options.profile = profileFor(flags.profile);
  const result = scoreAttempt(recording, options);
  if (flags.json) screen.json(result);
  else screen.say(...reportLines(result, recording.simulation.joint.kind));
  return flags.strict && result.verdict !== 'within' ? 1 : 0;
}

import { classWords } from '../../class/class-words.ts';
import { rowsCsv, rowsJsonl, rowsOf } from '../../class/rows.ts';
import { describeFound, InputError } from '../../schema/problem.ts';
import { writeText } from '../files.ts';
import { type FolderScores, scoreFolder } from '../score-folder.ts';
import { journalSecret } from '../secret.ts';
import { exerciseFor, mostWork_s, profileFor } from './options.ts';
import { ProgressLine, type Screen } from './screen.ts';

/** Options every command on a folder shares. */
export interface FolderFlags {
  exercise?: string;
  profile?: string;
  workers?: number;
  fresh?: true;
  journal?: string | false;
  journalSecret?: string;
  maxWork?: number;
}

/** Scores a folder with progress on the terminal; bad files are named on `err`. @throws InputError */
export async function scoresOf(folder: string, flags: FolderFlags, screen: Screen): Promise<FolderScores> {
  const judge = {
    exercise: flags.exercise === undefined ? null : exerciseFor(flags.exercise),
    profile: flags.profile === undefined ? null : profileFor(flags.profile),
  };
  // A file, never the secret itself: what stands on a command line or in a variable is seen by others on the machine.
  const secretFile = flags.journalSecret ?? process.env.TOEHOLD_JOURNAL_SECRET;
  const secret = secretFile === undefined || secretFile === '' ? null : journalSecret(secretFile, folder);
  const line = new ProgressLine(screen);
  const scores = await scoreFolder(folder, {
    judge,
    secret,
    mostWork_s: mostWork_s(flags.maxWork),
    fresh: flags.fresh === true,
    ...(flags.workers === undefined ? {} : { workers: flags.workers }),
    ...(flags.journal === undefined ? {} : { journal: flags.journal === false ? null : flags.journal }),
    progress: (p) => line.show(p),
  });
  line.end();
  for (const { reason } of scores.bad) screen.warn(...reason.split('\n'));
  for (const { file, kind } of scores.others) screen.warn(`${file}: ${classWords.kinds[kind]}, no attempt; left alone`);
  if (scores.passedOver.length > 0) screen.warn(`Passed over, not .json: ${scores.passedOver.join(', ')}`);
  if (scores.folders.length > 0) {
    screen.warn(`Not looked into: ${scores.folders.map((f) => `${f}/`).join(', ')}`);
  }
  for (const { file, why } of scores.again) screen.warn(`${file}: scored again, ${why}`);
  if (scores.spoiltRows > 0) screen.warn(`The journal has ${scores.spoiltRows} lines that are no rows; passed over.`);
  if (scores.journalFault !== null) {
    screen.warn(`Finished scores are not kept for the next run: ${scores.journalFault}`);
  }
  return scores;
}

export interface ScoreFolderFlags extends FolderFlags {
  out?: string;
  json?: true;
  strict?: true;
}

/** @returns exit code: 0 done, 1 with --strict where an attempt is not within, 2 where a file could not be scored */
export async function scoreFolderCommand(folder: string, flags: ScoreFolderFlags, screen: Screen): Promise<number> {
  const write = writerFor(flags.out);
  const scores = await scoresOf(folder, flags, screen);
  const { scored, bad, known } = scores;
  if (write !== null) {
    writeText(write.path, write.text(scored));
  } else if (flags.json) {
    screen.jsonLines(rowsOf(scored));
  } else {
    for (const s of scored) {
      const first = s.result.advice[0];
      screen.say(`${s.file}: ${s.result.verdict}.${first === undefined ? '' : ` ${first.text}`}`);
    }
  }
  const count = (verdict: string): number => scored.filter((s) => s.result.verdict === verdict).length;
  const summary = [
    `${scored.length} of ${scored.length + bad.length} files scored${known > 0 ? ` (${known} of them before)` : ''}`,
    `${count('within')} within, ${count('outside')} outside, ${count('too close to call')} too close to call, ${count('no verdict')} without a verdict`,
    ...(bad.length > 0 ? [`${bad.length} could not be read, named above`] : []),
    ...(write === null ? [] : [`written to ${write.path}`]),
  ];
  if (!flags.json) screen.say(`${summary.join('; ')}.`);
  if (bad.length > 0) return 2;
  return flags.strict && scored.some((s) => s.result.verdict !== 'within') ? 1 : 0;
}

function writerFor(out: string | undefined): { path: string; text: typeof rowsCsv } | null {
  if (out === undefined) return null;
  if (/\.csv$/i.test(out)) return { path: out, text: rowsCsv };
  if (/\.jsonl$/i.test(out)) return { path: out, text: rowsJsonl };
  throw new InputError('score', [
    { path: '--out', found: describeFound(out), allowed: 'a file name ending in .csv or .jsonl' },
  ]);
}

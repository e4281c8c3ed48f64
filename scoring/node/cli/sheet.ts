import { Command } from 'commander';
import type { KnownPieces } from '../../class/pieces.ts';
import { readRoster } from '../../class/roster.ts';
import { type ClassSheet, classSheet } from '../../class/sheet.ts';
import { sheetCsv } from '../../class/sheet-csv.ts';
import { sheetLines } from '../../class/sheet-text.ts';
import { exerciseDigest } from '../../exercises/digest.ts';
import { classHtml } from '../../papers/class-html.ts';
import { describeFound, InputError } from '../../schema/problem.ts';
import { readText, writeText } from '../files.ts';
import { classPaper, classPdf } from '../papers.ts';
import { exerciseFor } from './options.ts';
import { folderOptions } from './score.ts';
import { type FolderFlags, scoresOf } from './score-folder.ts';
import type { Screen } from './screen.ts';

const HELP = `
One row for each trainee, exercise and device: first attempt, latest, median and spread of the last five, common fault. Then the common
fault of the class and the three to see first, with the cut to put on the table. Only attempts at the exercises asked for count: the ready
ones, or those named with --count. An exercise, a logbook or another whole file of Toehold's in the folder is named and left alone; --count counts attempts at an exercise.
Robots, copies, edited files and files that speak against themselves are named, kept and not counted. Nobody is ranked, and devices are never compared.

Examples:
    $ toehold sheet monday/
    $ toehold sheet monday/ --count tee-inverted-v our-bracket.json
    $ toehold sheet monday/ --out monday.html
    $ toehold sheet monday/ --out monday.pdf
    $ toehold sheet monday/ --out monday.csv
    $ toehold sheet monday/ --count our-bracket.json --roster class.csv --start-word heron

Exit code 0: done. 2: a file could not be read; it is named on the sheet, which is written all the same.`;

type SheetFlags = FolderFlags & { out?: string; count?: string[]; roster?: string; startWord?: string };

/** @param finish called with the exit code */
export function sheetCommand(screen: Screen, finish: (code: number) => void): Command {
  const command = new Command('sheet')
    .description('class sheet of a folder of attempts: who does what, common faults, the three to see first')
    .argument('<folder>', 'folder of recordings');
  return folderOptions(command)
    .option('--out <file>', 'write it to this .html, .pdf or .csv file')
    .option(
      '--count <exercise...>',
      'count attempts at these exercises only (names, or files); left out: the ready ones. Others are listed as practice',
    )
    .option(
      '--roster <file>',
      'who is in the class, with the numbers of their plates (names, or a table with name, bench, plate)',
    )
    .option('--start-word <word>', 'start word on the board, where an exercise deals everybody a piece of their own')
    .addHelpText('after', HELP)
    .action(async (folder: string, flags: SheetFlags) => {
      const make = makerFor(flags.out);
      const known = knownBy(flags);
      const scores = await scoresOf(folder, flags, screen);
      const sheet = classSheet(scores, countedBy(flags), known);
      if (make === null || flags.out === undefined) screen.say(...sheetLines(sheet));
      else {
        writeText(flags.out, await make(sheet, folder));
        screen.say(`Written to ${flags.out}`);
      }
      finish(scores.bad.length > 0 ? 2 : 0);
    });
}

/** Digests of the exercises that count: those named, else the one everything is judged by, else the ready ones. */
function countedBy({ count, exercise }: SheetFlags): ReadonlySet<string> | undefined {
  const names = count ?? (exercise === undefined ? [] : [exercise]);
  if (names.length === 0) return undefined;
  return new Set(names.map((name) => exerciseDigest(exerciseFor(name, 'sheet'))!));
}

function knownBy({ roster, startWord }: SheetFlags): KnownPieces {
  return {
    ...(roster === undefined ? {} : { roster: readRoster(readText(roster), roster) }),
    ...(startWord === undefined ? {} : { word: startWord }),
  };
}

type Maker = (sheet: ClassSheet, folder: string) => string | Promise<Uint8Array>;

function makerFor(out: string | undefined): Maker | null {
  if (out === undefined) return null;
  if (/\.html?$/i.test(out)) return (sheet, folder) => classHtml(classPaper(sheet, folder));
  if (/\.pdf$/i.test(out)) return (sheet, folder) => classPdf(classPaper(sheet, folder));
  if (/\.csv$/i.test(out)) return (sheet) => sheetCsv(sheet);
  throw new InputError('sheet', [
    { path: '--out', found: describeFound(out), allowed: 'a file name ending in .html, .pdf or .csv' },
  ]);
}

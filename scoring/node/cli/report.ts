import { basename } from 'node:path';
import { Command } from 'commander';
import { attemptHtml } from '../../papers/attempt-html.ts';
import { type AttemptPaper, attemptPaper, type PaperOptions } from '../../papers/attempt-paper.ts';
import { describeFound, InputError } from '../../schema/problem.ts';
import { writeText } from '../files.ts';
import { attemptPdf, pngOf } from '../papers.ts';
import { exerciseFor, number, profileFor, recordingFrom, workOption } from './options.ts';
import type { Screen } from './screen.ts';

const HELP = `
One black-and-white A4: the cut, the root broken open, each line with reading, give or take, limit and rule, the first fix, room for the
real coupon's readings and initials, and what was neither measured nor modelled.

Examples:
    $ toehold report attempt.json --out report.pdf
    $ toehold report attempt.json --out report.html --at 40
    $ toehold report attempt.json --out report.pdf --cut cut.png --strip strip.svg`;

interface PaperFlags {
  out?: string;
  cut?: string;
  strip?: string;
  at?: number;
  exercise?: string;
  profile?: string;
  maxWork?: number;
}

export function reportCommand(screen: Screen): Command {
  const command = new Command('report')
    .description('report of one attempt on one sheet of paper')
    .argument('<attempt>', 'recording to report on')
    .option('--out <file>', 'the report, as .html or .pdf')
    .option('--cut <file>', 'the cut alone, as .svg or .png')
    .option('--strip <file>', 'the opened root alone, as .svg or .png')
    .option('--at <mm>', 'height of the cut (default: where the first fix points)', number(0, 300, 'mm'))
    .option('--exercise <name>', 'judge by this exercise (name, or file) instead of the one in the recording')
    .option('--profile <name>', "judge by this acceptance profile (name, or file) instead of the exercise's");
  return workOption(command)
    .addHelpText('after', HELP)
    .action(async (file: string, flags: PaperFlags) => {
      const jobs = jobsFor(flags);
      const options: PaperOptions = {};
      if (flags.at !== undefined) options.at_mm = flags.at;
      if (flags.exercise !== undefined) options.exercise = exerciseFor(flags.exercise, 'report');
      if (flags.profile !== undefined) options.profile = profileFor(flags.profile, 'report');
      const paper = attemptPaper(recordingFrom(file, flags.maxWork), basename(file), options);
      for (const { path, make } of jobs) {
        writeText(path, await make(paper));
        screen.say(`Written to ${path}`);
      }
    });
}

interface Job {
  path: string;
  make: (paper: AttemptPaper) => string | Promise<Uint8Array>;
}

/** What is to be written; every name is looked at before anything is welded. @throws InputError */
function jobsFor(flags: PaperFlags): Job[] {
  const jobs: Job[] = [];
  if (flags.out !== undefined) {
    jobs.push(job('--out', flags.out, { html: attemptHtml, pdf: attemptPdf }));
  }
  if (flags.cut !== undefined) {
    jobs.push(job('--cut', flags.cut, { svg: (p) => p.cut.svg, png: (p) => pngOf(p.cut.svg, 3) }));
  }
  if (flags.strip !== undefined) {
    jobs.push(job('--strip', flags.strip, { svg: (p) => p.strip, png: (p) => pngOf(p.strip) }));
  }
  if (jobs.length === 0) {
    throw new InputError('report', [
      { path: '--out', found: 'nothing', allowed: 'at least one of --out, --cut, --strip' },
    ]);
  }
  return jobs;
}

function job(option: string, path: string, kinds: Record<string, Job['make']>): Job {
  const end = /\.([a-z]+)$/i.exec(path)?.[1]?.toLowerCase() ?? '';
  const make = Object.hasOwn(kinds, end) ? kinds[end] : undefined;
  if (make === undefined) {
    const allowed = `a file name ending in ${Object.keys(kinds)
      .map((k) => `.${k}`)
      .join(' or ')}`;
    throw new InputError('report', [{ path: option, found: describeFound(path), allowed }]);
  }
  return { path, make };
}

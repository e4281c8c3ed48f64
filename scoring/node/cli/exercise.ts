import { Command } from 'commander';
import { checkMade } from '../../exercises/made.ts';
import { exerciseNamed } from '../../exercises/ready.ts';
import { type ExercisePrint, exercisePrintHtml } from '../../papers/exercise-prints.ts';
import type { Exercise } from '../../schema/exercise.ts';
import { describeFound, InputError } from '../../schema/problem.ts';
import { leftToTrainee } from '../../words/left-free.ts';
import { said } from '../../words/names.ts';
import { writeText } from '../files.ts';
import { exercisePrintPdf } from '../papers.ts';
import { exerciseFor } from './options.ts';
import type { Screen } from './screen.ts';

const HELP = `
Says whether a file is an exercise, and what it asks. Its papers: the exercise's own sheet, a sheet for three readers of its macros, and a
card for the booth with six seconds of wire for each machine; each one A4.

Examples:
    $ toehold exercise our-bracket.exercise.json
    $ toehold exercise our-bracket.exercise.json --sheet sheet.pdf --macros macros.pdf --booth booth.pdf
    $ toehold exercise tee-inverted-v --booth booth.html`;

type PaperFlags = Partial<Record<ExercisePrint, string>>;

export function exerciseCommand(screen: Screen): Command {
  return new Command('exercise')
    .description('check an exercise, and write its papers')
    .argument('<exercise>', 'a ready exercise by its name, or a file')
    .option('--sheet <file>', 'its sheet, as .html or .pdf')
    .option('--macros <file>', 'the sheet for readings of its macros, as .html or .pdf')
    .option('--booth <file>', 'the booth card, as .html or .pdf')
    .addHelpText('after', HELP)
    .action(async (name: string, flags: PaperFlags) => {
      const papers = (Object.entries(flags) as [ExercisePrint, string][]).map(paperFor);
      const asked = exerciseFor(name, 'exercise');
      const exercise = exerciseNamed(name) === undefined ? checkMade(asked, name) : asked;
      screen.say(...sentences(exercise));
      for (const { path, make } of papers) {
        writeText(path, await make(exercise));
        screen.say(`Written to ${path}`);
      }
    });
}

/** Every name is looked at before anything is written. @throws InputError */
function paperFor([what, path]: [ExercisePrint, string]): {
  path: string;
  make: (exercise: Exercise) => string | Promise<Uint8Array>;
} {
  if (/\.html?$/i.test(path)) return { path, make: (exercise) => exercisePrintHtml(exercise, what) };
  if (/\.pdf$/i.test(path)) return { path, make: (exercise) => exercisePrintPdf(exercise, what) };
  throw new InputError('exercise', [
    { path: `--${what}`, found: describeFound(path), allowed: 'a file name ending in .html or .pdf' },
  ]);
}

function sentences(exercise: Exercise): string[] {
  const { name, title, joint, asked, judged, settings, attempts } = exercise;
  const left = leftToTrainee(exercise);
  const machine =
    settings === 'own process'
      ? 'Machine set by ear.'
      : left.length === 0
        ? 'Settings as given.'
        : `Left to the trainee: ${left.join('; ')}.`;
  return [
    `${name}: ${title}`,
    `${joint.kind}, ${asked.kind} ${said(asked.size_mm)} mm, judged from ${said(judged.from_mm)} to ${said(judged.to_mm)} mm by ${exercise.profile}. ${machine}${attempts === undefined ? '' : ` Attempts that count: ${attempts}.`}`,
  ];
}

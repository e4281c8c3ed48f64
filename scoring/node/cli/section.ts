import { Command } from 'commander';
import { attemptOf } from '../../attempt/attempt.ts';
import { sectionSvg } from '../../draw/section-svg.ts';
import { checkAccounts } from '../../measures/open-accounts.ts';
import { runKindOf } from '../../measures/precision.ts';
import { readSection } from '../../measures/section/station.ts';
import { InputError } from '../../schema/problem.ts';
import { judgeAttempt } from '../../score.ts';
import { said } from '../../words/names.ts';
import { sectionLines } from '../../words/section.ts';
import { writeText } from '../files.ts';
import { number, recordingFrom, workOption } from './options.ts';
import type { Screen } from './screen.ts';

interface SectionFlags {
  at: number;
  svg?: string;
  json?: true;
  maxWork?: number;
}

const HELP = `
Examples:
    $ toehold section attempt.json --at 25
    $ toehold section attempt.json --at 25 --svg cut.svg
    $ toehold section attempt.json --at 25 --json`;

export function sectionCommand(screen: Screen): Command {
  const command = new Command('section')
    .description('cut the weld at one height and measure the cut')
    .argument('<attempt>', 'recording to cut')
    .requiredOption('--at <mm>', 'height of the cut above the bottom of the joint', number(0, 300, 'mm'))
    .option('--svg <file>', 'draw the cut as an etched macro into this file')
    .option('--json', 'print the readings as JSON');
  return workOption(command)
    .addHelpText('after', HELP)
    .action((file: string, flags: SectionFlags) => {
      const recording = recordingFrom(file, flags.maxWork);
      const { joint } = recording.simulation;
      if (flags.at > joint.length_mm) {
        throw new InputError('section', [
          {
            path: '--at',
            found: String(flags.at),
            allowed: `0 to ${said(joint.length_mm)} mm, the length of this joint`,
          },
        ]);
      }
      const attempt = attemptOf(recording);
      checkAccounts(attempt.accounts, file);
      const cut = attempt.section(flags.at);
      const reading = readSection(cut);
      if (flags.svg !== undefined) writeText(flags.svg, sectionSvg(cut, reading?.station ?? null));
      if (flags.json) screen.json(reading ?? { station: null, stamps: null });
      else {
        const run = runKindOf(judgeAttempt(recording, attempt).motion.width_mm);
        screen.say(...sectionLines(flags.at, reading, joint.kind, { cell_mm: recording.simulation.cell_mm, run }));
      }
      if (flags.svg !== undefined && !flags.json) screen.say(`Drawn in ${flags.svg}`);
    });
}

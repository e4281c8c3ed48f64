import { Command, CommanderError } from 'commander';
import { ENGINE_VERSION, EngineError } from '../../../engine/index.ts';
import { InputError } from '../../schema/problem.ts';
import { adviseCommand } from './advise.ts';
import { exerciseCommand } from './exercise.ts';
import { rangeCommand } from './range.ts';
import { reportCommand } from './report.ts';
import { schemaCommand } from './schema.ts';
import { scoreCommand } from './score.ts';
import { Screen, type Terminal } from './screen.ts';
import { sectionCommand } from './section.ts';
import { sheetCommand } from './sheet.ts';
import { weaveCommand } from './weave.ts';

export type { Terminal };

const BAD_INPUT = 2;

const HELP = `
The whole circle in three lines:
    $ toehold weave --out robot.json                     weld a 60 mm tee with the robot hand
    $ toehold score robot.json                           what came out, and what to change first
    $ toehold section robot.json --at 25 --svg cut.svg   the cut, drawn
and $ toehold advise robot.json                         what mends it, proved by welding it again

Exit codes: 0 done, 1 outside limits (score --strict), 2 bad input.
A study aid: the local code, the written procedure and the inspector decide; a score qualifies nobody.`;

/**
 * Runs one command line.
 * @param args arguments after the program's name
 * @returns exit code: 0 done, 1 outside limits (`score --strict`), 2 bad input
 */
export async function run(args: readonly string[], terminal: Terminal): Promise<number> {
  let code = 0;
  const screen = new Screen(terminal);
  const program = new Command('toehold')
    .description('A weave practice bench for vertical-up MAG fillets: weld, score and cut on the command line.')
    .version(`toehold, engine ${ENGINE_VERSION}`)
    .addHelpText('after', HELP);
  const finish = (value: number): void => {
    code = value;
  };
  program
    .addCommand(weaveCommand(screen))
    .addCommand(scoreCommand(screen, finish))
    .addCommand(sectionCommand(screen))
    .addCommand(reportCommand(screen))
    .addCommand(sheetCommand(screen, finish))
    .addCommand(exerciseCommand(screen))
    .addCommand(schemaCommand(screen))
    .addCommand(adviseCommand(screen))
    .addCommand(rangeCommand(screen));
  for (const command of [program, ...program.commands]) {
    command.exitOverride();
    command.showHelpAfterError('(add --help for what there is)');
    command.configureOutput({
      writeOut: (text) => screen.say(...linesOf(text)),
      writeErr: (text) => screen.warn(...linesOf(text)),
    });
  }
  try {
    await program.parseAsync([...args], { from: 'user' });
    return code;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : BAD_INPUT;
    if (error instanceof InputError || error instanceof EngineError) {
      screen.warn(...linesOf(error.message));
      return BAD_INPUT;
    }
    throw error;
  }
}

/** Lines of a text of ours; what came from outside was cleaned when it went into it. */
function linesOf(text: string): string[] {
  return text.replace(/\n$/, '').split('\n');
}

import { Command } from 'commander';
import type { Section } from '../../../engine/index.ts';
import { attemptOf } from '../../attempt/attempt.ts';
import { sectionSvg } from '../../draw/section-svg.ts';
import { readSection } from '../../measures/section/station.ts';
import type { ProvedResult } from '../../schema/proved.ts';
import { judgeAttempt } from '../../score.ts';
import { proveAdvice, RERUNS } from '../../trials/prove-advice.ts';
import { writeText } from '../files.ts';
import { number, recordingFrom, workOption } from './options.ts';
import type { Screen } from './screen.ts';

interface AdviseFlags {
  json?: true;
  reruns: number;
  svg?: string;
  maxWork?: number;
}

const HELP = `
Scores the recording, then tries what could mend it: one thing changed at a time on the very hand in the recording, welded again. Advice is
shown as proved only where that mends the fault and puts no other line outside; otherwise a drill is named.

Examples:
    $ toehold advise attempt.json
    $ toehold advise attempt.json --json > advice.json
    $ toehold advise attempt.json --svg cut       cut-1-before.svg, cut-1-after.svg: the cut before and after`;

export function adviseCommand(screen: Screen): Command {
  const command = new Command('advise')
    .description('say what to change, proved by welding the attempt again with that change')
    .argument('<attempt>', 'recording to mend')
    .option('--json', 'print the whole result, readings before and after, and both outlines as JSON')
    .option('--reruns <n>', 'most re-runs', number(1, 40, ''), RERUNS)
    .option('--svg <start>', 'draw the cut before and after each proved change; files start with this');
  return workOption(command)
    .addHelpText('after', HELP)
    .action((file: string, flags: AdviseFlags) => {
      const recording = recordingFrom(file, flags.maxWork);
      const attempt = attemptOf(recording);
      const result = judgeAttempt(recording, attempt);
      const drawings: [string, string][] = [];
      const proved = proveAdvice(recording, result, {
        attempt,
        reruns: Math.round(flags.reruns),
        onCuts: (_advice, before, after) => {
          if (flags.svg === undefined) return;
          const n = drawings.length / 2 + 1;
          drawings.push([`${flags.svg}-${n}-before.svg`, drawn(before)]);
          drawings.push([`${flags.svg}-${n}-after.svg`, drawn(after)]);
        },
      });
      for (const [name, text] of drawings) writeText(name, text);
      if (flags.json) screen.json(proved);
      else screen.say(...adviceLines(proved), ...drawings.map(([name]) => `Drawn in ${name}`));
    });
}

function drawn(cut: Section): string {
  return sectionSvg(cut, readSection(cut)?.station ?? null);
}

function adviceLines(r: ProvedResult): string[] {
  const head = `${r.exercise?.title ?? 'Attempt without an exercise'}: ${r.verdict}.`;
  if (r.advice.length === 0) return [head, ...r.reasons.map((x) => x.text), 'Nothing to say about the hand.'];
  const rows = r.advice.map((a) => {
    const mark = a.proved ? 'Proved' : a.untried === null ? 'Not mended by one change' : `Not tried (${a.untried})`;
    return `${mark}: ${a.text}`;
  });
  const aid = 'A study aid: what mends the weld here is for the bench to confirm.';
  return [head, ...rows, `${r.reruns} re-runs.`, aid];
}

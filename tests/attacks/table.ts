import type { Outcome } from './attack.ts';
import { attacks } from './attacks.ts';

export const README = new URL('./README.md', import.meta.url);
const START = '<!-- table: written by npm run attacks -->';
const END = '<!-- end of table -->';

/** The table of a whole run, put between the marks of a text. @throws Error when the marks are not there */
export function withTable(text: string, outcomes: readonly Outcome[], engine: string, scoring: string): string {
  const from = text.indexOf(START);
  const to = text.indexOf(END);
  if (from < 0 || to < from) throw new Error('tests/attacks/README.md: found no marks for the table');
  const rows = attacks.map((a) => {
    const o = outcomes.find((x) => x.name === a.name);
    if (o === undefined) throw new Error(`no outcome of ${a.name}`);
    return `| ${a.name} | ${a.says} | 0 to ${a.whole - 1} | ${o.inputs} | ${o.faults.length} |`;
  });
  const table = [
    '| attack | what is tried, and has to hold | seeds | inputs tried | did not hold |',
    '|---|---|---|---|---|',
    ...rows,
  ];
  return `${text.slice(0, from + START.length)}\n\nEngine ${engine}, scoring ${scoring}.\n\n${table.join('\n')}\n\n${text.slice(to)}`;
}

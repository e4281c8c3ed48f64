import { faults } from './faults.ts';
import type { Answer } from './jobs.ts';
import { levelMeans, ofKind, passed, scores, spearmanOf, type Validity } from './summary.ts';
import { settingNames } from './weld.ts';

const START = '<!-- table: written by npm run validity -->';
const END = '<!-- end of table -->';

/** Puts the table into a text between its marks. @throws Error when the marks are not there */
export function withTable(text: string, table: string): string {
  const from = text.indexOf(START);
  const to = text.indexOf(END);
  if (from < 0 || to < from) throw new Error('tests/validity/README.md: found no marks for the table');
  return `${text.slice(0, from + START.length)}\n\n${table}\n\n${text.slice(to)}`;
}

export function table(v: Validity, answers: readonly Answer[]): string {
  const lines = [
    '| what | found | target | |',
    '|---|---|---|---|',
    row('skilled and novice hands told apart (AUC, lower of the settings)', v.auc, 0.99),
    row('same hand, new seeds (ICC(1,1) of the trend number)', v.icc, 0.9),
    row('shown advice mends its fault in fresh seeds', v.adviceHelps, 0.9),
    `| cheats that came out within and counted | ${v.cheatsPassed} of ${ofKind(answers, 'cheat').length} | 0 | ${v.cheatsPassed === 0 ? 'met' : 'missed'} |`,
    '',
    `${v.runs} welds.`,
    '',
    '**Graded faults** (Spearman of the amount against what it damages; means over seeds where chance decides)',
    '',
    `| fault | amount | damages | ${settingNames.join(' | ')} | target 0.95 |`,
    `|---|---|---|${settingNames.map(() => '---|').join('')}---|`,
    ...faults.map((f, i) => {
      const cells = settingNames.map(
        (s) =>
          `${spearmanOf(answers, i, s).toFixed(3)} (${levelMeans(answers, i, s)
            .map((x) => x.toFixed(2))
            .join(', ')})`,
      );
      const met = (v.spearman[f.name] ?? 0) >= 0.95;
      return `| ${f.name} | ${f.levels.join(', ')} ${f.unit} | ${f.damages} | ${cells.join(' | ')} | ${met ? 'met' : 'missed'} |`;
    }),
    '',
    '**Trend numbers**',
    '',
    '| setting | skilled | novice |',
    '|---|---|---|',
    ...settingNames.map(
      (s) => `| ${s} | ${scores(answers, 'skilled', s).join(', ')} | ${scores(answers, 'novice', s).join(', ')} |`,
    ),
    '',
    '**Advice**',
    '',
    '| hand | shown | mended in fresh seeds |',
    '|---|---|---|',
    ...ofKind(answers, 'advice').map(
      ({ trial: t }) =>
        `| ${t.case} | ${t.shown ?? 'no single change: drill'} | ${t.shown === null ? '' : `${t.mended} of ${t.fresh}`} |`,
    ),
    '',
    '**Cheats**',
    '',
    '| cheat | verdict | because | |',
    '|---|---|---|---|',
    ...ofKind(answers, 'cheat').map(
      (c) =>
        `| ${c.name} | ${c.verdict}${c.counted ? '' : ', not counted'} | ${c.why} | ${passed(c) ? 'PASSED' : 'caught'} |`,
    ),
  ];
  return lines.join('\n');
}

function row(what: string, found: number | null, target: number): string {
  return `| ${what} | ${found === null ? 'nothing shown' : found.toFixed(3)} | at least ${target} | ${found !== null && found >= target ? 'met' : 'missed'} |`;
}

import { ENGINE_VERSION } from '../../../engine/index.ts';
import { SCORING_VERSION } from '../../../scoring/version.ts';
import type { AdviceTrial } from './advice.ts';
import { FAULT_TREMOR_MM, faults, HANDS } from './faults.ts';
import type { Answer } from './jobs.ts';
import { again, ofKind, passed, quantities, scores, spearmanOf, type Validity } from './summary.ts';
import { mainSettings, settingNames, settings } from './weld.ts';

const START = '<!-- table: written by npm run validity -->';
const END = '<!-- end of table -->';

/** Puts the table into a text between its marks. @throws Error when the marks are not there */
export function withTable(text: string, table: string): string {
  const from = text.indexOf(START);
  const to = text.indexOf(END);
  if (from < 0 || to < from) throw new Error('tests/studies/validity/README.md: found no marks for the table');
  return `${text.slice(0, from + START.length)}\n\n${table}\n\n${text.slice(to)}`;
}

/** What a run cost. */
export interface Run {
  minutes: number;
  threads: number;
}

/** Lowest rank correlation over single hands that is good enough. */
const RANKED = 0.9;

export function table(v: Validity, answers: readonly Answer[], { minutes, threads }: Run): string {
  const parts = [
    `Engine ${ENGINE_VERSION}, scoring ${SCORING_VERSION}; some ${v.runs} welds in ${minutes.toFixed(0)} minutes on ${threads} threads.`,
    targets(v),
    `${v.books.open === 0 ? '' : `**In ${v.books.open} of them mass or energy does not add up: not to be believed.** `}Largest error of their accounts of mass and energy: ${v.books.largest === 0 ? 'none in the six decimals of a result' : v.books.largest.toExponential(1)}.`,
    heading('Settings', 'the robot without a fault'),
    settingTable(answers),
    heading(
      'Graded faults',
      `Spearman of the amount against what it damages over ${HANDS} single hands, evenly from none to the amount named, each with ${FAULT_TREMOR_MM} mm of tremor besides; in brackets the reading of the first hand and of the last`,
    ),
    faultTable(v, answers),
    heading('Trend numbers', 'each hand with its own mix of faults'),
    cohortTable(v, answers),
    heading('Same hand, new seeds', 'trend numbers, a group a hand'),
    mainSettings.map((s) => `- ${s}, ICC ${v.iccBySetting[s]?.toFixed(3)}: ${inRows(again(answers, s))}`).join('\n'),
    heading(
      'Advice',
      `${v.advice.hands} hands with one fault; ${v.advice.asked} are outside limits and were asked about`,
    ),
    adviceText(v),
    adviceTable(ofKind(answers, 'advice').map((a) => a.trial)),
    heading(
      'Bad welds that should look good',
      `${ofKind(answers, 'cheat').length} of them, thought of by those who made the program; the verdict alone has to catch them`,
    ),
    cheatTable(answers),
    heading(
      'Files that are not what they say',
      `made with the program in hand, in the class of the honest one above them; caught is what the class sheet leaves out, with its evidence. Of the last ${v.notCaught.of}, which no file gives away, ${v.notCaught.counted} counted`,
    ),
    fileTable(answers),
  ];
  return parts.join('\n\n');
}

function inRows(values: readonly (readonly number[])[]): string {
  return values.map((row) => row.join(' ')).join('; ');
}

function heading(title: string, about: string): string {
  return `**${title}** (${about})`;
}

function rows(head: readonly string[], body: readonly (readonly (string | number)[])[]): string {
  const line = (cells: readonly (string | number)[]): string => `| ${cells.join(' | ')} |`;
  return [line(head), `|${head.map(() => '---').join('|')}|`, ...body.map(line)].join('\n');
}

function met(found: number | null, target: number): string {
  return found !== null && found >= target ? 'met' : 'missed';
}

function targets(v: Validity): string {
  const least = (what: string, found: number | null, target: number): string[] => [
    what,
    found === null ? 'nothing shown' : found.toFixed(3),
    `at least ${target}`,
    met(found, target),
  ];
  const spearmans = Object.values(v.spearman);
  return rows(
    ['what', 'found', 'target', ''],
    [
      least(
        'graded faults against what they damage (Spearman over single hands, lowest of faults and settings)',
        lowest(spearmans),
        RANKED,
      ),
      least('skilled and novice hands told apart (AUC, lowest of the settings)', v.auc, 0.99),
      least('same hand, new seeds (ICC(1,1) of the trend number, lower of the settings)', v.icc, 0.9),
      least(
        `shown advice mends its fault in fresh seeds (${v.freshSeeds.mended} of ${v.freshSeeds.fresh})`,
        v.adviceHelps,
        0.9,
      ),
      [
        'bad welds and given-away files of the lists below that counted; they speak for their own lists alone',
        `${v.cheatsPassed} of ${v.cheats}`,
        '0',
        v.cheatsPassed === 0 ? 'met' : 'missed',
      ],
      ['the honest hand beside them counts', v.honestCounts ? 'yes' : 'no', 'yes', v.honestCounts ? 'met' : 'missed'],
    ],
  );
}

function lowest(values: readonly number[]): number | null {
  return values.length === 0 ? null : Math.min(...values);
}

function settingTable(answers: readonly Answer[]): string {
  return rows(
    ['setting', 'joint and size', 'machine', 'weave', 'verdict'],
    ofKind(answers, 'steady').map((a) => {
      const { joint, process, weave, leg_mm } = settings[a.setting];
      const wire = 'wire_mm' in process ? process.wire_mm : 0.9;
      return [
        a.setting,
        `${joint.kind} ${joint.plateA_mm}/${joint.plateB_mm} mm, leg ${leg_mm}`,
        `${wire.toFixed(1)} wire, ${process.feed_mpmin} m/min, ${process.volts_V} V`,
        `${weave.width_mm} mm, ${weave.travel_mmps} mm/s, ${weave.cyclesPerSecond} a second, pauses ${weave.pauseA_s} and ${weave.pauseB_s} s`,
        a.verdict === 'within' ? a.verdict : `${a.verdict}: ${a.doubt}`,
      ];
    }),
  );
}

function faultTable(v: Validity, answers: readonly Answer[]): string {
  return rows(
    ['fault', 'none to', 'damages', ...mainSettings, `target ${RANKED}`],
    faults.map((f, i) => [
      f.name,
      `${f.most} ${f.unit}`,
      f.damages,
      ...mainSettings.map((s) => {
        const read = quantities(answers, i, s);
        return `${spearmanOf(answers, i, s).toFixed(2)} (${read[0]?.toFixed(2)} to ${read[read.length - 1]?.toFixed(2)})`;
      }),
      met(v.spearman[f.name] ?? null, RANKED),
    ]),
  );
}

function cohortTable(v: Validity, answers: readonly Answer[]): string {
  return rows(
    ['setting', 'skilled', 'novice', 'AUC'],
    settingNames.map((s) => [
      s,
      scores(answers, 'skilled', s).join(', '),
      scores(answers, 'novice', s).join(', '),
      v.aucBySetting[s]?.toFixed(3) ?? '',
    ]),
  );
}

function adviceText(v: Validity): string {
  const { asked, shown, noSingleChange } = v.advice;
  return (
    `A change was shown to ${shown} of ${asked}; ${noSingleChange} were told that no single change mends it. The shown change mended its fault in ` +
    `${v.freshSeeds.mended} of ${v.freshSeeds.fresh} fresh goes, and put another line outside in ${v.freshSeeds.spoiled}.`
  );
}

function adviceTable(trials: readonly AdviceTrial[]): string {
  return rows(
    ['setting', 'fault', 'outside', 'shown', 'mended in fresh seeds'],
    trials
      .filter((t) => t.asked)
      .map((t) => [
        t.setting,
        t.name,
        t.outside.join(', '),
        t.shown === null
          ? `no single change (${t.tried} welded)`
          : `${t.shown.change.what} ${t.shown.change.by} for ${t.shown.measure}`,
        t.shown === null ? '' : `${t.mended} of ${t.fresh}${t.spoiled > 0 ? `, ${t.spoiled} spoiled` : ''}`,
      ]),
  );
}

function cheatTable(answers: readonly Answer[]): string {
  return rows(
    ['cheat', 'verdict', 'because', ''],
    ofKind(answers, 'cheat').map((c) => [
      c.name,
      `${c.verdict}${c.counted ? '' : ', not counted'}`,
      c.why,
      passed(c) ? 'PASSED' : 'caught',
    ]),
  );
}

function fileTable(answers: readonly Answer[]): string {
  return rows(
    ['file', 'verdict', 'evidence', ''],
    ofKind(answers, 'file').map((f) => [
      f.name,
      f.verdict,
      f.evidence.join('; ').replace(/\|/g, '/'),
      f.counted ? (f.shows === 'honest' ? 'counts' : f.shows === 'nothing' ? 'not caught' : 'PASSED') : 'caught',
    ]),
  );
}

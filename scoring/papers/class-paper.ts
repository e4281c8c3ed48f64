import { type Attempt, attemptOf } from '../attempt/attempt.ts';
import type { Entry } from '../class/entry.ts';
import type { First } from '../class/first-three.ts';
import { mismatchesSaid, notCountedSaid } from '../class/said.ts';
import type { ClassSheet } from '../class/sheet.ts';
import { commonSaid, headline, TABLE_HEAD, tableCells } from '../class/sheet-text.ts';
import { weekTable } from '../class/weeks.ts';
import { classWordsIn, faultSaid } from '../class/words-in.ts';
import { sectionSvg } from '../draw/section-svg.ts';
import type { Svg } from '../draw/svg.ts';
import { digest } from '../exercises/digest.ts';
import { checkAccounts } from '../measures/open-accounts.ts';
import { readSection } from '../measures/section/station.ts';
import { textOf } from '../schema/bytes.ts';
import { InputError } from '../schema/problem.ts';
import { readRecording } from '../schema/read.ts';
import type { AttemptRecording } from '../schema/recording.ts';
import { judgementOf } from '../score.ts';
import { withInches } from '../words/inches.ts';
import { resultOf } from '../words/judgement.ts';
import type { Language } from '../words/language.ts';
import { said } from '../words/names.ts';
import { wordsIn } from '../words/words.ts';

/** Of a class larger than this the cuts are drawn smaller, so that sixteen stand on one sheet. */
export const MANY = 10;

/** Bytes of a file by its name. @throws InputError when it cannot be read */
export type OpenFile = (file: string) => Uint8Array;

/** One of the three to see first, with its cut drawn. */
export interface FirstOnPaper {
  who: string;
  fault: string;
  times: string;
  says: string;
  file: string;
  cut: Svg | null;
  caption: string;
}

/** All that stands on the class report, ready to be set. */
export interface ClassPaper {
  language: Language;
  title: string;
  headline: string;
  common: string;
  first: FirstOnPaper[];
  firstRule: string;
  sheet: ClassSheet;
  /** A row a trainee; what is the same in all of them stands above the table instead of in a column. */
  table: { head: string[]; rows: string[][]; wraps: boolean[]; same: string };
  /** Change over weeks; null where there is only one. */
  weeks: { rule: string; head: string[]; rows: string[][] } | null;
  /** Named lists under the table: title and a sentence for each file. */
  lists: [string, string[]][];
  notModelled: string;
  cautions: string;
  block: [string, string][];
}

/** A cut drawn, or null and the reason why there is none. */
export interface FirstCut {
  cut: Svg | null;
  /** In English, a phrase that other languages know. */
  caption: string;
  /** The first fix, said anew in another language than files keep; left out where it was not asked for or could not be welded. */
  said?: { language: Language; text: string };
}

/**
 * The class report. The three to see first are welded again to draw their cuts.
 * @param open bytes of a recording by its file's name; an InputError is said under the cut that cannot be drawn
 */
export function classPaper(sheet: ClassSheet, open: OpenFile): ClassPaper {
  return classPaperWith(
    sheet,
    sheet.firstThree.map((f, i) => firstCut(f, i, open)),
  );
}

/** The class report with the cuts of the three to see first drawn beforehand, in their order. @param inches stand beside millimetres */
export function classPaperWith(
  sheet: ClassSheet,
  cuts: readonly FirstCut[],
  language: Language = 'en',
  inches = false,
): ClassPaper {
  const w = classWordsIn(language);
  const words = wordsIn(language);
  const exercises = [...new Set(sheet.rows.map((r) => r.exercise ?? w.none))].sort();
  const weeks = weekTable(sheet.rows, w);
  const file = (e: Entry, what: readonly string[]): string => `${e.file}: ${what.join('; ')}`;
  return {
    language,
    title: w.title,
    headline: headline(sheet, language),
    common: commonSaid(sheet, language),
    first: sheet.firstThree.map((f, i) => firstOnPaper(f, i, cuts[i]!, language, inches)),
    firstRule: w.firstRule,
    sheet,
    table: tableOnPaper(sheet, language),
    weeks: weeks === null ? null : { rule: w.weeksRule, ...weeks },
    lists: [
      [w.lists.notCounted, sheet.notCounted.map((e) => file(e, notCountedSaid(e, language)))],
      [w.lists.mismatched, sheet.mismatched.map((e) => file(e, mismatchesSaid(e, language)))],
      [w.lists.unnamed, sheet.unnamed.map((e) => file(e, [w.verdict[e.scored.result.verdict]]))],
      [w.lists.bad, sheet.bad.map((b) => words.refusal(b.reason))],
      [w.lists.others, sheet.others.map((o) => `${o.file}: ${w.kinds[o.kind]}`)],
      [w.lists.folders, sheet.folders.map((f) => `${f}/`)],
      [w.lists.notes, sheet.notes.map(words.phrase)],
    ],
    notModelled: words.notModelled.join('; '),
    cautions: words.cautions.join(' '),
    block: [
      [w.block.class, ''],
      [
        w.block.days,
        sheet.days === null
          ? ''
          : sheet.days.from === sheet.days.to
            ? sheet.days.from
            : w.span(sheet.days.from, sheet.days.to),
      ],
      [w.block.exercise, exercises.join(', ')],
      [w.block.instructor, ''],
    ],
  };
}

/** Columns that take room and often say the same of everybody. */
const OFTEN_SAME = ['exercise', 'device'] as const;
/** Columns whose cells may take a second line. */
const WRAPS: ReadonlySet<string> = new Set(['trainee', 'common fault']);

function tableOnPaper({ rows }: ClassSheet, language: Language): ClassPaper['table'] {
  const w = classWordsIn(language);
  const cells = rows.map((row) => tableCells(row, language));
  const at = (column: (typeof TABLE_HEAD)[number]): number => TABLE_HEAD.indexOf(column);
  const same = OFTEN_SAME.filter((c) => cells.length > 1 && cells.every((row) => row[at(c)] === cells[0]![at(c)]));
  // Nobody has enough attempts yet for a spread: its column says nothing.
  const empty = cells.length > 1 && cells.every((row) => row[at('spread')] === '–');
  const shown = TABLE_HEAD.filter((column) => !same.some((c) => c === column) && !(empty && column === 'spread'));
  return {
    head: [...shown.map((column) => w.head[column]), w.coupon],
    rows: cells.map((row) => shown.map((column) => row[at(column)]!)),
    wraps: shown.map((column) => WRAPS.has(column)),
    same: same.length === 0 ? '' : w.same(same.map((c) => `${w.head[c]} ${cells[0]![at(c)]}`).join(', ')),
  };
}

function firstOnPaper(
  f: First,
  i: number,
  { cut, caption, said }: FirstCut,
  language: Language,
  inches: boolean,
): FirstOnPaper {
  const w = classWordsIn(language);
  const { fault } = f.entry;
  const sized = (text: string): string => (inches ? withInches(text, language) : text);
  return {
    who: `${i + 1}. ${f.trainee}`,
    fault: fault === null ? f.fault : faultSaid(fault.code, language),
    times: w.times(f.times, f.of, wordsIn(language).phrase(f.device)),
    says: sized(said?.language === language ? said.text : f.says),
    file: f.entry.file,
    cut,
    caption: sized(wordsIn(language).refusal(caption)),
  };
}

/**
 * The cut of one of the three, welded again, or the reason why it is not drawn: the file may have changed since it was scored.
 * @param i its place among the three, from 0
 * @param language the first fix is said anew in it: a kept score carries English alone
 */
export function firstCut(f: First, i: number, open: OpenFile, language: Language = 'en'): FirstCut {
  if (f.y_mm === null) return { cut: null, caption: 'No place along the joint to cut at.' };
  const { file, scored } = f.entry;
  try {
    const bytes = open(file);
    if (digest(bytes) !== scored.sha256) return { cut: null, caption: `${file} has changed since it was scored.` };
    const recording = readRecording(textOf(bytes, file), file);
    const attempt = attemptOf(recording);
    checkAccounts(attempt.accounts, file);
    const section = attempt.section(f.y_mm);
    const station = readSection(section)?.station ?? null;
    const line = f.line === null ? '' : ` Farthest outside: ${f.line}.`;
    return {
      cut: sectionSvg(section, station, { id: `first${i}`, bare: true }),
      caption: `Cut at ${said(f.y_mm)} mm.${line}`,
      ...(language === 'en' ? {} : saidAnew(f, recording, attempt, language)),
    };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return { cut: null, caption: error.message };
  }
}

/** The first fix in a language, judged again; nothing where judging comes to another one than the kept score did. */
function saidAnew(f: First, recording: AttemptRecording, attempt: Attempt, language: Language): Pick<FirstCut, 'said'> {
  const text = resultOf(judgementOf(recording, attempt), language).advice[0];
  return text !== undefined && text.code === f.entry.fault?.code ? { said: { language, text: text.text } } : {};
}

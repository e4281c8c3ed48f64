import { type Attempt, attemptOf } from '../attempt/attempt.ts';
import { type AttemptName, personSaid, wordsInName } from '../class/file-name.ts';
import { nameOf } from '../class/scored.ts';
import { sectionSvg } from '../draw/section-svg.ts';
import { standingSvg } from '../draw/standing-svg.ts';
import { stripSvg } from '../draw/strip-svg.ts';
import type { Svg } from '../draw/svg.ts';
import { exerciseNamed } from '../exercises/ready.ts';
import { judgedOf } from '../exercises/workshop.ts';
import { openedRoot, Survey } from '../measures/bead/survey.ts';
import { checkAccounts } from '../measures/open-accounts.ts';
import { plusMinusAt } from '../measures/precision.ts';
import { describeFound, InputError } from '../schema/problem.ts';
import type { AttemptRecording } from '../schema/recording.ts';
import type { Line, Result } from '../schema/result.ts';
import { judgeAttempt, type ScoreOptions } from '../score.ts';
import type { ScoringWords } from '../words/en.ts';
import { inInches } from '../words/inches.ts';
import type { Language } from '../words/language.ts';
import { said as saidInEnglish } from '../words/names.ts';
import { weldedDown } from '../words/root.ts';
import { wordsIn } from '../words/words.ts';
import type { AttemptWords } from './attempt-words.ts';
import { FOOTNOTE } from './sentences.ts';
import { attemptWordsIn } from './words-in.ts';

/** How the report of an attempt is judged and cut. */
export interface PaperOptions extends ScoreOptions {
  /** Height of the large cut, mm; left out: where the first fix points, else the middle of the judged length. */
  at_mm?: number;
  /** Inches beside millimetres. */
  inches?: boolean;
  /** Of the report's own words; its result comes said. Left out: English. */
  language?: Language;
}

/** Pixels a millimetre of the cuts: on the sheet's 64 mm their lettering is then some 2.5 mm, as the text beside them. */
const CUT_SCALE = 20;

/** A line of the report: everything as text but the little drawing. */
export interface PaperLine {
  what: string;
  reading: string;
  /** The same in inches, in small letters below; null: not wanted, or no length. */
  readingInch: string | null;
  limit: string;
  limitInch: string | null;
  verdict: Line['verdict'];
  standing: Svg;
  where: string;
  /** Empty: that of the line above. */
  rule: string;
}

/** All that stands on the report of one attempt, ready to be set. */
export interface AttemptPaper {
  language: Language;
  file: string;
  name: AttemptName;
  title: string;
  settings: string;
  verdict: Result['verdict'];
  trend: string | null;
  reasons: string[];
  notes: string[];
  first: { text: string; where: string | null } | null;
  after: string[];
  cut: { y_mm: number; svg: Svg; why: string };
  smallCuts: { y_mm: number; svg: Svg }[];
  strip: Svg;
  lines: PaperLine[];
  /** Small print under the lines: where limits come from that were not checked against their edition, and what the trend number is. */
  below: string;
  hand: string[];
  notMeasured: string;
  notModelled: string;
  cautions: string[];
  /** Cells of the title block: what, value. */
  block: [string, string][];
}

/**
 * The report of one attempt, welded again. The same recording gives the same report, byte for byte.
 * @param file name of its file; date, bench, trainee and number are read from it
 * @throws InputError, EngineError
 */
export function attemptPaper(recording: AttemptRecording, file: string, options: PaperOptions = {}): AttemptPaper {
  const attempt = attemptOf(recording);
  checkAccounts(attempt.accounts, file);
  const survey = new Survey(attempt.section);
  const result = judgeAttempt(recording, attempt, { ...options, survey });
  return attemptPaperOf({ recording, section: attempt.section, survey, result }, file, options);
}

/** An attempt that has been welded and judged already. */
export interface Judged {
  recording: AttemptRecording;
  /** A cut square to the joint at a height, mm. */
  section: Attempt['section'];
  survey: Survey;
  result: Result;
}

/** The report of an attempt as it lies welded and judged: the same report as `attemptPaper` makes of its recording. @throws InputError */
export function attemptPaperOf(
  judgedAttempt: Judged,
  file: string,
  options: Pick<PaperOptions, 'at_mm' | 'inches' | 'language'> = {},
): AttemptPaper {
  const { recording, section, survey, result: r } = judgedAttempt;
  const { joint, cell_mm } = recording.simulation;
  const language = options.language ?? 'en';
  const w = attemptWordsIn(language);
  const words = wordsIn(language);
  if (options.at_mm !== undefined && !(options.at_mm >= 0 && options.at_mm <= joint.length_mm)) {
    throw new InputError('report', [
      {
        path: '--at',
        found: describeFound(options.at_mm),
        allowed: `0 to ${saidInEnglish(joint.length_mm)} mm, the length of this joint`,
      },
    ]);
  }
  const { trainee, started } = recording;
  const name = nameOf({ file, trainee, started });
  const judged = r.exercise?.judged ?? judgedOf(joint.length_mm);
  const cuts_mm = r.exercise?.cuts_mm ?? [];
  const cut = whichCut(r, judged, options.at_mm, w);
  const drawn = (y_mm: number, id: string, bare: boolean): Svg => {
    const sec = section(y_mm);
    return sectionSvg(sec, survey.at(y_mm)?.station ?? null, { id, bare, scale: CUT_SCALE, language });
  };
  const [first, ...then] = r.advice;
  return {
    language,
    file,
    name,
    title: r.exercise === null ? w.untitled : words.ready(r.exercise.title),
    settings: `${w.settingsSentence(recording, r)} ${w.judgedBy(profileSaid(r, w, words), Object.values(name).includes(null) ? file : null)}`,
    verdict: r.verdict,
    trend: r.score === null ? null : String(r.score),
    reasons: r.reasons.map((x) => x.text),
    notes: r.notes.map((x) => x.text),
    first: first === undefined ? null : { text: first.text, where: whereSaid(first, w) },
    after: then.map((a) => a.text),
    cut: { ...cut, svg: drawn(cut.y_mm, 'cut', false) },
    smallCuts: cuts_mm.slice(0, 3).map((y_mm, i) => ({ y_mm, svg: drawn(y_mm, `cut${i + 1}`, true) })),
    strip: stripSvg(openedRoot(survey, joint.length_mm, plusMinusAt('root fusion', cell_mm)), joint, {
      id: 'strip',
      width: 960,
      judged,
      cuts_mm,
      weldedDown: weldedDown(r),
      language,
    }),
    lines: ruleOnce(r.lines.map((l) => paperLine(l, joint.kind, w, words, options.inches === true ? language : null))),
    below: [
      ...(r.lines.some((l) => l.status === 'memory') ? [w.provenance] : []),
      ...(r.score === null ? [] : [w.trend(r.score)]),
    ].join(' '),
    hand: w.handSentences(r, joint.kind),
    notMeasured: notMeasuredSaid(r.notMeasured),
    notModelled: r.notModelled.join('; '),
    cautions: r.cautions,
    block: titleBlock(name, trainee?.name ?? null, r, w),
  };
}

function sameAs(trainee: string, written: string | null): written is string {
  return written !== null && wordsInName(written) === trainee;
}

function whichCut(
  r: Result,
  judged: { from_mm: number; to_mm: number },
  at: number | undefined,
  { why }: AttemptWords,
): { y_mm: number; why: string } {
  if (at !== undefined) return { y_mm: at, why: why.asked };
  const y = r.advice[0]?.y_mm;
  if (y !== undefined && y !== null) return { y_mm: y, why: why.first };
  const cuts = r.exercise?.cuts_mm ?? [];
  const middle = cuts[cuts.length >> 1];
  return middle === undefined
    ? { y_mm: Math.round((judged.from_mm + judged.to_mm) / 2), why: why.middle }
    : { y_mm: middle, why: why.marked };
}

function profileSaid(r: Result, w: AttemptWords, { ready }: ScoringWords): string {
  return r.profile === null ? w.noProfile : `${ready(r.profile.title)} (${ready(r.profile.edition)})`;
}

function whereSaid(a: Result['advice'][number], w: AttemptWords): string | null {
  if (a.y_mm === null) return null;
  const parts = [w.at(w.said(a.y_mm))];
  if (a.t_s !== null) parts.push(w.into(w.said(a.t_s)));
  if (a.cycle !== null) parts.push(w.cycle(a.cycle));
  return parts.join(', ');
}

function paperLine(
  l: Line,
  kind: Parameters<AttemptWords['measureName']>[2],
  w: AttemptWords,
  { ready }: ScoringWords,
  inches: Language | null,
): PaperLine {
  const inch = (mm: number): string | null => (inches === null || l.unit !== 'mm' ? null : inInches(mm, 'mm', inches));
  const decimals = l.unit === 'in' ? 3 : l.unit === 'mm' ? 2 : 0;
  const unit = l.unit === 'deg' ? '°' : ` ${l.unit}`;
  return {
    what: w.measureName(l.measure, l.side, kind),
    reading: `${signed(l.reading, decimals, w)} ± ${signed(l.plusMinus, decimals, w)}${unit}`,
    readingInch: inch(l.reading),
    limit: `${w.sense[l.sense]} ${signed(l.limit, decimals, w)}${unit}`,
    limitInch: inch(l.limit),
    verdict: l.verdict,
    standing: standingSvg(l),
    where: l.places.length === 0 ? w.said(l.y_mm, 0) : placesSaid(l.places, w),
    rule: `${ready(l.rule)}${l.status === 'memory' ? ` ${FOOTNOTE}` : ''}`,
  };
}

/** A rule that several lines in a row go by, such as both toes', stands at the first of them. */
function ruleOnce(lines: readonly PaperLine[]): PaperLine[] {
  return lines.map((line, i) => (line.rule === lines[i - 1]?.rule ? { ...line, rule: '' } : line));
}

/** With a true minus, as wide as the plus of ±. */
function signed(x: number, decimals: number, w: AttemptWords): string {
  return x
    .toFixed(decimals)
    .replace(/^-(?=0(\.0*)?$)/, '')
    .replace('-', '\u2212')
    .replace('.', w.said(0.5).charAt(1));
}

/** Readings that are missing for the same reason stand together. */
function notMeasuredSaid(missing: Result['notMeasured']): string {
  const byReason = new Map<string, string[]>();
  for (const { what, why } of missing) byReason.set(why, [...(byReason.get(why) ?? []), what]);
  return [...byReason].map(([why, what]) => `${what.join(', ')}: ${why}`).join('. ');
}

const MOST_PLACES = 3;

function placesSaid(places: Line['places'], { said, more }: AttemptWords): string {
  const all = places.map((p) =>
    p.from_mm === p.to_mm ? said(p.from_mm, 0) : `${said(p.from_mm, 0)}–${said(p.to_mm, 0)}`,
  );
  const rest = all.length - MOST_PLACES;
  return rest > 0 ? more(all.slice(0, MOST_PLACES).join(', '), rest) : all.join(', ');
}

/** @param written trainee as the file has it, before it was made part of a name */
function titleBlock(name: AttemptName, written: string | null, r: Result, w: AttemptWords): [string, string][] {
  const words = w.block;
  const exercise = r.exercise === null ? words.none : r.exercise.name;
  const own = r.exercise !== null && exerciseNamed(r.exercise.name) === undefined ? words.own : '';
  return [
    [words.trainee, name.trainee === null ? '' : sameAs(name.trainee, written) ? written : personSaid(name.trainee)],
    [words.date, [name.date, name.bench].filter((x) => x !== null).join(', ')],
    [words.exercise, `${exercise}${own}${name.attempt === null ? '' : `, ${name.attempt}`}`],
    [words.welded, `${r.origin.kind === 'robot' ? w.robot : r.device.kind}; ${r.engine}, ${r.stateHash}`],
  ];
}

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
import { checkBooks } from '../measures/open-books.ts';
import { plusMinusAt } from '../measures/precision.ts';
import { describeFound, InputError } from '../schema/problem.ts';
import type { AttemptRecording } from '../schema/recording.ts';
import type { Line, Result } from '../schema/result.ts';
import { judgeAttempt, type ScoreOptions } from '../score.ts';
import { measureName, said } from '../words/names.ts';
import { weldedDown } from '../words/root.ts';
import { FOOTNOTE, handSentences, PROVENANCE, settingsSentence, TREND } from './sentences.ts';

/** How the report of an attempt is judged and cut. */
export interface PaperOptions extends ScoreOptions {
  /** Height of the large cut, mm; left out: where the first fix points, else the middle of the judged length. */
  at_mm?: number;
}

/** Pixels a millimetre of the cuts: on the sheet's 64 mm their lettering is then some 2.5 mm, as the text beside them. */
const CUT_SCALE = 20;

/** A line of the report: everything as text but the little drawing. */
export interface PaperLine {
  what: string;
  reading: string;
  limit: string;
  verdict: string;
  standing: Svg;
  where: string;
  rule: string;
}

/** All that stands on the report of one attempt, ready to be set. */
export interface AttemptPaper {
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
  checkBooks(attempt.accounts, file);
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
  options: Pick<PaperOptions, 'at_mm'> = {},
): AttemptPaper {
  const { recording, section, survey, result: r } = judgedAttempt;
  const { joint, cell_mm } = recording.simulation;
  if (options.at_mm !== undefined && !(options.at_mm >= 0 && options.at_mm <= joint.length_mm)) {
    throw new InputError('report', [
      {
        path: '--at',
        found: describeFound(options.at_mm),
        allowed: `0 to ${said(joint.length_mm)} mm, the length of this joint`,
      },
    ]);
  }
  const { trainee, started } = recording;
  const name = nameOf({ file, trainee, started });
  const judged = r.exercise?.judged ?? judgedOf(joint.length_mm);
  const cuts_mm = r.exercise?.cuts_mm ?? [];
  const cut = whichCut(r, judged, options.at_mm);
  const drawn = (y_mm: number, id: string, bare: boolean): Svg => {
    const sec = section(y_mm);
    return sectionSvg(sec, survey.at(y_mm)?.station ?? null, { id, bare, scale: CUT_SCALE });
  };
  const [first, ...then] = r.advice;
  return {
    file,
    name,
    title: r.exercise?.title ?? 'Attempt without an exercise',
    settings: `${settingsSentence(recording, r)} Judged by ${profileSaid(r)}.${Object.values(name).includes(null) ? ` File ${file}.` : ''}`,
    verdict: r.verdict,
    trend: r.score === null ? null : String(r.score),
    reasons: r.reasons.map((x) => x.text),
    notes: r.notes.map((x) => x.text),
    first: first === undefined ? null : { text: first.text, where: whereSaid(first) },
    after: then.map((a) => a.text),
    cut: { ...cut, svg: drawn(cut.y_mm, 'cut', false) },
    smallCuts: cuts_mm.slice(0, 3).map((y_mm, i) => ({ y_mm, svg: drawn(y_mm, `cut${i + 1}`, true) })),
    strip: stripSvg(openedRoot(survey, joint.length_mm, plusMinusAt('root fusion', cell_mm)), joint, {
      id: 'strip',
      width: 960,
      judged,
      cuts_mm,
      weldedDown: weldedDown(r),
    }),
    lines: r.lines.map((l) => paperLine(l, joint.kind)),
    below: [
      ...(r.lines.some((l) => l.status === 'memory') ? [PROVENANCE] : []),
      ...(r.score === null ? [] : [`Trend number ${r.score}: ${TREND}`]),
    ].join(' '),
    hand: handSentences(r, joint.kind),
    notMeasured: notMeasuredSaid(r.notMeasured),
    notModelled: r.notModelled.join('; '),
    cautions: r.cautions,
    block: titleBlock(name, trainee?.name ?? null, r),
  };
}

function sameAs(trainee: string, written: string | null): written is string {
  return written !== null && wordsInName(written) === trainee;
}

function whichCut(
  r: Result,
  judged: { from_mm: number; to_mm: number },
  at: number | undefined,
): { y_mm: number; why: string } {
  if (at !== undefined) return { y_mm: at, why: 'as asked for' };
  const y = r.advice[0]?.y_mm;
  if (y !== undefined && y !== null) return { y_mm: y, why: 'where the first fix points' };
  const cuts = r.exercise?.cuts_mm ?? [];
  const middle = cuts[cuts.length >> 1];
  return middle === undefined
    ? { y_mm: Math.round((judged.from_mm + judged.to_mm) / 2), why: 'middle of the judged length' }
    : { y_mm: middle, why: 'marked before welding' };
}

function profileSaid(r: Result): string {
  return r.profile === null ? 'no profile' : `${r.profile.title} (${r.profile.edition})`;
}

function whereSaid(a: Result['advice'][number]): string | null {
  if (a.y_mm === null) return null;
  const parts = [`at ${said(a.y_mm)} mm`];
  if (a.t_s !== null) parts.push(`${said(a.t_s)} s into the attempt`);
  if (a.cycle !== null) parts.push(`weave cycle ${a.cycle}`);
  return parts.join(', ');
}

function paperLine(l: Line, kind: Parameters<typeof measureName>[2]): PaperLine {
  const decimals = l.unit === 'in' ? 3 : l.unit === 'mm' ? 2 : 0;
  const unit = l.unit === 'deg' ? '°' : ` ${l.unit}`;
  return {
    what: measureName(l.measure, l.side, kind),
    reading: `${signed(l.reading, decimals)} ± ${l.plusMinus.toFixed(decimals)}${unit}`,
    limit: `${l.sense} ${signed(l.limit, decimals)}${unit}`,
    verdict: l.verdict,
    standing: standingSvg(l),
    where: l.places.length === 0 ? said(l.y_mm, 0) : placesSaid(l.places),
    rule: `${l.rule}${l.status === 'memory' ? ` ${FOOTNOTE}` : ''}`,
  };
}

/** With a true minus, as wide as the plus of ±. */
function signed(x: number, decimals: number): string {
  return x
    .toFixed(decimals)
    .replace(/^-(?=0(\.0*)?$)/, '')
    .replace('-', '\u2212');
}

/** Readings that are missing for the same reason stand together. */
function notMeasuredSaid(missing: Result['notMeasured']): string {
  const byReason = new Map<string, string[]>();
  for (const { what, why } of missing) byReason.set(why, [...(byReason.get(why) ?? []), what]);
  return [...byReason].map(([why, what]) => `${what.join(', ')}: ${why}`).join('. ');
}

const MOST_PLACES = 3;

function placesSaid(places: Line['places']): string {
  const all = places.map((p) =>
    p.from_mm === p.to_mm ? said(p.from_mm, 0) : `${said(p.from_mm, 0)}–${said(p.to_mm, 0)}`,
  );
  const rest = all.length - MOST_PLACES;
  return rest > 0 ? `${all.slice(0, MOST_PLACES).join(', ')} and ${rest} more` : all.join(', ');
}

/** @param written trainee as the file has it, before it was made part of a name */
function titleBlock(name: AttemptName, written: string | null, r: Result): [string, string][] {
  const exercise = r.exercise === null ? 'none' : r.exercise.name;
  const own = r.exercise !== null && exerciseNamed(r.exercise.name) === undefined ? ' (own)' : '';
  return [
    ['Trainee', name.trainee === null ? '' : sameAs(name.trainee, written) ? written : personSaid(name.trainee)],
    ['Date, bench', [name.date, name.bench].filter((x) => x !== null).join(', ')],
    ['Exercise, attempt', `${exercise}${own}${name.attempt === null ? '' : `, ${name.attempt}`}`],
    [
      'Welded with; engine, check number',
      `${r.origin.kind === 'robot' ? 'robot hand' : r.device.kind}; ${r.engine}, ${r.stateHash}`,
    ],
  ];
}

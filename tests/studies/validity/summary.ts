import { amountOf, faults, HANDS } from './faults.ts';
import type { Answer } from './jobs.ts';
import { auc, icc1, spearman } from './statistics.ts';
import { mainSettings, type SettingName, settingNames } from './weld.ts';

export interface Validity {
  /** Per fault, over single hands, the lowest of the settings'. */
  spearman: Record<string, number>;
  /** Lowest of the settings'. */
  auc: number;
  /** Lower of the settings'. */
  icc: number;
  /** Share of fresh seeds in which the shown change mends its fault; null: nothing was shown. */
  adviceHelps: number | null;
  /** Bad welds that came out within and counted, and files that give themselves away and were counted all the same: must be 0. */
  cheatsPassed: number;
  /** Of the files that no file can tell from honest ones, how many counted. */
  notCaught: { of: number; counted: number };
  /** The honest hand that they are compared with counts. */
  honestCounts: boolean;
  runs: number;
  aucBySetting: Record<string, number>;
  iccBySetting: Record<string, number>;
  /** Hands tried, of these outside limits and asked about, shown a change, told that no single change mends it. */
  advice: { hands: number; asked: number; shown: number; noSingleChange: number };
  /** Fresh goes with the fault; the shown change mended it; it put another line outside. */
  freshSeeds: { fresh: number; mended: number; spoiled: number };
  cheats: number;
  /** Largest error of any weld's accounts of mass and energy, share; and welds whose accounts are off by more than a thousandth. */
  books: { largest: number; open: number };
}

/** Accounts off by more than this share: the weld is not to be believed. */
const BOOKS_CLOSE = 1e-3;

type Of<K extends Answer['kind']> = Extract<Answer, { kind: K }>;

export function ofKind<K extends Answer['kind']>(answers: readonly Answer[], kind: K): Of<K>[] {
  return answers.filter((a): a is Of<K> => a.kind === kind);
}

/** What a fault damaged in each hand, in the order of their amounts. */
export function quantities(answers: readonly Answer[], fault: number, setting: SettingName): number[] {
  const of = ofKind(answers, 'fault').filter((a) => a.task.fault === fault && a.task.setting === setting);
  return of.sort((a, b) => a.task.hand - b.task.hand).map((a) => a.quantity);
}

/** Over single hands: nothing is averaged before it is ranked. */
export function spearmanOf(answers: readonly Answer[], fault: number, setting: SettingName): number {
  const amounts = Array.from({ length: HANDS }, (_, hand) => amountOf(faults[fault]!, hand));
  return spearman(amounts, quantities(answers, fault, setting));
}

export function scores(answers: readonly Answer[], group: string, setting: SettingName): number[] {
  return ofKind(answers, 'hand')
    .filter((a) => a.task.group === group && a.task.case.setting === setting)
    .map((a) => a.score);
}

/** Trend numbers of each hand that was asked again, a row a hand. */
export function again(answers: readonly Answer[], setting: SettingName): number[][] {
  const same = ofKind(answers, 'hand').filter((a) => a.task.group === 'same hand' && a.task.case.setting === setting);
  const hands = [...new Set(same.map((a) => a.task.hand))];
  return hands.map((h) => same.filter((a) => a.task.hand === h).map((a) => a.score));
}

/** A bad weld is caught by its verdict or left out of the count; a file that gives itself away is caught by being left out, whatever its weld is worth. */
export function passed(cheat: Of<'cheat'> | Of<'file'>): boolean {
  return cheat.kind === 'cheat'
    ? cheat.verdict === 'within' && cheat.counted
    : cheat.shows === 'itself' && cheat.counted;
}

export function summarise(answers: readonly Answer[]): Validity {
  const aucBySetting = by(settingNames, (s) => auc(scores(answers, 'skilled', s), scores(answers, 'novice', s)));
  const iccBySetting = by(mainSettings, (s) => icc1(again(answers, s)));
  const trials = ofKind(answers, 'advice').map((a) => a.trial);
  const sum = (read: (t: (typeof trials)[number]) => number): number => trials.reduce((n, t) => n + read(t), 0);
  const freshSeeds = { fresh: sum((t) => t.fresh), mended: sum((t) => t.mended), spoiled: sum((t) => t.spoiled) };
  const asked = trials.filter((t) => t.asked);
  const shown = asked.filter((t) => t.shown !== null).length;
  const books = answers.map((a) => a.books);
  const files = ofKind(answers, 'file');
  const untold = files.filter((f) => f.shows === 'nothing');
  return {
    spearman: Object.fromEntries(
      faults.map((f, i) => [f.name, round(Math.min(...mainSettings.map((s) => spearmanOf(answers, i, s))))]),
    ),
    auc: Math.min(...Object.values(aucBySetting)),
    icc: Math.min(...Object.values(iccBySetting)),
    adviceHelps: freshSeeds.fresh === 0 ? null : round(freshSeeds.mended / freshSeeds.fresh),
    cheatsPassed: [...ofKind(answers, 'cheat'), ...files].filter(passed).length,
    notCaught: { of: untold.length, counted: untold.filter((f) => f.counted).length },
    honestCounts: files.some((f) => f.shows === 'honest') && files.every((f) => f.shows !== 'honest' || f.counted),
    runs: answers.length - trials.length + sum((t) => t.runs),
    aucBySetting,
    iccBySetting,
    advice: { hands: trials.length, asked: asked.length, shown, noSingleChange: asked.length - shown },
    freshSeeds,
    cheats: ofKind(answers, 'cheat').length + files.filter((f) => f.shows === 'itself').length,
    books: { largest: Math.max(...books), open: books.filter((b) => !(b < BOOKS_CLOSE)).length },
  };
}

function by(names: readonly SettingName[], read: (s: SettingName) => number): Record<string, number> {
  return Object.fromEntries(names.map((s) => [s, round(read(s))]));
}

function round(x: number): number {
  return Math.round(x * 1000) / 1000;
}

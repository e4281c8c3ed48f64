import { faults } from './faults.ts';
import { sameHandSettings } from './hands.ts';
import type { Answer } from './jobs.ts';
import { auc, icc1, mean, spearman } from './statistics.ts';
import { type SettingName, settingNames } from './weld.ts';

export interface Validity {
  /** Per fault, the lowest of the settings'. */
  spearman: Record<string, number>;
  /** Lowest of the settings'. */
  auc: number;
  /** Lower of the settings'. */
  icc: number;
  /** Share of fresh seeds in which the shown change mends its fault; null: nothing was shown. */
  adviceHelps: number | null;
  /** Cheats that came out within and counted: must be 0. */
  cheatsPassed: number;
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

/** Mean quantity at each level of a fault, seeds averaged. */
export function levelMeans(answers: readonly Answer[], fault: number, setting: SettingName): number[] {
  const of = ofKind(answers, 'fault').filter((a) => a.task.fault === fault && a.task.setting === setting);
  return faults[fault]!.levels.map((_, level) => mean(of.filter((a) => a.task.level === level).map((a) => a.quantity)));
}

export function spearmanOf(answers: readonly Answer[], fault: number, setting: SettingName): number {
  return spearman(faults[fault]!.levels, levelMeans(answers, fault, setting));
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

export function passed(cheat: Of<'cheat'>): boolean {
  return cheat.verdict === 'within' && cheat.counted;
}

export function summarise(answers: readonly Answer[]): Validity {
  const aucBySetting = by(settingNames, (s) => auc(scores(answers, 'skilled', s), scores(answers, 'novice', s)));
  const iccBySetting = by(sameHandSettings, (s) => icc1(again(answers, s)));
  const trials = ofKind(answers, 'advice').map((a) => a.trial);
  const sum = (read: (t: (typeof trials)[number]) => number): number => trials.reduce((n, t) => n + read(t), 0);
  const freshSeeds = { fresh: sum((t) => t.fresh), mended: sum((t) => t.mended), spoiled: sum((t) => t.spoiled) };
  const asked = trials.filter((t) => t.asked);
  const shown = asked.filter((t) => t.shown !== null).length;
  const books = answers.map((a) => a.books);
  return {
    spearman: Object.fromEntries(
      faults.map((f, i) => [f.name, round(Math.min(...settingNames.map((s) => spearmanOf(answers, i, s))))]),
    ),
    auc: Math.min(...Object.values(aucBySetting)),
    icc: Math.min(...Object.values(iccBySetting)),
    adviceHelps: freshSeeds.fresh === 0 ? null : round(freshSeeds.mended / freshSeeds.fresh),
    cheatsPassed: ofKind(answers, 'cheat').filter(passed).length,
    runs: answers.length - trials.length + sum((t) => t.runs),
    aucBySetting,
    iccBySetting,
    advice: { hands: trials.length, asked: asked.length, shown, noSingleChange: asked.length - shown },
    freshSeeds,
    cheats: ofKind(answers, 'cheat').length,
    books: { largest: Math.max(...books), open: books.filter((b) => !(b < BOOKS_CLOSE)).length },
  };
}

function by(names: readonly SettingName[], read: (s: SettingName) => number): Record<string, number> {
  return Object.fromEntries(names.map((s) => [s, round(read(s))]));
}

function round(x: number): number {
  return Math.round(x * 1000) / 1000;
}

import { faults } from './faults.ts';
import type { Answer } from './jobs.ts';
import { auc, icc1, mean, spearman } from './statistics.ts';
import { type SettingName, settingNames } from './weld.ts';

export interface Validity {
  /** Per fault, the lower of the settings'. */
  spearman: Record<string, number>;
  /** Lower of the settings'. */
  auc: number;
  icc: number;
  /** Share of fresh seeds in which the shown change mends its fault; null: nothing was shown. */
  adviceHelps: number | null;
  /** Cheats that came out within and counted: must be 0. */
  cheatsPassed: number;
  runs: number;
}

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

export function passed(cheat: Of<'cheat'>): boolean {
  return cheat.verdict === 'within' && cheat.counted;
}

export function summarise(answers: readonly Answer[]): Validity {
  const round = (x: number): number => Math.round(x * 1000) / 1000;
  const same = ofKind(answers, 'hand').filter((a) => a.task.group === 'same hand');
  const hands = [...new Set(same.map((a) => a.task.hand))];
  const trials = ofKind(answers, 'advice').map((a) => a.trial);
  const fresh = trials.reduce((sum, t) => sum + t.fresh, 0);
  return {
    spearman: Object.fromEntries(
      faults.map((f, i) => [f.name, round(Math.min(...settingNames.map((s) => spearmanOf(answers, i, s))))]),
    ),
    auc: round(Math.min(...settingNames.map((s) => auc(scores(answers, 'skilled', s), scores(answers, 'novice', s))))),
    icc: round(icc1(hands.map((h) => same.filter((a) => a.task.hand === h).map((a) => a.score)))),
    adviceHelps: fresh === 0 ? null : round(trials.reduce((sum, t) => sum + t.mended, 0) / fresh),
    cheatsPassed: ofKind(answers, 'cheat').filter(passed).length,
    runs:
      ofKind(answers, 'fault').length +
      ofKind(answers, 'hand').length +
      trials.reduce((sum, t) => sum + t.runs, 0) +
      ofKind(answers, 'cheat').length,
  };
}

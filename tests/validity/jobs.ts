import { handOfAmount } from '../../engine/index.ts';
import { type AdviceTrial, adviceCases, tryAdvice } from './advice.ts';
import { cheats } from './cheats.ts';
import { faults } from './faults.ts';
import { type Case, type SettingName, settingNames, weldCase } from './weld.ts';

/** One piece of work for a worker. */
export type Task =
  | { kind: 'fault'; fault: number; level: number; setting: SettingName; seed: number }
  | { kind: 'hand'; group: 'skilled' | 'novice' | 'same hand'; hand: number; case: Case }
  | { kind: 'advice'; index: number }
  | { kind: 'cheat'; index: number };

export type Answer =
  | { kind: 'fault'; task: Extract<Task, { kind: 'fault' }>; quantity: number; verdict: string }
  | { kind: 'hand'; task: Extract<Task, { kind: 'hand' }>; score: number; verdict: string }
  | { kind: 'advice'; trial: AdviceTrial }
  | { kind: 'cheat'; name: string; verdict: string; counted: boolean; why: string };

const SKILLED = [0.05, 0.1, 0.15, 0.2, 0.25, 0.3];
const NOVICE = [0.9, 1, 1.1, 1.2, 1.4, 1.6];
const SAME_HAND = [0.1, 0.4, 0.8, 1.2, 1.6, 2];
const SAME_HAND_SEEDS = 3;

export function tasks(): Task[] {
  const out: Task[] = [];
  for (const setting of settingNames) {
    faults.forEach((f, fault) => {
      f.levels.forEach((_, level) => {
        // Without a fault chance has nothing to decide: once will do.
        for (const seed of level === 0 ? [1] : f.seeds) out.push({ kind: 'fault', fault, level, setting, seed });
      });
    });
    SKILLED.forEach((amount, i) => {
      out.push({ kind: 'hand', group: 'skilled', hand: i, case: of(setting, amount, 200 + i) });
    });
    NOVICE.forEach((amount, i) => {
      out.push({ kind: 'hand', group: 'novice', hand: i, case: of(setting, amount, 300 + i) });
    });
  }
  SAME_HAND.forEach((amount, hand) => {
    for (let k = 0; k < SAME_HAND_SEEDS; k++)
      out.push({ kind: 'hand', group: 'same hand', hand, case: of('tee', amount, 400 + 10 * hand + k) });
  });
  adviceCases.forEach((_, index) => {
    out.push({ kind: 'advice', index });
  });
  cheats.forEach((_, index) => {
    out.push({ kind: 'cheat', index });
  });
  return out;
}

function of(setting: SettingName, amount: number, seed: number): Case {
  return { setting, faults: handOfAmount(seed, amount), seed };
}

export function work(task: Task): Answer {
  switch (task.kind) {
    case 'fault': {
      const fault = faults[task.fault]!;
      const { result } = weldCase({
        setting: task.setting,
        ...fault.make(task.setting, fault.levels[task.level]!),
        seed: task.seed,
      });
      return { kind: 'fault', task, quantity: fault.read(result), verdict: result.verdict };
    }
    case 'hand': {
      const { result } = weldCase(task.case);
      return { kind: 'hand', task, score: result.score ?? 0, verdict: result.verdict };
    }
    case 'advice':
      return { kind: 'advice', trial: tryAdvice(adviceCases[task.index]!) };
    case 'cheat': {
      const cheat = cheats[task.index]!;
      const { result, counted } = cheat.tried();
      const why = result.reasons[0]?.code ?? result.lines.find((l) => l.verdict !== 'within')?.measure ?? '';
      return { kind: 'cheat', name: cheat.name, verdict: result.verdict, counted, why };
    }
  }
}

import type { Result } from '../../../scoring/index.ts';
import { type AdviceTrial, tryAdvice } from './advice.ts';
import { adviceHands } from './advice-hands.ts';
import { cheats } from './cheats.ts';
import { amountOf, FAULT_TREMOR_MM, faults, HANDS, seedOf } from './faults.ts';
import { type FileCheat, fileCheats } from './file-cheats.ts';
import { type CohortHand, cohorts } from './hands.ts';
import { booksOf, mainSettings, type SettingName, settingNames, weldCase } from './weld.ts';

/** One piece of work for a worker. */
export type Task =
  | { kind: 'steady'; setting: SettingName }
  | { kind: 'fault'; fault: number; hand: number; setting: SettingName }
  | ({ kind: 'hand' } & CohortHand)
  | { kind: 'advice'; index: number }
  | { kind: 'cheat'; index: number }
  | { kind: 'file'; index: number };

/** Largest error of a weld's own accounts of mass and energy, share. */
type Books = { books: number };

export type Answer =
  | ({ kind: 'steady'; setting: SettingName; verdict: string; doubt: string } & Books)
  | ({ kind: 'fault'; task: Extract<Task, { kind: 'fault' }>; quantity: number; verdict: string } & Books)
  | ({ kind: 'hand'; task: Extract<Task, { kind: 'hand' }>; score: number; verdict: string } & Books)
  | ({ kind: 'advice'; trial: AdviceTrial } & Books)
  | ({ kind: 'cheat'; name: string; verdict: string; counted: boolean; why: string } & Books)
  | ({
      kind: 'file';
      name: string;
      shows: FileCheat['shows'];
      verdict: string;
      counted: boolean;
      evidence: readonly string[];
    } & Books);

export function tasks(): Task[] {
  const out: Task[] = [];
  // The longest first, so that no thread is left with one at the end.
  adviceHands.forEach((_, index) => {
    out.push({ kind: 'advice', index });
  });
  cheats.forEach((_, index) => {
    out.push({ kind: 'cheat', index });
  });
  fileCheats.forEach((_, index) => {
    out.push({ kind: 'file', index });
  });
  for (const setting of settingNames) {
    out.push({ kind: 'steady', setting });
  }
  for (const setting of mainSettings) {
    faults.forEach((_, fault) => {
      for (let hand = 0; hand < HANDS; hand++) out.push({ kind: 'fault', fault, hand, setting });
    });
  }
  for (const hand of cohorts(settingNames)) out.push({ kind: 'hand', ...hand });
  return out;
}

export function work(task: Task): Answer {
  switch (task.kind) {
    case 'steady': {
      const { result } = weldCase({ setting: task.setting, seed: 1 });
      const doubt = unsure(result).join(', ');
      return { kind: 'steady', setting: task.setting, verdict: result.verdict, doubt, books: booksOf(result) };
    }
    case 'fault': {
      const fault = faults[task.fault]!;
      const { setting, hand } = task;
      const seed = seedOf(task.fault, hand);
      const { weave = {}, faults: own } = fault.make(setting, amountOf(fault, hand));
      const { result } = weldCase({ setting, weave, faults: { tremor_mm: FAULT_TREMOR_MM, ...own }, seed });
      return { kind: 'fault', task, quantity: fault.read(result), verdict: result.verdict, books: booksOf(result) };
    }
    case 'hand': {
      const { result } = weldCase(task.case);
      return { kind: 'hand', task, score: result.score ?? 0, verdict: result.verdict, books: booksOf(result) };
    }
    case 'advice': {
      const trial = tryAdvice(adviceHands[task.index]!);
      return { kind: 'advice', trial, books: trial.books };
    }
    case 'cheat': {
      const cheat = cheats[task.index]!;
      const { result, counted } = cheat.tried();
      const why = result.reasons[0]?.code ?? unsure(result)[0] ?? '';
      return { kind: 'cheat', name: cheat.name, verdict: result.verdict, counted, why, books: booksOf(result) };
    }
    case 'file': {
      const { name, shows, tried } = fileCheats[task.index]!;
      const { result, counted, evidence } = tried();
      // A file that is refused is never welded.
      const of =
        result === null ? { verdict: 'refused', books: 0 } : { verdict: result.verdict, books: booksOf(result) };
      return { kind: 'file', name, shows, counted, evidence, ...of };
    }
  }
}

/** Measures of the lines that are not within, the ones outside first. */
function unsure(result: Result): string[] {
  const of = (verdict: string): string[] => result.lines.filter((l) => l.verdict === verdict).map((l) => l.measure);
  return [...new Set([...of('outside'), ...of('too close to call')])];
}

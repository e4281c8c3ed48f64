import {
  applyChange,
  type Change,
  type Exercise,
  type ProvedAdvice,
  proveAdvice,
  scoreAttempt,
} from '../../scoring/index.ts';
import { type Case, weldCase } from './weld.ts';

/** Hands with a fault that shows on a line; a little tremor keeps two seeds apart. */
export const adviceCases: readonly Case[] = [
  { setting: 'tee', weave: { tipToWork_mm: 21 }, faults: { tremor_mm: 0.15 }, seed: 11 },
  { setting: 'tee', weave: { width_mm: 1.2 }, faults: { tremor_mm: 0.15 }, seed: 12 },
  { setting: 'tee', faults: { tremor_mm: 0.15, lead_mm: -4 }, seed: 13 },
  { setting: 'tee', weave: { travel_mmps: 3.6 }, faults: { tremor_mm: 0.15 }, seed: 14 },
  { setting: 'thin tee', weave: { pauseA_s: 0 }, faults: { tremor_mm: 0.15 }, seed: 15 },
  { setting: 'thin tee', faults: { tremor_mm: 0.15, lead_mm: -5 }, seed: 16 },
];

export interface AdviceTrial {
  case: string;
  shown: string | null;
  /** Fresh seeds in which the fault was there at all, and in how many of them the shown change mended it. */
  fresh: number;
  mended: number;
  runs: number;
}

const FRESH = 3;

/** Proves advice on one hand, then makes the shown change to the same hand with fresh seeds. */
export function tryAdvice(c: Case): AdviceTrial {
  const { recording, result } = weldCase(c);
  const proved = proveAdvice(recording, result, { enough: 1 });
  let runs = 1 + proved.reruns;
  const advice = proved.advice.find((a) => a.proved);
  const name = `${c.setting}: ${JSON.stringify({ ...c.weave, ...c.faults })}`;
  if (advice === undefined || advice.change === null) return { case: name, shown: null, fresh: 0, mended: 0, runs };
  let fresh = 0;
  let mended = 0;
  for (let k = 1; k <= FRESH; k++) {
    const again = weldCase({ ...c, seed: 100 * c.seed + k });
    runs++;
    if (verdictOf(again.result.lines, advice) === 'within') continue;
    fresh++;
    runs++;
    if (mendedBy(again.recording, advice.change, recording.exercise!, advice)) mended++;
  }
  return {
    case: name,
    shown: `${advice.change.what} ${advice.change.by} for ${advice.fault!.measure}`,
    fresh,
    mended,
    runs,
  };
}

function mendedBy(
  recording: Parameters<typeof applyChange>[0],
  change: Change,
  exercise: Exercise,
  advice: ProvedAdvice,
): boolean {
  const changed = applyChange(recording, change);
  if (changed === null) return false;
  const result = scoreAttempt(changed, { exercise: { ...exercise, process: changed.simulation.process } });
  return verdictOf(result.lines, advice) === 'within';
}

function verdictOf(lines: ReturnType<typeof scoreAttempt>['lines'], advice: ProvedAdvice): string {
  const fault = advice.fault!;
  return lines.find((l) => l.measure === fault.measure && l.side === fault.side)?.verdict ?? 'not read';
}

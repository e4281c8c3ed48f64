import { createRandom, type HandFaults, handOfAmount } from '../../../engine/index.ts';
import { type Case, mainSettings, type SettingName } from './weld.ts';

/** Each fault of a hand is between these shares of what its overall amount gives: no two hands are alike. */
const SHARE = { least: 0.5, most: 1.5 } as const;
/** Spread of each toe's pauses at amount 1, share of the pause. */
const PAUSE_SPREAD = 0.3;

/** A hand of an overall amount, 0 (steady) to 1 (a beginner), with its own mix of faults. The same `hand` is the same mix whatever the seed. */
export function ownHand(hand: number, amount: number, seed: number): HandFaults {
  const random = createRandom(hand);
  const share = (): number => SHARE.least + (SHARE.most - SHARE.least) * random.next();
  const side = (): number => (random.next() < 0.5 ? -1 : 1);
  const all = handOfAmount(seed, amount);
  return {
    seed,
    tremor_mm: all.tremor_mm * share(),
    driftU_mm: all.driftU_mm * share() * side(),
    driftTip_mm: all.driftTip_mm * share(),
    driftTravel_deg: all.driftTravel_deg * share(),
    lag_s: all.lag_s * share(),
    timing: all.timing * share(),
    lead_mm: all.lead_mm * share(),
    pauseSpreadA: PAUSE_SPREAD * amount * share(),
    pauseSpreadB: PAUSE_SPREAD * amount * share(),
  };
}

export interface CohortHand {
  group: 'skilled' | 'novice' | 'same hand';
  hand: number;
  case: Case;
}

const SKILLED = [0.05, 0.08, 0.11, 0.14, 0.17, 0.2, 0.22, 0.25, 0.28, 0.3];
const NOVICE = [0.9, 0.95, 1, 1.05, 1.1, 1.2, 1.3, 1.4, 1.5, 1.6];
const SAME_HAND = [0.1, 0.3, 0.5, 0.8, 1.1, 1.4, 1.7, 2];
const SAME_HAND_SEEDS = 3;
/** Every hand of the cohorts, each a person of its own. */
export function cohorts(names: readonly SettingName[]): CohortHand[] {
  const out: CohortHand[] = [];
  names.forEach((setting, n) => {
    const of = (group: CohortHand['group'], hand: number, amount: number, seed: number): void => {
      out.push({ group, hand, case: { setting, faults: ownHand(hand, amount, seed), seed } });
    };
    SKILLED.forEach((amount, i) => {
      of('skilled', 72000 + 100 * n + i, amount, 7200 + i);
    });
    NOVICE.forEach((amount, i) => {
      of('novice', 73000 + 100 * n + i, amount, 7300 + i);
    });
    if (!mainSettings.some((name) => name === setting)) return;
    SAME_HAND.forEach((amount, i) => {
      for (let k = 0; k < SAME_HAND_SEEDS; k++) of('same hand', 74000 + 100 * n + i, amount, 7400 + 10 * i + k);
    });
  });
  return out;
}

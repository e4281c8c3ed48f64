import { type Accounts, jointHolds_mm2, metalLaid_mm2, type SimulationOptions } from '../../engine/index.ts';
import { type Asked, sizeAsked } from '../schema/exercise.ts';
import type { Result } from '../schema/result.ts';
import { milli } from './precision.ts';

/** EN 1011-1 thermal efficiency of MIG/MAG (Table 1, as published by a steel maker). The arc's measured efficiency is nearer 0.84. */
const HEAT_INPUT_K = 0.8;
/** How heat input is reckoned, as said beside it. */
const HEAT_INPUT_RULE = 'Q = k U I / v with k = 0.8 for MIG/MAG (EN 1011-1); v is the travel over the judged length';

/** What the settings made of it: amps, heat input, metal laid against metal the joint holds, and where the wire went. */
export function processFigures(
  simulation: SimulationOptions,
  accounts: Accounts,
  travel_mmps: number | null,
  asked: Asked | null,
): Result['process'] {
  const burned = accounts.arcTime_s > 0;
  const speed = travel_mmps !== null && Math.abs(travel_mmps) > 0.05 ? Math.abs(travel_mmps) : null;
  return {
    current_A: burned ? Math.round(accounts.meanCurrent_A * 10) / 10 : null,
    voltage_V: burned ? Math.round(accounts.meanVolts_V * 100) / 100 : null,
    heatInput_kJpmm:
      burned && speed !== null
        ? milli((HEAT_INPUT_K * accounts.meanVolts_V * accounts.meanCurrent_A) / speed / 1000)
        : null,
    heatInputRule: HEAT_INPUT_RULE,
    laid_mm2: speed === null ? null : milli(metalLaid_mm2(simulation.process, speed)),
    holds_mm2: asked === null ? null : milli(jointHolds_mm2(simulation.joint, sizeAsked(asked).leg_mm)),
    arcTime_s: milli(accounts.arcTime_s),
    deposited_g: milli(accounts.deposited_g),
    spatter_g: milli(accounts.spatter_g),
    dripped_g: milli(accounts.dripped_g),
  };
}

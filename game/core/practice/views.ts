import type { AdviceCode, HandReading, ProofFault } from '../../../scoring/index.ts';
import type { Drill } from './record.ts';

/** A drill as it stands. */
export interface DrillView {
  drill: Drill;
  /** `ready`: waits for the hand. `running`: the trigger is down. `done`: read. `short`: too short to read. */
  phase: 'ready' | 'running' | 'done' | 'short';
  /** Of the last seconds while running, of the whole when done. */
  readings: HandReading[];
  duration_s: number;
}

export type Level = 1 | 2 | 3;

/** One coupon: a robot hand with one fault, or a machine set wrong under a hand as asked. */
export interface Coupon {
  level: Level;
  exercise: string;
  fault: ProofFault | 'cold';
  /** How much of the fault, 1: as plain as from the next bench. */
  share: number;
  is: AdviceCode;
}

/** A coupon that is to be named. */
export interface NamingView {
  level: Level;
  coupon: Coupon;
  choices: AdviceCode[];
  /** `welding`: on its way. `asked`: it lies there. `told`: named, and said what it was. */
  phase: 'welding' | 'asked' | 'told';
  said: AdviceCode | null;
  /** What the engine's own reading names first; null before it is told. */
  was: AdviceCode | null;
  says: string | null;
}

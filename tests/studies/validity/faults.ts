import { defaultWeave, handOfAmount } from '../../../engine/index.ts';
import type { Result } from '../../../scoring/index.ts';
import { deviation, mean } from './statistics.ts';
import { type Case, type SettingName, settings } from './weld.ts';

/** A fault of the hand in even amounts from none to the most a real hand errs by, and the physical quantity it damages. Larger quantity: worse. */
export interface Fault {
  name: string;
  /** What the amount is. */
  unit: string;
  /** About what a beginner's hand errs by at the booth (common practice, no source). */
  most: number;
  make(setting: SettingName, amount: number): Pick<Case, 'weave' | 'faults'>;
  damages: string;
  read(r: Result): number;
}

type Stations = Result['bead']['stations'];

function top(r: Result): Stations {
  return r.bead.stations.slice(-Math.ceil(r.bead.stations.length / 3));
}

function legScatter(r: Result): number {
  const { stations } = r.bead;
  return deviation(stations.map((s) => s.legA_mm)) + deviation(stations.map((s) => s.legB_mm));
}

/** Hands of each fault in each setting, every one with an amount and chance of its own: no figure is a mean of several. */
export const HANDS = 12;
/** Evenly from none to the most. */
export function amountOf({ most }: Fault, hand: number): number {
  return (most * hand) / (HANDS - 1);
}
export function seedOf(fault: number, hand: number): number {
  return 9001 + 100 * fault + hand;
}
/** What every one of these hands has of tremor, beside its fault. */
export const FAULT_TREMOR_MM = 0.15;

/** What the settings show, mm: the weave's own where nothing else is said. */
const SHOWN_TIP_MM = defaultWeave().tipToWork_mm;

/** The welds are 46 mm long; drifts of the hand are in 100 mm. */
const IN_100 = 100 / 46;

export const faults: readonly Fault[] = [
  {
    name: 'tremor',
    unit: 'mm rms',
    most: 1.2,
    make: (_s, amount) => ({ faults: { tremor_mm: Math.max(FAULT_TREMOR_MM, amount) } }),
    damages: 'scatter of both legs along the weld',
    read: legScatter,
  },
  {
    name: 'drift',
    unit: 'mm sideways at the top',
    most: 3,
    make: (_s, amount) => ({ faults: { driftU_mm: amount * IN_100 } }),
    damages: 'difference of the legs, top third',
    read: (r) => mean(top(r).map((s) => s.legA_mm - s.legB_mm)),
  },
  {
    name: 'uneven pauses',
    unit: 's taken from the right toe (a lap: back) and given to the left',
    most: 0.2,
    make: (s, amount) => ({
      weave: { pauseA_s: settings[s].weave.pauseA_s - amount, pauseB_s: settings[s].weave.pauseB_s + amount },
    }),
    damages: 'difference of the legs',
    read: (r) => mean(r.bead.stations.map((s) => s.legB_mm - s.legA_mm)),
  },
  {
    name: 'ragged pauses at one toe',
    unit: 'spread of the right (a lap: back) pauses, share of the pause',
    // A wait cannot be less than none: beyond about 1 more of the spread is only longer waits.
    most: 1,
    make: (_s, amount) => ({ faults: { pauseSpreadA: amount } }),
    damages: 'scatter of that leg along the weld',
    read: (r) => deviation(r.bead.stations.map((s) => s.legA_mm)),
  },
  {
    name: 'lagging the front',
    unit: 'mm back at the root crossings',
    most: 3,
    make: (_s, amount) => ({ faults: { lead_mm: -amount } }),
    damages: 'root fusion at its worst',
    read: (r) => -(r.bead.worst?.rootFusion_mm ?? -9),
  },
  {
    name: 'slow rhythm',
    unit: 'cycles a second fewer than shown',
    most: 0.5,
    make: (s, amount) => ({ weave: { cyclesPerSecond: settings[s].weave.cyclesPerSecond - amount } }),
    damages: 'ripple: scatter of the throat along the weld',
    read: (r) => deviation(r.bead.stations.map((s) => s.actualThroat_mm)),
  },
  {
    name: 'tip too far',
    unit: 'mm farther out than shown',
    most: 12,
    make: (_s, amount) => ({ weave: { tipToWork_mm: SHOWN_TIP_MM + amount } }),
    damages: 'root fusion, mean',
    read: (r) => -mean(r.bead.stations.map((s) => s.rootFusion_mm)),
  },
  {
    name: 'wrist swing with height',
    unit: '° of push gained at the top, the tip creeping out 1 mm for each 5°',
    most: 25,
    make: (_s, amount) => ({ faults: { driftTravel_deg: amount * IN_100, driftTip_mm: (amount / 5) * IN_100 } }),
    damages: 'root fusion, top third',
    read: (r) => -mean(top(r).map((s) => s.rootFusion_mm)),
  },
  {
    name: 'mixed',
    unit: 'amount, 0 steady to 1 a beginner; beyond 1 in proportion',
    most: 1.5,
    make: (_s, amount) => ({ faults: handOfAmount(1, amount) }),
    damages: 'scatter of both legs along the weld',
    read: legScatter,
  },
];

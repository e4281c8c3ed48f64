import { handOfAmount } from '../../../engine/index.ts';
import type { Result } from '../../../scoring/index.ts';
import { deviation, mean } from './statistics.ts';
import { type Case, type SettingName, settings } from './weld.ts';

/** A fault of the hand in graded amounts, and the physical quantity it damages. Larger quantity: worse. */
export interface Fault {
  name: string;
  /** What the amount is. */
  unit: string;
  levels: readonly number[];
  /** The fault itself is chance: more hands a level. */
  chance?: true;
  make(setting: SettingName, level: number): Pick<Case, 'weave' | 'faults'>;
  damages: string;
  read(r: Result): number;
}

/** Tempo taught is 0.6 to 1.2 cycles a second (common practice, no source). */
const SLOWEST_TAUGHT = 0.6;

type Stations = Result['bead']['stations'];

function top(r: Result): Stations {
  return r.bead.stations.slice(-Math.ceil(r.bead.stations.length / 3));
}

function legScatter(r: Result): number {
  const { stations } = r.bead;
  return deviation(stations.map((s) => s.legA_mm)) + deviation(stations.map((s) => s.legB_mm));
}

/** Hands each level is welded with: no level stands on one weld; all of them where the fault itself is chance, else the first half. */
export const SEEDS = Array.from({ length: 12 }, (_, n) => 8001 + n);
export const FEW = 6;
export function seedsOf(fault: Fault): readonly number[] {
  return fault.chance ? SEEDS : SEEDS.slice(0, FEW);
}
/** What every one of these hands has of tremor, beside its fault. */
export const FAULT_TREMOR_MM = 0.15;

export const faults: readonly Fault[] = [
  {
    name: 'tremor',
    unit: 'mm rms',
    levels: [0, 0.4, 0.8, 1.2, 1.6, 2],
    chance: true,
    make: (_s, level) => ({ faults: { tremor_mm: level } }),
    damages: 'scatter of both legs along the weld',
    read: legScatter,
  },
  {
    name: 'drift',
    unit: 'mm sideways in 100 mm',
    levels: [0, 2, 4, 6, 8],
    make: (_s, level) => ({ faults: { driftU_mm: level } }),
    damages: 'difference of the legs, top third',
    read: (r) => mean(top(r).map((s) => s.legA_mm - s.legB_mm)),
  },
  {
    name: 'uneven pauses',
    unit: 's taken from the right toe (a lap: back) and given to the left',
    // Taught is ±0.12 s: the levels start where the band ends, and end where the shortest pause is gone.
    levels: [0, 0.12, 0.14, 0.17, 0.2],
    make: (s, level) => ({
      weave: { pauseA_s: settings[s].weave.pauseA_s - level, pauseB_s: settings[s].weave.pauseB_s + level },
    }),
    damages: 'difference of the legs',
    read: (r) => mean(r.bead.stations.map((s) => s.legB_mm - s.legA_mm)),
  },
  {
    name: 'ragged pauses at one toe',
    unit: 'spread of the right (a lap: back) pauses, share of the pause',
    // A wait cannot be less than none: beyond about 1 more of the spread is only longer waits.
    levels: [0, 0.3, 0.6, 0.9, 1.2],
    chance: true,
    make: (_s, level) => ({ faults: { pauseSpreadA: level } }),
    damages: 'scatter of that leg along the weld',
    read: (r) => deviation(r.bead.stations.map((s) => s.legA_mm)),
  },
  {
    name: 'lagging the front',
    unit: 'mm back at the root crossings',
    // The band of every exercise ends at about 3 mm back: the levels start there.
    levels: [0, 3, 4, 5, 6, 7],
    make: (_s, level) => ({ faults: { lead_mm: -level } }),
    damages: 'root fusion at its worst',
    read: (r) => -(r.bead.worst?.rootFusion_mm ?? -9),
  },
  {
    name: 'wrong rhythm',
    unit: 'cycles a second under the taught 0.6; 0: as shown',
    levels: [0, 0.05, 0.1, 0.2, 0.3],
    make: (s, level) => ({
      weave: { cyclesPerSecond: level === 0 ? settings[s].weave.cyclesPerSecond : SLOWEST_TAUGHT - level },
    }),
    damages: 'ripple: scatter of the throat along the weld',
    read: (r) => deviation(r.bead.stations.map((s) => s.actualThroat_mm)),
  },
  {
    name: 'wandering tip',
    unit: 'mm farther out in 100 mm',
    levels: [0, 9, 18, 27, 36],
    make: (_s, level) => ({ faults: { driftTip_mm: level } }),
    damages: 'root fusion, top third',
    read: (r) => -mean(top(r).map((s) => s.rootFusion_mm)),
  },
  {
    name: 'wrist swing with height',
    unit: '° of push in 100 mm, tip creeping out 1 mm for each 5°',
    levels: [0, 20, 40, 60, 80],
    make: (_s, level) => ({ faults: { driftTravel_deg: level, driftTip_mm: level / 5 } }),
    damages: 'root fusion, top third',
    read: (r) => -mean(top(r).map((s) => s.rootFusion_mm)),
  },
  {
    name: 'mixed',
    unit: 'amount, 0 steady to 1 a beginner; beyond 1 in proportion',
    levels: [0, 0.5, 1, 1.5, 2, 2.5],
    chance: true,
    make: (_s, level) => ({ faults: handOfAmount(1, level) }),
    damages: 'scatter of both legs along the weld',
    read: legScatter,
  },
];

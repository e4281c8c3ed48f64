import type { HandFaults, WeaveOptions } from '../../../engine/index.ts';
import { type Case, mainSettings, type SettingName, settings } from './weld.ts';

type Weave = (typeof settings)[SettingName]['weave'] & { workAngle_deg?: number };

interface OneFault {
  name: string;
  make(weave: Weave): { weave?: Partial<WeaveOptions>; faults?: Partial<HandFaults> };
}

/**
 * One fault each, the same amount in every setting: what goes wrong first at the booth (common practice, no source). Every one is tried in both
 * main settings, and asked about wherever it comes out outside: none was chosen by what the advice made of it.
 */
const oneFault: readonly OneFault[] = [
  { name: 'tip 21 mm from the work', make: () => ({ weave: { tipToWork_mm: 21 } }) },
  { name: 'arc 5 mm back at the root crossings', make: () => ({ faults: { lead_mm: -5 } }) },
  { name: 'weave a third as wide', make: (w) => ({ weave: { width_mm: tenths(0.3 * w.width_mm) } }) },
  { name: 'weave 4 mm wider', make: (w) => ({ weave: { width_mm: w.width_mm + 4 } }) },
  { name: 'climbs 1.6 times as fast', make: (w) => ({ weave: { travel_mmps: tenths(1.6 * w.travel_mmps) } }) },
  { name: 'climbs 0.6 times as fast', make: (w) => ({ weave: { travel_mmps: tenths(0.6 * w.travel_mmps) } }) },
  { name: 'no wait at the right toe (a lap: back)', make: () => ({ weave: { pauseA_s: 0 } }) },
  { name: 'no wait at the left toe (a lap: edge)', make: () => ({ weave: { pauseB_s: 0 } }) },
  { name: 'no wait at either toe', make: () => ({ weave: { pauseA_s: 0, pauseB_s: 0 } }) },
  { name: 'torch 20° too far up', make: (w) => ({ weave: { workAngle_deg: (w.workAngle_deg ?? 45) + 20 } }) },
  { name: 'torch 20° too far down', make: (w) => ({ weave: { workAngle_deg: (w.workAngle_deg ?? 45) - 20 } }) },
  { name: 'torch dragged 15°', make: () => ({ weave: { travelAngle_deg: -15 } }) },
  { name: 'torch pushed 35°', make: () => ({ weave: { travelAngle_deg: 35 } }) },
  { name: 'beat of 0.4 a second', make: () => ({ weave: { cyclesPerSecond: 0.4 } }) },
  { name: 'drift of 8 mm in 100 mm', make: () => ({ faults: { driftU_mm: 8 } }) },
  { name: 'wrist swings 60° in 100 mm', make: () => ({ faults: { driftTravel_deg: 60, driftTip_mm: 12 } }) },
  { name: 'tremor of 1.2 mm', make: () => ({ faults: { tremor_mm: 1.2 } }) },
  { name: 'cycles uneven by half', make: () => ({ faults: { timing: 0.5 } }) },
  { name: 'right pauses (a lap: back) uneven by 1.2', make: () => ({ faults: { pauseSpreadA: 1.2 } }) },
];

/** What every hand has of tremor: it keeps two seeds apart. */
const TREMOR_MM = 0.15;

const FIRST_SEED = 7010;

export interface AdviceHand {
  name: string;
  case: Case;
}

export const adviceHands: readonly AdviceHand[] = mainSettings.flatMap((setting, n) =>
  oneFault.map(({ name, make }, i): AdviceHand => {
    const { weave = {}, faults = {} } = make(settings[setting].weave);
    const seed = FIRST_SEED + 100 * n + i;
    return { name, case: { setting, weave, faults: { tremor_mm: TREMOR_MM, ...faults }, seed } };
  }),
);

function tenths(x: number): number {
  return Math.round(10 * x) / 10;
}

/** The half of the set that advice may be made on. */
import {
  arcLost,
  aside,
  fits,
  giveUp,
  held,
  hurried,
  jump,
  restartAbove,
  restartOnCold,
  skipToe,
  slip,
  stall,
} from './hands.ts';
import type { BenchName, Labelled } from './set.ts';

const each = (
  make: (bench: BenchName) => Omit<Labelled, 'bench'>,
  benches: BenchName[] = ['tee', 'thin', 'lap'],
): Labelled[] => benches.map((bench) => ({ bench, ...make(bench) }));

export const MADE_ON: readonly Labelled[] = [
  ...each(() => ({ name: 'crosses the root 3 mm lower', faults: { lead_mm: -3 }, truth: ['arc back in the puddle'] })),
  ...each(() => ({ name: 'tip 9 mm farther', change: held({ tip_mm: 9 }), truth: ['tip too far'] })),
  ...each(() => ({ name: 'push 20° more', change: held({ push_deg: 20 }), truth: ['pushed too far'] }), ['tee', 'lap']),
  ...each(() => ({ name: 'dragged 20° instead', change: held({ push_deg: -24 }), truth: ['dragged'] }), ['tee', 'lap']),
  ...each(
    () => ({ name: 'work angle 18° up', change: held({ work_deg: 18 }), truth: ['work angle off'] }),
    ['tee', 'lap'],
  ),
  ...each(() => ({
    name: 'weave at 0.45 of its width',
    weave: (w) => ({ width_mm: 0.45 * w.width_mm }),
    truth: ['too narrow'],
  })),
  ...each(() => ({ name: 'weave 3 mm wider', weave: (w) => ({ width_mm: w.width_mm + 3 }), truth: ['too wide'] })),
  ...each(() => ({ name: '2 mm to the right', change: aside(2), mouse: true, truth: ['to one side'] }), ['tee', 'lap']),
  ...each(
    () => ({ name: 'drifts 6 mm in 100', faults: { driftU_mm: 6 }, mouse: true, truth: ['drifting to one side'] }),
    ['tee'],
  ),
  ...each(
    () => ({
      name: 'right toe skipped from 35 to 52',
      change: skipToe(1, 35, 52),
      mouse: true,
      truth: ['a toe skipped'],
    }),
    ['tee', 'thin'],
  ),
  ...each(() => ({ name: 'no wait right', weave: () => ({ pauseA_s: 0 }), truth: ['no wait at the right toe'] })),
  ...each(
    () => ({ name: 'no wait left', weave: () => ({ pauseB_s: 0 }), mouse: true, truth: ['no wait at the left toe'] }),
    ['tee', 'thin'],
  ),
  ...each(() => ({ name: 'no waits', weave: () => ({ pauseA_s: 0, pauseB_s: 0 }), truth: ['no wait at either toe'] })),
  ...each(
    () => ({
      name: 'waits double',
      weave: (w) => ({
        pauseA_s: 2.2 * w.pauseA_s,
        pauseB_s: 2.2 * w.pauseB_s,
        cyclesPerSecond: 0.6 * w.cyclesPerSecond,
      }),
      truth: ['waits too long', 'beat too slow'],
    }),
    ['tee'],
  ),
  ...each(
    () => ({ name: 'beat of 0.4', weave: () => ({ cyclesPerSecond: 0.4 }), mouse: true, truth: ['beat too slow'] }),
    ['tee', 'lap'],
  ),
  ...each(
    () => ({
      name: 'beat of 2',
      weave: () => ({ cyclesPerSecond: 2, pauseA_s: 0.05, pauseB_s: 0.05 }),
      truth: ['beat too fast', 'no wait at either toe'],
    }),
    ['tee', 'thin'],
  ),
  ...each(() => ({
    name: 'climbs 1.55 times',
    weave: (w) => ({ travel_mmps: 1.55 * w.travel_mmps }),
    mouse: true,
    truth: ['climbs too fast'],
  })),
  ...each(() => ({
    name: 'climbs 0.6 times',
    weave: (w) => ({ travel_mmps: 0.6 * w.travel_mmps }),
    truth: ['climbs too slowly'],
  })),
  ...each(
    () => ({ name: 'stalls 4 s at 45', change: stall(45, 4, 1.1), mouse: true, truth: ['stalls'] }),
    ['tee', 'lap'],
  ),
  ...each(() => ({ name: 'jumps 7 mm at 48', change: jump(48, 7), mouse: true, truth: ['jumps'] }), ['tee', 'lap']),
  ...each(() => ({ name: 'slips 6 mm right at 50', change: slip(50, 6, 0.8), mouse: true, truth: ['slips'] }), ['tee']),
  ...each(
    () => ({ name: 'in steps of 5 mm', change: fits(5), mouse: true, truth: ['fits and starts'] }),
    ['tee', 'lap'],
  ),
  ...each(() => ({ name: 'cycles uneven by 0.45', faults: { timing: 0.45 }, truth: ['uneven beat'] }), ['tee']),
  ...each(() => ({ name: 'tremor 1.3 mm', faults: { tremor_mm: 1.3 }, mouse: true, truth: ['shaky'] }), ['tee', 'lap']),
  ...each(
    () => ({ name: 'arc out 1.2 s at 50', change: arcLost(50, 1.2), mouse: true, truth: ['arc lost'] }),
    ['tee', 'thin'],
  ),
  ...each(
    () => ({ name: 'restart 6 above', change: restartAbove(50, 6), truth: ['restart not taken back'] }),
    ['tee', 'lap'],
  ),
  ...each(
    () => ({ name: 'restart on the cold crater', change: restartOnCold(50), truth: ['restart on the cold crater'] }),
    ['tee'],
  ),
  ...each(() => ({ name: 'gives up at 60', change: giveUp(60), mouse: true, truth: ['gives up early'] }), ['tee']),
  ...each(
    () => ({
      name: '3 V and 1.2 m/min lower',
      process: (p) => ({ volts_V: p.volts_V - 3, feed_mpmin: p.feed_mpmin - 1.2 }),
      truth: ['settings too cold'],
    }),
    ['tee', 'lap'],
  ),
  ...each(
    () => ({
      name: '2.5 V and 1.6 m/min higher',
      process: (p) => ({ volts_V: p.volts_V + 2.5, feed_mpmin: p.feed_mpmin + 1.6 }),
      truth: ['settings too hot', 'too much wire'],
    }),
    ['tee', 'lap'],
  ),
  ...each(
    () => ({
      name: '1.8 m/min more wire',
      process: (p) => ({ feed_mpmin: p.feed_mpmin + 1.8 }),
      truth: ['too much wire'],
    }),
    ['tee'],
  ),
  ...each(
    () => ({
      name: 'hurries everything 1.5 times',
      change: hurried(1.5),
      mouse: true,
      truth: ['climbs too fast', 'no wait at either toe'],
    }),
    ['tee'],
  ),
  ...each(
    () => ({
      name: 'far tip and arc back',
      change: held({ tip_mm: 8 }),
      faults: { lead_mm: -2.5 },
      truth: ['tip too far', 'arc back in the puddle'],
    }),
    ['tee', 'lap'],
  ),
  ...each(
    () => ({
      name: 'narrow and slow',
      weave: (w) => ({ width_mm: 0.5 * w.width_mm, travel_mmps: 0.7 * w.travel_mmps }),
      truth: ['too narrow', 'climbs too slowly'],
    }),
    ['tee'],
  ),
];

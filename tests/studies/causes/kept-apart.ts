/**
 * The half of the set kept apart: written before the rules of advice were, and not looked at while they are made. Other amounts, places,
 * sides and pairs than the half they are made on. Look at the totals only; a rule mended on one of these makes it useless.
 */
import {
  arcLost,
  aside,
  downhill,
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

const each = (benches: string, make: Omit<Labelled, 'bench'>): Labelled[] =>
  benches.split(' ').map((bench) => ({ bench: bench as BenchName, ...make }));

export const KEPT_APART: readonly Labelled[] = [
  ...each('tee thin lap', {
    name: 'crosses the root 2.2 mm lower',
    faults: { lead_mm: -2.2 },
    mouse: true,
    truth: ['arc back in the puddle'],
  }),
  ...each('tee lap', {
    name: 'crosses the root 4 mm lower',
    faults: { lead_mm: -4 },
    truth: ['arc back in the puddle'],
  }),
  ...each('tee thin lap', { name: 'tip 7 mm farther', change: held({ tip_mm: 7 }), truth: ['tip too far'] }),
  ...each('tee lap', {
    name: 'tip 11 mm farther from half way',
    change: held({ tip_mm: 11 }, 40),
    truth: ['tip too far'],
  }),
  ...each('thin lap', { name: 'push 24° more', change: held({ push_deg: 24 }), truth: ['pushed too far'] }),
  ...each('thin tee', { name: 'drag of 14°', change: held({ push_deg: -22 }), truth: ['dragged'] }),
  ...each('tee thin', { name: 'work angle 17° down', change: held({ work_deg: -17 }), truth: ['work angle off'] }),
  ...each('tee thin lap', {
    name: 'weave at half its width',
    weave: (w) => ({ width_mm: 0.5 * w.width_mm }),
    mouse: true,
    truth: ['too narrow'],
  }),
  ...each('tee thin lap', {
    name: 'weave 2.5 mm wider',
    weave: (w) => ({ width_mm: w.width_mm + 2.5 }),
    mouse: true,
    truth: ['too wide'],
  }),
  ...each('tee thin', { name: '1.8 mm to the left', change: aside(-1.8), truth: ['to one side'] }),
  ...each('lap', { name: '1.8 mm to the edge', change: aside(-1.8), mouse: true, truth: ['to one side'] }),
  ...each('tee thin', { name: 'drifts 7 mm left in 100', faults: { driftU_mm: -7 }, truth: ['drifting to one side'] }),
  ...each('tee lap', {
    name: 'left toe skipped from 45 to 65',
    change: skipToe(-1, 45, 65),
    mouse: true,
    truth: ['a toe skipped'],
  }),
  ...each('thin', {
    name: 'right toe reached half over 30 to 60',
    change: skipToe(1, 30, 60, 0.6),
    truth: ['a toe skipped'],
  }),
  ...each('tee lap', {
    name: 'right wait of 0.04',
    weave: () => ({ pauseA_s: 0.04 }),
    mouse: true,
    truth: ['no wait at the right toe'],
  }),
  ...each('tee thin', {
    name: 'left wait of 0.04',
    weave: () => ({ pauseB_s: 0.04 }),
    truth: ['no wait at the left toe'],
  }),
  ...each('tee thin lap', {
    name: 'waits of 0.03',
    weave: () => ({ pauseA_s: 0.03, pauseB_s: 0.03 }),
    mouse: true,
    truth: ['no wait at either toe'],
  }),
  ...each('tee thin', { name: 'beat of 0.35', weave: () => ({ cyclesPerSecond: 0.35 }), truth: ['beat too slow'] }),
  ...each('tee lap', {
    name: 'beat of 1.9',
    weave: () => ({ cyclesPerSecond: 1.9, pauseA_s: 0.06, pauseB_s: 0.06 }),
    mouse: true,
    truth: ['beat too fast', 'no wait at either toe'],
  }),
  ...each('tee thin lap', {
    name: 'climbs 1.7 times',
    weave: (w) => ({ travel_mmps: 1.7 * w.travel_mmps }),
    truth: ['climbs too fast'],
  }),
  ...each('tee thin lap', {
    name: 'climbs 0.55 times',
    weave: (w) => ({ travel_mmps: 0.55 * w.travel_mmps }),
    mouse: true,
    truth: ['climbs too slowly'],
  }),
  ...each('thin tee', { name: 'stalls 3 s at 55', change: stall(55, 3, 1), truth: ['stalls'] }),
  ...each('thin lap', { name: 'jumps 9 mm at 40', change: jump(40, 9), truth: ['jumps'] }),
  ...each('thin lap', { name: 'slips 7 mm left at 45', change: slip(45, -7, 1), mouse: true, truth: ['slips'] }),
  ...each('thin tee', { name: 'in steps of 6 mm', change: fits(6), truth: ['fits and starts'] }),
  ...each('tee lap', { name: 'cycles uneven by 0.55', faults: { timing: 0.55 }, mouse: true, truth: ['uneven beat'] }),
  ...each('thin', { name: 'tremor 1.5 mm', faults: { tremor_mm: 1.5 }, truth: ['shaky'] }),
  ...each('lap', { name: 'arc out 1.5 s at 45', change: arcLost(45, 1.5), truth: ['arc lost'] }),
  ...each('tee', { name: 'arc out twice', change: [arcLost(40, 1), arcLost(60, 1)], mouse: true, truth: ['arc lost'] }),
  ...each('thin', {
    name: 'restart 8 above',
    change: restartAbove(45, 8),
    mouse: true,
    truth: ['restart not taken back'],
  }),
  ...each('lap', {
    name: 'restart on the cold crater',
    change: restartOnCold(45),
    truth: ['restart on the cold crater'],
  }),
  ...each('lap', { name: 'gives up at 55', change: giveUp(55), truth: ['gives up early'] }),
  ...each('thin', { name: 'from the top down', change: downhill(90), truth: ['downhill'] }),
  ...each('tee thin lap', {
    name: '2.5 V and 1 m/min lower',
    process: (p) => ({ volts_V: p.volts_V - 2.5, feed_mpmin: p.feed_mpmin - 1 }),
    mouse: true,
    truth: ['settings too cold'],
  }),
  ...each('tee thin', {
    name: '2 V and 1.8 m/min higher',
    process: (p) => ({ volts_V: p.volts_V + 2, feed_mpmin: p.feed_mpmin + 1.8 }),
    truth: ['settings too hot', 'too much wire'],
  }),
  ...each('lap', {
    name: '2 m/min more wire',
    process: (p) => ({ feed_mpmin: p.feed_mpmin + 2 }),
    truth: ['too much wire'],
  }),
  ...each('tee', {
    name: '1.6 m/min less wire',
    process: (p) => ({ feed_mpmin: p.feed_mpmin - 1.6 }),
    truth: ['too little wire'],
  }),
  ...each('tee', {
    name: 'gap of 2 mm, climbed as without',
    joint: () => ({ gap_mm: 2 }),
    truth: ['a gap not allowed for'],
  }),
  ...each('lap', {
    name: 'hurries everything 1.6 times from half way',
    change: hurried(1.6, 45),
    truth: ['climbs too fast', 'no wait at either toe'],
  }),
  ...each('tee', {
    name: 'wide and fast',
    weave: (w) => ({ width_mm: w.width_mm + 2.5, travel_mmps: 1.5 * w.travel_mmps }),
    truth: ['too wide', 'climbs too fast'],
  }),
  ...each('lap', {
    name: 'arc back and no back wait',
    faults: { lead_mm: -3 },
    weave: () => ({ pauseA_s: 0.03 }),
    truth: ['arc back in the puddle', 'no wait at the right toe'],
  }),
  ...each('thin', {
    name: 'far tip and aside',
    change: [held({ tip_mm: 9 }), aside(1.8)],
    truth: ['tip too far', 'to one side'],
  }),
  ...each('tee', {
    name: 'slow and wide',
    weave: (w) => ({ width_mm: w.width_mm + 2.5, travel_mmps: 0.6 * w.travel_mmps }),
    mouse: true,
    truth: ['climbs too slowly', 'too wide'],
  }),
];

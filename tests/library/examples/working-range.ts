// A working range (study) over three wire feeds: same machine, same weave, welded by the robot hand.
import { middleSentences, type RangePlan, rangeRows, workingRange } from 'toehold/scoring';

const plan: RangePlan = {
  base: {
    joint: { kind: 'tee', plateA_mm: 5, plateB_mm: 5, length_mm: 32 },
    process: { wire_mm: 0.9, gas: 'M21-ArC-18' },
    weave: { width_mm: 5, start_mm: 2, length_mm: 28 },
    leg_mm: 5,
    profile: 'aws-d11-static-si',
  },
  values: { feed_mpmin: [2.6, 5, 7], volts_V: [19], travel_mmps: [2], tipToWork_mm: [12] },
  patterns: ['inverted-v'],
  handAmounts: [0],
  seeds: [1],
  cell_mm: 0.75,
};

export const map = workingRange(plan);

for (const row of rangeRows(map)) console.log(row);
for (const sentence of middleSentences(map)) console.log(sentence);

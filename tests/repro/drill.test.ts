import { expect, it } from 'vitest';
import { exerciseNamed } from '../../scoring/index.ts';
import { drillFor } from '../../scoring/trials/candidates.ts';
import { judge, weld } from '../scoring/welds.ts';

const exercise = exerciseNamed('tee-inverted-v')!;
const { motion } = judge(weld({ joint: { length_mm: 30 }, weave: { length_mm: 16 } }));
const short = { measure: 'root fusion', side: null, sense: 'at least' } as Parameters<typeof drillFor>[0];
const { from, to } = exercise.target.travel_mmps;

it('a root left short by a hand that climbs too fast is no matter of setting by ear', () => {
  const front = { ...motion, lead_mm: exercise.target.lead_mm.from + 0.1 };
  expect(drillFor(short, exercise, { ...front, travel_mmps: to + 1 }).name).toBe('straight-run');
  expect(drillFor(short, exercise, { ...front, travel_mmps: (from + to) / 2 }).name).toBe('settings-by-ear');
});

it('one exercise back is one of the hand, not of the knobs', () => {
  const back = { ...motion, lead_mm: exercise.target.lead_mm.from - 1 };
  expect(drillFor(short, exercise, back).name).toBe('two-toe-pause');
});

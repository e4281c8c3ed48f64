import { describe, expect, it } from 'vitest';
import { checkOptions } from '../../../../engine/index.ts';
import { editExercise, legOf, metalBalance, simulationOf } from '../../../../game/core/session/setup.ts';
import { exerciseNamed, exercises, FREE_NAME } from '../../../../scoring/index.ts';

const vee = exercises.find((e) => e.name === 'tee-inverted-v') ?? exercises[0];

describe('setup', () => {
  it('has at least eight ready exercises the engine can weld', () => {
    expect(exercises.length).toBeGreaterThanOrEqual(8);
    for (const e of exercises) expect(checkOptions(simulationOf(e))).toEqual([]);
  });

  it('makes an own exercise of a changed joint, size, travel or hold', () => {
    for (const edit of [
      { joint: { plateA_mm: 8 } },
      { size_mm: 5 },
      { travel_mmps: 3 },
      { hold: { tipToWork_mm: 18 } },
      { process: { volts_V: 19 } },
    ])
      expect(editExercise(vee, edit).name).toBe(FREE_NAME);
    expect(editExercise(vee, { hold: { tipToWork_mm: 18 } }).hold.tipToWork_mm).toBe(18);
    expect(legOf(editExercise(vee, { size_mm: 5 }))).toBe(5);
  });

  it('leaves the exercise its name where the machine is the trainee’s to set', () => {
    const byEar = exerciseNamed('settings-by-ear');
    expect(byEar && editExercise(byEar, { process: { volts_V: 18 } }).name).toBe('settings-by-ear');
    expect(byEar && editExercise(byEar, { joint: { gap_mm: 1 } }).name).toBe(FREE_NAME);
  });

  it('weighs metal laid against metal held', () => {
    const slow = metalBalance(editExercise(vee, { travel_mmps: 1.5 }));
    const fast = metalBalance(editExercise(vee, { travel_mmps: 3 }));
    expect(slow.laid_mm2).toBeCloseTo(2 * fast.laid_mm2, 6);
    expect(slow.holds_mm2).toBeCloseTo(legOf(vee) ** 2 / 2, 6);
  });

  it('says of no ready exercise that its own metal is short or over what it asks', () => {
    // Flat right-angled fillet: z²/2 (geometry). A lap's edge and a gap have their own; the numbers are the engine's.
    for (const e of exercises.filter((x) => x.settings === 'fixed' && x.asked.atMost_mm !== null))
      expect(`${e.name}: ${metalBalance(e).stands}`).toMatch(/within|even/);
  });

  it('calls metal over only beyond the largest size allowed', () => {
    const asked = { kind: 'leg', size_mm: 4, atMost_mm: 6, edgeBack_mm: null } as const;
    const at = (travel_mmps: number): string =>
      metalBalance({ ...vee, asked, demonstration: { ...vee.demonstration, travel_mmps } }).stands;
    const { laid_mm2 } = metalBalance(vee);
    // Travel at which 8, 12, 18.5 and 6 mm² are laid: 8 is z = 4, 18 is z = 6.
    const travelFor = (mm2: number): number => (vee.demonstration.travel_mmps * laid_mm2) / mm2;
    expect([8, 12, 18.5, 6].map((mm2) => at(travelFor(mm2)))).toEqual(['even', 'within', 'over', 'short']);
  });

  it('refuses an exercise that cannot be', () => {
    expect(() => editExercise(vee, { size_mm: 40 })).toThrow(/size_mm/);
  });
});

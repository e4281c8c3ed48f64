/** Two techniques on one coupon: a half in each, or a side in each. */
import { describe, expect, it } from 'vitest';
import { defaultWeave, type Pose } from '../../engine/index.ts';
import { twoTechniques } from '../../scoring/index.ts';
import { weld } from './welds.ts';

/** A run that waits at the toes up to the middle, and goes straight from there on. */
const halfAndHalf = (poses: Pose[]): Pose[] => poses.map((p) => (p.y_mm > 34 ? { ...p, u_mm: 0 } : p));
const weave = { ...defaultWeave(), width_mm: 6, pauseA_s: 0.3, pauseB_s: 0.3, start_mm: 2 };

describe('lower and upper half', () => {
  const recording = weld({ joint: { length_mm: 58 }, weave: { ...weave, length_mm: 54 }, hand: halfAndHalf });
  const both = twoTechniques({ how: 'halves', recording });
  const row = (what: string) => both.rows.find((r) => r.what === what)!;

  it('are read each for itself, the change left out, and told apart by bead and hand', () => {
    expect(both.names).toEqual(['lower half', 'upper half']);
    expect(both.lengths).toEqual(['19 to 28.5 mm', '38.5 to 48 mm']);
    expect(row('width').first).toBeGreaterThan(4);
    expect(row('width').second).toBeNull();
    const throat = row('throat');
    expect(throat.difference).toBeCloseTo(throat.second! - throat.first!, 1);
    // What goes into two legs of a weave goes into the crown of a straight run (common practice, no source).
    expect(row('convexity').difference).toBeGreaterThan(0);
    expect(row('convexity').differs).toBe(true);
    expect(both.says).toContain('convexity');
  });

  it('are sawn through both and laid over each other', () => {
    expect(both.cuts.map((c) => c.y_mm)).toEqual([24, 43]);
    expect(both.over).toContain('lower half, cut at 24 mm');
    expect(both.over).toContain('url(#faces-hatch)');
  });

  it('need room on either side of the change', () => {
    expect(() => twoTechniques({ how: 'halves', recording, at_mm: 22 })).toThrow(
      /change: found 22, allowed: a height with 8 mm/,
    );
  });

  it('of plates of another make are no two sides of one joint', () => {
    const other = {
      ...recording,
      simulation: { ...recording.simulation, joint: { ...recording.simulation.joint, plateA_mm: 8 } },
    };
    expect(() => twoTechniques({ how: 'sides', first: recording, second: other })).toThrow(
      /joint.plateA_mm: found 8, allowed: 6/,
    );
  });
});

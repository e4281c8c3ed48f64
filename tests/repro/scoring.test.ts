import { describe, expect, it } from 'vitest';
import { wayOf } from '../../scoring/measures/hand/passes.ts';
import { makeTrace } from '../scoring/measures/traces.ts';

describe('the way of the torch', () => {
  const judged = { from_mm: 22, to_mm: 80 };
  const climb = (seconds: number, mmps: number) => makeTrace({ seconds, u: () => 0, y: (t) => mmps * t });

  it('is up for an arc that stopped a quarter of the way into the judged length', () => {
    expect(wayOf(climb(17.3, 2.2), judged, [])).toBe('up');
    expect(wayOf(climb(30, 1), judged, [])).toBe('up');
  });

  it('is nowhere for an arc that moves about a place', () => {
    const about = makeTrace({ seconds: 20, u: () => 0, y: (t) => 30 + 4 * Math.sin(t) });
    expect(wayOf(about, judged, [])).toBe('nowhere');
  });
});

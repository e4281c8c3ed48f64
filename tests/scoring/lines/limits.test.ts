import { describe, expect, it } from 'vitest';
import { profileNamed } from '../../../scoring/index.ts';
import { type Basis, compare, limitValue } from '../../../scoring/lines/limit.ts';
import type { RuleMeasure } from '../../../scoring/schema/profile.ts';

function limit(profile: string, measure: RuleMeasure, basis: Partial<Basis>): number | null {
  const plate = basis.plate ?? 6;
  const rule = profileNamed(profile)!.rules.find(
    (r) => r.measure === measure && plate > r.plates.over && (r.plates.upTo === null || plate <= r.plates.upTo),
  );
  return rule === undefined ? null : limitValue(rule.limit, { plate, throat: 0, face: 0, leg: 0, ...basis });
}

/** ISO 5817:2014 worked for t 6, z 6 (a 4.24, b 8.485) by hand from its table. */
describe('ISO 5817 worked limits', () => {
  const basis = { plate: 6, throat: 6 / Math.SQRT2, face: 8.485 };
  it.each([
    { measure: 'undercut', D: 1.0, C: 0.5, B: 0.3 },
    { measure: 'convexity', D: 3.12, C: 2.27, B: 1.85 },
    { measure: 'unequal legs', D: 2.85, C: 2.64, B: 2.14 },
    { measure: 'throat short', D: 0.72, C: 0.72, B: 0 },
    { measure: 'throat over', D: null, C: 1.85, B: 1.64 },
    { measure: 'toe angle', D: 90, C: 100, B: 110 },
  ] as const)('$measure', ({ measure, ...levels }) => {
    for (const level of ['D', 'C', 'B'] as const) {
      const want = levels[level];
      const got = limit(`iso-5817-${level.toLowerCase()}`, measure, basis);
      if (want === null) expect(got).toBeNull();
      else expect(Math.abs(got! - want)).toBeLessThan(0.006);
    }
  });

  it('halves its thin-plate rows at 3 mm: 5011 and 5213 change there', () => {
    expect(limit('iso-5817-b', 'undercut', { plate: 3 })).toBe(0);
    expect(limit('iso-5817-b', 'undercut', { plate: 3.2 })).toBeCloseTo(0.16, 6);
    expect(limit('iso-5817-c', 'throat short', { plate: 3, throat: 3 })).toBeCloseTo(0.2, 6);
    expect(limit('iso-5817-c', 'throat short', { plate: 4, throat: 3 })).toBeCloseTo(0.6, 6);
  });

  it('mixes B and C as ISO 15614-1 level 2 does', () => {
    const mix = 'iso-15614-1-level-2';
    expect(limit(mix, 'convexity', basis)).toBe(limit('iso-5817-c', 'convexity', basis));
    expect(limit(mix, 'undercut', basis)).toBe(limit('iso-5817-c', 'undercut', basis));
    expect(limit(mix, 'throat over', basis)).toBe(limit('iso-5817-c', 'throat over', basis));
    expect(limit(mix, 'unequal legs', basis)).toBe(limit('iso-5817-b', 'unequal legs', basis));
    expect(limit(mix, 'throat short', basis)).toBe(limit('iso-5817-b', 'throat short', basis));
  });
});

/** AWS D1.1 Table 5.10 (2020: 7.9), from memory; Table 6.1(6) and (7) of the 2004 edition, as published. */
describe('AWS D1.1 tables', () => {
  it('limit convexity by width of face, SI', () => {
    const at = (face: number) => limit('aws-d11-static-si', 'convexity', { face });
    expect([at(5), at(8), at(8.001), at(24.9), at(25), at(40)]).toEqual([2, 2, 3, 3, 5, 5]);
  });

  it('limit convexity by width of face, inch', () => {
    const at = (face: number) => limit('aws-d11-static-inch', 'convexity', { face, plate: 0.25 });
    expect([at(0.2), at(0.3125), at(0.313), at(0.99), at(1), at(2)]).toEqual([
      1 / 16,
      1 / 16,
      1 / 8,
      1 / 8,
      3 / 16,
      3 / 16,
    ]);
  });

  it('limit undersize by nominal leg', () => {
    const si = (leg: number) => limit('aws-d11-static-si', 'leg short', { leg });
    expect([si(5), si(6), si(8)]).toEqual([2, 2.5, 3]);
    const inch = (leg: number) => limit('aws-d11-static-inch', 'leg short', { leg, plate: 0.25 });
    expect([inch(3 / 16), inch(1 / 4), inch(5 / 16)]).toEqual([1 / 16, 3 / 32, 1 / 8]);
  });

  it('limit undercut: 1 mm and 1/32 in static, 0.25 mm and 0.01 in cyclic', () => {
    expect(limit('aws-d11-static-si', 'undercut', {})).toBe(1);
    expect(limit('aws-d11-static-inch', 'undercut', { plate: 0.25 })).toBe(1 / 32);
    expect(limit('aws-d11-cyclic-si', 'undercut', {})).toBe(0.25);
    expect(limit('aws-d11-cyclic-inch', 'undercut', { plate: 0.25 })).toBe(0.01);
  });

  it('are two tables: no inch value is an SI value in inches', () => {
    for (const face of [0.2, 0.5, 1.2]) {
      const inch = limit('aws-d11-static-inch', 'convexity', { face, plate: 0.25 })!;
      const si = limit('aws-d11-static-si', 'convexity', { face: face * 25.4 })!;
      expect(Math.abs(inch * 25.4 - si)).toBeGreaterThan(0.1);
    }
  });
});

describe('within, outside, too close to call', () => {
  it('0.31 ± 0.1 against 0.30 is too close to call, counted neither way', () => {
    expect(compare(0.31, 0.1, 0.3, 'at most')).toBe('too close to call');
    expect(compare(0.29, 0.1, 0.3, 'at most')).toBe('too close to call');
  });
  it('takes the bound itself as kept, whatever the last bit says', () => {
    expect(compare(0.2, 0.1, 0.3, 'at most')).toBe('within');
    expect(compare(0.1 + 0.2, 0, 0.3, 'at most')).toBe('within');
    expect(compare(0.4, 0.1, 0.3, 'at most')).toBe('too close to call');
    expect(compare(0.401, 0.1, 0.3, 'at most')).toBe('outside');
    expect(compare(0.2, 0.2, 0, 'at least')).toBe('within');
    expect(compare(-0.2, 0.2, 0, 'at least')).toBe('too close to call');
    expect(compare(-0.201, 0.2, 0, 'at least')).toBe('outside');
  });
});

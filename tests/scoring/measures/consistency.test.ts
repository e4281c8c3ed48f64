import { expect, it } from 'vitest';
import { readSection, type Station } from '../../../scoring/index.ts';
import { consistencyOf } from '../../../scoring/measures/bead/summary.ts';
import { lineOfHeat, makeSection, segmentFace } from './sections.ts';

const station = (leg: number, crown: number): Station =>
  readSection(makeSection({ face: segmentFace(leg, crown), peak: lineOfHeat(2.4, 2.4, 4.6) }))!.station;

it('a bead that is the same all along has no spread; one that swells has that of its legs', () => {
  const even = Array.from({ length: 10 }, () => station(6, 0.5));
  expect(consistencyOf(even)).toEqual({ size_mm: 0, faceWidth_mm: 0, convexity_mm: 0 });
  const legs = [5, 5.5, 6, 6.5, 7];
  const swelling = consistencyOf(legs.map((leg) => station(leg, 0.5)))!;
  // Standard deviation of 5, 5.5 ... 7 is √0.625; the face of an equal-leg fillet is √2 legs wide (geometry).
  expect(Math.abs(swelling.size_mm - Math.sqrt(0.625))).toBeLessThan(0.05);
  expect(Math.abs(swelling.faceWidth_mm - Math.sqrt(1.25))).toBeLessThan(0.08);
  expect(swelling.convexity_mm).toBeLessThan(0.1);
});

it('has no spread to speak of with fewer than five stations', () => {
  expect(consistencyOf([])).toBeNull();
  expect(consistencyOf(Array.from({ length: 4 }, () => station(6, 0.5)))).toBeNull();
});

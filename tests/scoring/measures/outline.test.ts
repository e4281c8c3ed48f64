import { describe, expect, it } from 'vitest';
import { readSection } from '../../../scoring/measures/section/station.ts';
import { makeSection, segmentFace } from './sections.ts';

/**
 * Circular-segment faces on equal-leg tees. Chord, segment area and ISO toe angle: closed forms (geometry). The
 * reading may be off by the tolerances named; errors are printed when a tolerance breaks.
 */
const cases = [
  { z: 5, c: 0, width: 7.071, alpha: 135 },
  { z: 5, c: 0.5, width: 7.071, alpha: 118.9 },
  { z: 5, c: 1, width: 7.071, alpha: 103.4 },
  { z: 6, c: 0.5, width: 8.485, alpha: 121.6 },
  { z: 6, c: 1, width: 8.485, alpha: 108.5 },
  { z: 6, c: 1.5, width: 8.485, alpha: 96.1 },
  { z: 7, c: 1.5, width: 9.899, alpha: 101.3 },
  { z: 8, c: 1, width: 11.314, alpha: 115.0 },
  { z: 8, c: 2, width: 11.314, alpha: 96.1 },
];

describe.each([0.75, 0.5])('circular-segment faces at %s mm cells', (cell_mm) => {
  it.each(cases)('leg $z, convexity $c', ({ z, c, width, alpha }) => {
    const r = readSection(makeSection({ cell_mm, face: segmentFace(z, c) }))!.station;
    expect(Math.abs(r.legA_mm - z)).toBeLessThan(0.1);
    expect(Math.abs(r.legB_mm - z)).toBeLessThan(0.1);
    expect(Math.abs(r.faceWidth_mm - width)).toBeLessThan(0.12);
    expect(Math.abs(r.convexity_mm - c)).toBeLessThan(0.06);
    expect(r.concavity_mm).toBeLessThan(0.05);
    // Nearest point of a convex face to the root: its summit, or a toe where the face bulges past the leg.
    expect(Math.abs(r.actualThroat_mm - Math.min(z / Math.SQRT2 + c, z))).toBeLessThan(0.08);
    // Actual throat less convexity (AWS A3.0), which for these faces is the leg over root two.
    expect(Math.abs(r.throat_mm - z / Math.SQRT2)).toBeLessThan(0.08);
    expect(Math.abs(r.toeAngleA_deg - alpha)).toBeLessThan(8);
    expect(Math.abs(r.toeAngleB_deg - alpha)).toBeLessThan(8);
  });
});

describe('other faces', () => {
  it('reads a hollow face as concavity and takes the throat at its bottom', () => {
    const r = readSection(makeSection({ face: segmentFace(6, -0.8) }))!.station;
    expect(Math.abs(r.concavity_mm - 0.8)).toBeLessThan(0.06);
    expect(r.convexity_mm).toBeLessThan(0.05);
    expect(Math.abs(r.throat_mm - (6 / Math.SQRT2 - 0.8))).toBeLessThan(0.08);
    expect(Math.abs(r.size_mm - Math.SQRT2 * (6 / Math.SQRT2 - 0.8))).toBeLessThan(0.12);
  });

  it('takes unequal legs apart and sizes by the shorter', () => {
    // Straight face from (a, b) = (8, 0) to (0, 5): in the welder's view a straight line.
    const face = (u: number): number => {
      const toeA = { u: 8 / Math.SQRT2, w: 8 / Math.SQRT2 };
      const toeB = { u: -5 / Math.SQRT2, w: 5 / Math.SQRT2 };
      if (u > toeA.u || u < toeB.u) return Number.NEGATIVE_INFINITY;
      return toeB.w + ((u - toeB.u) / (toeA.u - toeB.u)) * (toeA.w - toeB.w);
    };
    const r = readSection(makeSection({ face }))!.station;
    expect(Math.abs(r.legA_mm - 8)).toBeLessThan(0.1);
    expect(Math.abs(r.legB_mm - 5)).toBeLessThan(0.1);
    // Effective throat of unequal legs (geometry): z1 z2 / sqrt(z1² + z2²) = 4.240.
    expect(Math.abs(r.theoreticalThroat_mm - 4.24)).toBeLessThan(0.08);
    expect(Math.abs(r.size_mm - 5)).toBeLessThan(0.1);
  });

  it('takes a gap off size and throat', () => {
    const tight = readSection(makeSection({ face: segmentFace(6, 0) }))!.station;
    const gapped = readSection(makeSection({ face: segmentFace(6, 0), joint: { gap_mm: 1.5 } }))!.station;
    expect(tight.size_mm - gapped.size_mm).toBeCloseTo(1.5, 3);
    expect(tight.throat_mm - gapped.throat_mm).toBeCloseTo(1.5 / Math.SQRT2, 3);
  });

  it('mirrors: swapping the sides swaps the readings', () => {
    const skew = (u: number): number => 4.4 - 0.2 * u - 0.05 * u * u;
    const one = readSection(makeSection({ face: skew }))!.station;
    const two = readSection(makeSection({ face: (u) => skew(-u) }))!.station;
    expect(one.legA_mm).toBe(two.legB_mm);
    expect(one.toeAngleB_deg).toBe(two.toeAngleA_deg);
    expect(one.convexity_mm).toBe(two.convexity_mm);
  });

  it('limits the leg on a lap edge to the plate', () => {
    const r = readSection(
      makeSection({ face: (u) => 4.6 - 0.12 * u * u, joint: { kind: 'lap', plateB_mm: 3 } }),
    )!.station;
    expect(r.legB_mm).toBeCloseTo(3, 1);
    expect(r.legA_mm).toBeGreaterThan(4);
  });

  it('finds no bead on a bare joint', () => {
    expect(readSection(makeSection({}))).toBeNull();
  });
});

describe('undercut', () => {
  /** Mean of a parabolic groove over one column's width, as a height field carries it. */
  function grooved(depth: number, width: number, shift: number): (u: number, plate: number) => number {
    const face = segmentFace(6, 0.5);
    const middle = 6 / Math.SQRT2 + width / 2 / Math.SQRT2 + shift;
    const half = width / 2 / Math.SQRT2;
    const du = 0.75 / Math.SQRT2;
    return (u, plate) => {
      const metal = face(u);
      let sum = 0;
      for (let k = 0; k < 40; k++) {
        const x = (u + ((k + 0.5) / 40 - 0.5) * du - middle) / half;
        if (Math.abs(x) < 1) sum += depth * Math.SQRT2 * (1 - x * x);
      }
      return Math.max(plate, metal) - (metal > plate ? 0 : sum / 40);
    };
  }
  // Two widths of groove, five places of the groove between the columns.
  it.each([
    { depth: 0.2, width: 1.5 },
    { depth: 0.4, width: 1.5 },
    { depth: 0.5, width: 2 },
    { depth: 1, width: 2 },
  ])(
    'of $depth mm, $width mm wide, is found within 0.12 mm (0.1 up to 0.4 mm) wherever it lies on the columns',
    ({ depth, width }) => {
      for (const shift of [0, 0.1, 0.2, 0.3, 0.4]) {
        const r = readSection(makeSection({ surface: grooved(depth, width, shift) }))!.station;
        expect(Math.abs(r.undercutA_mm - depth)).toBeLessThan(depth <= 0.4 ? 0.1 : 0.12);
        expect(r.undercutB_mm).toBe(0);
      }
    },
  );
});

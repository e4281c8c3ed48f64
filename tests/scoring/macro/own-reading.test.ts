import { beforeAll, describe, expect, it } from 'vitest';
import type { Section } from '../../../engine/index.ts';
import { compareOwn, etchedCut, type OwnMarks, readSection } from '../../../scoring/index.ts';
import { byHand } from '../../../scoring/macro/by-hand.ts';
import { depthOf, inward, spread } from '../../../scoring/measures/section/isotherm.ts';
import { outlineOf } from '../../../scoring/measures/section/outline.ts';
import { weld } from '../../support/weld.ts';
import { makeSection } from '../measures/sections.ts';

/** Marks set exactly where the bench has root, toes, face and fusion line, the fusion line pushed deeper by `deeper` mm. */
function marksOn(sec: Section, reached: 'solidus' | 'ac1' = 'solidus', deeper = 0): OwnMarks {
  const o = outlineOf(sec)!;
  const at = ({ u, w }: { u: number; w: number }) => ({ a: (w + u) / Math.SQRT2, b: (w - u) / Math.SQRT2 });
  const s = spread(reached === 'solidus' ? sec.solidus_C : sec.ac1_C, sec.start_C);
  const depth = (side: 'A' | 'B', along: number): number => depthOf(inward(sec, side, along)!, s, sec.cell_mm) + deeper;
  const legs = readSection(sec)!.station;
  const steps = (leg: number) => [0.4, 1, 0.45 * leg, leg - 1];
  const inner = o.face.slice(2, -2);
  return {
    root: { a: 0, b: 0 },
    toeA: at(o.toeA),
    toeB: at(o.toeB),
    face: [0.15, 0.35, 0.5, 0.65, 0.85].map((share) => at(inner[Math.round(share * (inner.length - 1))]!)),
    fusionA: steps(legs.legA_mm).map((a) => ({ a, b: -depth('A', a) })),
    fusionB: steps(legs.legB_mm).map((b) => ({ a: -depth('B', b), b })),
  };
}

describe.each(['tee', 'lap'] as const)('measuring a %s of the bench oneself', (kind) => {
  let sec: Section;

  beforeAll(() => {
    const volts = kind === 'tee' ? { volts_V: 19, feed_mpmin: 5.2 } : { volts_V: 18.5, feed_mpmin: 4.4 };
    // Thick enough that the heat-affected zone ends inside the plates.
    const plates = kind === 'tee' ? { plateA_mm: 12, plateB_mm: 12 } : {};
    sec = weld({ joint: { kind, length_mm: 45, ...plates }, process: volts }).section(24);
  });

  it('agrees with a hand that marks well', () => {
    const own = compareOwn(sec, marksOn(sec))!;
    expect(own.rows.filter((r) => !r.agrees)).toEqual([]);
    expect(own.sides.map((s) => s.met)).toEqual(['fusion line', 'fusion line']);
    expect(own.agrees).toBe(true);
    expect(own.fusionLines.length).toBeGreaterThan(0);
    expect(own.zoneEdges.length).toBeGreaterThan(0);
    const { gap_mm, plateA_mm, plateB_mm } = sec.joint;
    for (const p of [...own.fusionLines, ...own.zoneEdges].flat()) {
      const inA = p.b < 0 && p.b > -plateA_mm;
      const inB = p.a < 0 && (kind === 'tee' ? p.a > -plateB_mm : p.b < gap_mm + plateB_mm);
      expect(inA || inB).toBe(true);
    }
  });

  it('says which line it was when the edge of the heat-affected zone was marked, and how far in the fusion line is', () => {
    const { station } = readSection(sec)!;
    const own = compareOwn(sec, marksOn(sec, 'ac1'))!;
    for (const side of own.sides) {
      expect(side.met).toBe('heat-affected zone');
      expect(side.there).toBe(side.points);
      const zone = side.side === 'A' ? station.hazA_mm : station.hazB_mm;
      expect(side.nearer_mm).toBeGreaterThan(0.5);
      expect(Math.abs(side.nearer_mm - zone)).toBeLessThan(0.8);
    }
    expect(own.agrees).toBe(false);
    expect(own.rows.find((r) => r.measure === 'fused depth' && r.side === 'A')?.agrees).toBe(false);
  });

  it('accepts the true line within 0.3 and no more', () => {
    const met = (deeper: number) => compareOwn(sec, marksOn(sec, 'solidus', deeper))!.sides.map((s) => s.met);
    expect(met(0.2)).toEqual(['fusion line', 'fusion line']);
    expect(met(-0.2)).toEqual(['fusion line', 'fusion line']);
    for (const m of met(0.9)) expect(m).not.toBe('fusion line');
  });

  it('tells a root marked up the plate and a toe marked short', () => {
    const marks = marksOn(sec);
    const off = compareOwn(sec, { ...marks, root: { a: 0, b: 0.8 }, toeA: { ...marks.toeA, a: marks.toeA.a - 0.6 } })!;
    const [root, toeA, toeB] = off.marks;
    expect(root).toMatchObject({ mark: 'root', agrees: false });
    expect(root?.off_mm).toBeCloseTo(0.8, 2);
    expect(toeA).toMatchObject({ mark: 'toeA', agrees: false });
    expect(toeA?.out_mm).toBeCloseTo(-0.6, 2);
    expect(toeB?.agrees).toBe(true);
    const leg = off.rows.find((r) => r.measure === 'leg' && r.side === 'B')!;
    expect(leg.yours_mm! - leg.bench_mm).toBeCloseTo(-0.8, 1);
    expect(leg.tolerance_mm).toBe(byHand.leg);
  });

  it('says when nothing was marked on a plate', () => {
    const own = compareOwn(sec, { ...marksOn(sec), fusionB: [] })!;
    expect(own.sides[1]).toMatchObject({ side: 'B', met: 'nothing marked', points: 0 });
    expect(own.rows.find((r) => r.measure === 'root')).toMatchObject({ yours_mm: null, agrees: false });
  });

  it('is drawn without a reading, a root mark or the joint as cut', () => {
    const { station } = readSection(sec)!;
    const cut = etchedCut(sec, station, { scale: 30, id: 'glass' });
    expect(cut.svg).not.toMatch(/<circle|<text|stroke-dasharray/);
    expect(cut.root.x).toBeGreaterThan(0);
    expect(cut.root.y).toBeLessThan(cut.height_px);
    expect(cut.svg).toContain(`viewBox="0 0 ${Number(cut.width_px.toFixed(2))} ${Number(cut.height_px.toFixed(2))}"`);
  });
});

it('has nothing to compare where there is no bead', () => {
  const bare = makeSection({});
  expect(
    compareOwn(bare, {
      root: { a: 0, b: 0 },
      toeA: { a: 5, b: 0 },
      toeB: { a: 0, b: 5 },
      face: [],
      fusionA: [],
      fusionB: [],
    }),
  ).toBeNull();
});

import { beforeAll, describe, expect, it } from 'vitest';
import type { Result } from '../../../scoring/index.ts';
import { judge, weld } from '../welds.ts';

/** Whole welds, judged: other hands and settings than the ones `score.test.ts` looks at. Behaviour is common practice, no source. */
let weave: Result;
beforeAll(() => {
  weave = judge(weld());
});

const line = (r: Result, measure: string) => r.lines.find((l) => l.measure === measure)!;
const code = (r: Result) => r.reasons.map((x) => x.code);

describe('a mirrored hand', () => {
  it('mirrors: the mirrored hand on a symmetric joint gives the mirrored report', () => {
    const joint = { kind: 'corner', plateA_mm: 8, plateB_mm: 8, length_mm: 45 } as const;
    const one = judge(weld({ joint, weave: { pauseA_s: 0.1, pauseB_s: 0.3, firstToe: 'A' } }));
    const two = judge(weld({ joint, weave: { pauseA_s: 0.3, pauseB_s: 0.1, firstToe: 'B' } }));
    for (const [i, s] of one.bead.stations.entries()) {
      const m = two.bead.stations[i]!;
      for (const [a, b] of [
        [s.legA_mm, m.legB_mm],
        [s.legB_mm, m.legA_mm],
        [s.rootFusionA_mm, m.rootFusionB_mm],
        [s.overlapA_mm, m.overlapB_mm],
        [s.convexity_mm, m.convexity_mm],
      ] as const) {
        // Sums over coarse tiles round differently on the two sides; nothing else may.
        expect(Math.abs(a - b)).toBeLessThan(0.001);
      }
    }
    expect(one.motion.pauseA_s).toBe(two.motion.pauseB_s);
    expect(one.verdict).toBe(two.verdict);
  });
});

describe('metal laid against metal held', () => {
  it('crowns the bead by about the metal that is over, and says so first when the crown is outside', () => {
    const r = judge(
      weld({ process: { feed_mpmin: 6.5 }, weave: { travel_mmps: 1.8 }, leg_mm: 6, profile: 'iso-5817-c' }),
    );
    expect(r.process.laid_mm2!).toBeGreaterThan(34);
    expect(r.process.holds_mm2).toBe(18);
    // Segment area (geometry): two thirds of width times crown. The model's face is more pointed than a segment: up to half as high again.
    const over = r.process.laid_mm2! - (r.bead.mean!.legA_mm * r.bead.mean!.legB_mm) / 2;
    const segment = over / ((2 / 3) * r.bead.mean!.faceWidth_mm);
    expect(r.bead.mean!.convexity_mm / segment).toBeGreaterThan(0.9);
    expect(r.bead.mean!.convexity_mm / segment).toBeLessThan(1.5);
    expect(r.advice[0]!.code).toBe('too-much-metal');
  });

  it('finds a bead of 4 under where 6 was asked, over its length', () => {
    const r = judge(
      weld({
        process: { feed_mpmin: 3.5, volts_V: 20 },
        weave: { travel_mmps: 3, width_mm: 3, apex_mm: 1 },
        leg_mm: 6,
      }),
    );
    expect(line(r, 'leg')).toMatchObject({ verdict: 'outside', limit: 6 });
    expect(r.bead.undersize_mm).toBeGreaterThan(20);
    expect(r.advice[0]!.code).toBe('too-little-wire');
  });

  it('takes the gap off: 1.5 mm of gap, throat down, size down by the gap', () => {
    const r = judge(weld({ joint: { gap_mm: 1.5 } }));
    expect(r.bead.mean!.size_mm).toBeLessThan(weave.bead.mean!.size_mm - 1.2);
    expect(r.bead.mean!.throat_mm).toBeLessThan(weave.bead.mean!.throat_mm - 0.7);
    expect(r.process.holds_mm2!).toBeGreaterThan(weave.process.holds_mm2!);
  });
});

describe('no verdict', () => {
  it('for vertical-down: shown, with its shallow root, and refused', () => {
    const r = judge(weld({ hand: (poses) => poses.map((p) => ({ ...p, y_mm: 60 - p.y_mm })) }));
    expect(r.verdict).toBe('no verdict');
    expect(code(r)).toContain('vertical-down');
    expect(r.bead.mean!.rootFusion_mm).toBeLessThan(0);
    expect(r.advice[0]!.code).toBe('climb');
    expect(r.score).toBeNull();
  });

  it.each([
    ['a hand that stays still', (y: number) => y, (p: number) => p < 1000, 30],
    ['only the ends', (y: number) => y, (_p: number, y: number) => y < 18 || y > 48, null],
  ] as const)('for %s', (_name, _way, on, still) => {
    const r = judge(
      weld({
        hand: (poses) => poses.map((p, i) => ({ ...p, y_mm: still ?? p.y_mm, trigger: p.trigger && on(i, p.y_mm) })),
      }),
    );
    expect(r.verdict).toBe('no verdict');
    expect(code(r)).toContain('judged-length-not-covered');
  });

  it('for a scribble, for leaving the joint, and for no arc at all', () => {
    const scribble = weld({
      hand: (poses) => poses.map((p, i) => ({ ...p, u_mm: 8 * Math.sin(i * 0.9), y_mm: 30 + 28 * Math.sin(i * 0.13) })),
    });
    expect(judge(scribble).verdict).toBe('no verdict');
    const leave = weld({ hand: (poses) => poses.map((p) => ({ ...p, u_mm: p.y_mm > 30 ? p.u_mm + 60 : p.u_mm })) });
    expect(code(judge(leave))).toContain('judged-length-not-covered');
    const dark = weld({ hand: (poses) => poses.slice(0, 200).map((p) => ({ ...p, trigger: false })) });
    expect(code(judge(dark))).toEqual(['no-arc']);
  });
});

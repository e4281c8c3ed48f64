import { expect, it } from 'vitest';
import { judge, weld } from '../scoring/welds.ts';

it('what is bare because the hand let go stands beside no habit', () => {
  // Woven far too wide, and let go halfway up.
  const r = judge(
    weld({
      joint: { length_mm: 42 },
      weave: { travel_mmps: 2 },
      hand: (poses) => poses.slice(0, Math.round(poses.length * 0.5)).map((p) => ({ ...p, u_mm: p.u_mm * 1.6 })),
    }),
  );
  expect(r.bead.bare_mm.length).toBeGreaterThan(5);
  expect(r.advice[0]!.code).toBe('let-go-early');
  const others = r.advice.slice(1);
  expect(others.map((a) => a.code)).toContain('too-wide');
  for (const { text } of others) expect(text).not.toMatch(/are bare/);
});

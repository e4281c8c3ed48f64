import { expect, it } from 'vitest';
import { judge, weld } from '../scoring/welds.ts';

it('what was seen is said beside the first way the hand was off, and not again beside the next ones', () => {
  // Far too wide, pushed and held far away, on plate too thin for it: metal drops out.
  const r = judge(
    weld({
      joint: { length_mm: 30, plateA_mm: 4, plateB_mm: 4 },
      process: { volts_V: 21, feed_mpmin: 6 },
      weave: { travel_mmps: 1.2 },
      hand: (poses) =>
        poses.map((p) => ({
          ...p,
          u_mm: p.u_mm * 1.6,
          travelAngle_deg: p.travelAngle_deg + 15,
          workAngle_deg: p.workAngle_deg + 15,
        })),
    }),
  );
  const codes = r.advice.map((a) => a.code);
  expect(codes).toEqual(expect.arrayContaining(['too-wide', 'pushed-far']));
  expect(r.reasons.map((x) => x.code)).toContain('dropped-out');
  expect(r.advice.filter((a) => /dropped out/.test(a.text)).map((a) => a.code)).toEqual([codes[0]]);
});

import { describe, expect, it } from 'vitest';
import type { Coupon } from '../../../../scoring/index.ts';
import { TestBench } from '../../support/test-bench.ts';

const spot = (x: number, y: number) => ({ x, y });

const COUPON: Coupon = {
  format: 'toehold-coupon',
  version: 1,
  picture: { name: 'cut.png', width_px: 800, height_px: 600 },
  attempt: null,
  y_mm: 20,
  joint: new TestBench().state.exercise.value.joint,
  asked: new TestBench().state.exercise.value.asked,
  profile: 'tern-dock-first-runs',
  scale: { from: spot(0, 0), to: spot(100, 0), length_mm: 10 },
  marks: {
    root: spot(400, 300),
    plateA: spot(600, 300),
    plateB: spot(400, 100),
    toeA: spot(450, 300),
    toeB: spot(400, 250),
    face: [spot(430, 270)],
    fusionA: [],
    fusionB: [],
    undercutA: null,
    undercutB: null,
  },
};

describe('real coupons beside an attempt', () => {
  it('are kept one for each height, newest first, and laid beside the cut', async () => {
    const bench = await new TestBench().settle();
    await bench.session.coupons.show('one');
    expect(await bench.session.coupons.keep('one', COUPON, null)).toBe(true);
    bench.clock.crank(1000);
    await bench.session.coupons.keep('one', { ...COUPON, y_mm: 30 }, null);
    bench.clock.crank(1000);
    await bench.session.coupons.keep('one', { ...COUPON, profile: 'iso-5817-b' }, null);
    expect(bench.state.coupons.value.map((kept) => kept.id)).toEqual(['one@20', 'one@30']);
    expect(bench.state.besideCoupon.value?.coupon.profile).toBe('iso-5817-b');
    await bench.session.coupons.show('another');
    expect(bench.state.coupons.value).toEqual([]);
    expect(bench.state.besideCoupon.value).toBeNull();
  });

  it('go with their attempt', async () => {
    const bench = await new TestBench().settle();
    await bench.session.coupons.keep('one', COUPON, null);
    await bench.session.keeper.forget('one');
    expect(bench.stores.couponRecords.size).toBe(0);
  });

  it('come back with an attempt that was removed by a slip', async () => {
    const bench = await new TestBench({ length_mm: 20 }).settle();
    bench.press(0, 5).wait(0.3).release();
    bench.session.finish();
    await bench.result();
    await bench.settle();
    const [entry] = bench.state.shelf.value;
    await bench.session.coupons.keep(entry!.id, COUPON, null);
    const before = JSON.stringify([
      await bench.stores.attempts.get(entry!.id),
      await bench.stores.coupons.of(entry!.id),
    ]);
    await bench.session.keeper.forget(entry!.id);
    expect(bench.state.shelf.value).toEqual([]);
    expect(bench.stores.couponRecords.size).toBe(0);
    await bench.session.keeper.putBack();
    expect(bench.state.shelf.value).toEqual([entry]);
    expect(JSON.stringify([await bench.stores.attempts.get(entry!.id), await bench.stores.coupons.of(entry!.id)])).toBe(
      before,
    );
    expect(bench.state.removed.value).toBeNull();
    // What a trainee asked to be forgotten is not kept to be put back.
    await bench.session.keeper.forget(entry!.id);
    await bench.session.trainees.forget(true);
    await bench.session.keeper.putBack();
    expect(bench.state.shelf.value).toEqual([]);
  });

  it('are saved as a file of their own', () => {
    const bench = new TestBench();
    bench.session.coupons.save(COUPON);
    expect(bench.saved[0].name).toMatch(/^2026-03-14_cut_\d{4}\.coupon\.json$/);
    expect(bench.saved[0].content).toEqual(COUPON);
  });

  it('that cannot be kept say so, and a slow answer for another attempt is not shown', async () => {
    const bench = await new TestBench().settle();
    bench.stores.full = true;
    expect(await bench.session.coupons.keep('one', COUPON, null)).toBe(false);
    expect(bench.state.problem.value).toEqual({ code: 'coupon-not-kept' });
    bench.stores.full = false;
    await bench.session.coupons.keep('one', COUPON, null);
    const slow = bench.session.coupons.show('one');
    await bench.session.coupons.show(null);
    await slow;
    expect(bench.state.coupons.value).toEqual([]);
  });
});

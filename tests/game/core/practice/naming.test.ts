import { describe, expect, it } from 'vitest';
import { COUPONS, choicesOf, couponRecording, nextCoupon } from '../../../../game/core/practice/naming.ts';
import { words } from '../../../../game/locale/index.ts';
import { checkRecording } from '../../../../scoring/index.ts';
import { TestBench } from '../../support/test-bench.ts';

const w = words.practice.naming;

describe('naming the fault', () => {
  it('offers the right answer among others, more of them at each level, every one with a name and what it shows', () => {
    for (const c of COUPONS) {
      const choices = choicesOf(c);
      expect(choices).toContain(c.is);
      expect(new Set(choices).size).toBe(choices.length);
      expect(choices).toHaveLength(2 + c.level);
      for (const code of choices) {
        expect(w.fault(code)).not.toBe(code);
        expect(w.shows(code)).not.toBe('');
      }
    }
    const once = [0, 1, 2, 3, 4].map((n) => nextCoupon(1, n));
    expect(new Set(once.map((c) => c.is)).size).toBe(5);
  });

  it('makes recordings that can be read as any other', () => {
    for (const c of COUPONS) expect(() => checkRecording(couponRecording(c, 3), c.is)).not.toThrow();
  });

  it('welds a coupon, holds back what it came to, tells by the engine’s own reading, and keeps the answer but no attempt', async () => {
    const bench = new TestBench();
    bench.session.practice.nameFault(1);
    expect(bench.state.naming.value).toMatchObject({ phase: 'welding', level: 1 });
    await bench.until(() => bench.state.naming.value?.phase === 'asked', 'the coupon');
    expect(bench.state.result.value).toBeNull();
    expect(bench.state.opened.value?.length).toBeGreaterThan(20);
    const { coupon, choices } = bench.state.naming.value!;
    bench.session.practice.name(choices.find((c) => c !== coupon.is)!);
    expect(bench.state.naming.value).toMatchObject({ phase: 'told', was: coupon.is });
    expect(bench.state.result.value?.advice[0]?.code).toBe(coupon.is);
    expect(bench.state.naming.value?.says).toBe(bench.state.result.value?.advice[0]?.text);
    await bench.until(() => bench.state.practice.value.length === 1, 'the answer on the shelf');
    expect(bench.state.shelf.value).toEqual([]);
    expect(bench.session.practice.named(1)).toEqual({ right: 0, of: 1 });
    bench.session.practice.leaveNaming();
    expect(bench.state.naming.value).toBeNull();
  });
});

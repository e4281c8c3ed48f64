import { describe, expect, it } from 'vitest';
import { DEFAULT_RIG, HandRig } from '../../../../game/core/hand/hand-rig.ts';

/** Where the torch is after the hand has jumped 5 mm to the side and waited. */
function after(rig: HandRig, ms: number): number {
  let u = 0;
  for (let t = 0; t < ms; t += 10) u = rig.follow(5, 0, 10).u_mm;
  return u;
}

describe('hand rig', () => {
  it('follows the hand late and comes to rest near it', () => {
    expect(after(new HandRig(DEFAULT_RIG, 0, 0), 30)).toBeLessThan(4);
    expect(after(new HandRig(DEFAULT_RIG, 0, 0), 2000)).toBeCloseTo(5, 1);
  });

  it('follows a heavier gun later', () => {
    const light = after(new HandRig({ gun_g: 200, hose: 0 }, 0, 0), 60);
    const heavy = after(new HandRig({ gun_g: 1500, hose: 0 }, 0, 0), 60);
    expect(heavy).toBeLessThan(light - 0.2);
  });

  it('hangs lower with a stiffer hose', () => {
    const rest = (hose: number): number => {
      const rig = new HandRig({ gun_g: 700, hose }, 0, 0);
      let y = 0;
      for (let n = 0; n < 200; n++) y = rig.follow(0, 0, 10).y_mm;
      return y;
    };
    expect(rest(1)).toBeLessThan(rest(0) - 0.05);
  });
});

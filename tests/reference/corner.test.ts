/**
 * Concus & Finn (Proc. Natl. Acad. Sci. 63, 1969, 292): in a wedge of half angle α a liquid of contact angle θ has no bounded equilibrium
 * where θ + α < 90°; in a right-angled corner, below 45°. From memory.
 */
import { describe, expect, it } from 'vitest';
import { wettedCorner } from './cases/corner.ts';

const TIMES_S = [2, 4, 8];

describe('a weightless pool in a right-angled corner', () => {
  it.each([46, 50, 60])('stands at %d°', (angle) => {
    const [early, , late] = wettedCorner(angle, TIMES_S, 0.75);
    expect(late! - early!).toBeLessThan(0.2);
  });

  it('runs on along the corner at 30°, without slowing', () => {
    const [two, four, eight] = wettedCorner(30, TIMES_S, 0.75);
    expect(four! - two!).toBeGreaterThan(4);
    expect(eight! - four!).toBeGreaterThan(6);
  });

  it('between 30° and 45° it runs farther the better it wets, but columns this wide stop it in the end', () => {
    const [forty, fortyFour, fortySix] = [40, 44, 46].map((angle) => wettedCorner(angle, [8], 0.75)[0]!);
    expect(forty!).toBeGreaterThan(fortyFour! + 1);
    expect(fortyFour!).toBeGreaterThan(fortySix! + 0.5);
  });
});

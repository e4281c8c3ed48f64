import { describe, expect, it } from 'vitest';
import { makeNet } from '../../../../game/view/lens/net.ts';
import { Pace } from '../../../../game/view/lens/pace.ts';
import { lookAt, see } from '../../../../game/view/lens/pinhole.ts';

describe('the close view as a pinhole sees it', () => {
  const look = lookAt(40, 700, 700, 20);

  it('has the root in the middle and the arc at 45 % of the height', () => {
    const foot = see(look, { u_mm: 0, y_mm: 40, w_mm: 2 });
    expect(foot.x_px).toBeCloseTo(350, 6);
    expect(foot.y_px / 700).toBeCloseTo(0.45, 1);
    expect(Math.abs(foot.y_px - 315)).toBeLessThan(7);
  });

  it('draws about 20 pixels to the millimetre at the root, and mirrored places mirrored', () => {
    const left = see(look, { u_mm: -3, y_mm: 41, w_mm: 3 });
    const right = see(look, { u_mm: 3, y_mm: 41, w_mm: 3 });
    expect(right.x_px - left.x_px).toBeGreaterThan(6 * 19);
    expect(right.x_px - left.x_px).toBeLessThan(6 * 21);
    expect(left.x_px + right.x_px).toBeCloseTo(700, 6);
    expect(left.y_px).toBeCloseTo(right.y_px, 6);
  });

  it('sees from below: metal farther up the joint is smaller, metal nearer the eye higher in the picture', () => {
    const near = see(look, { u_mm: 5, y_mm: 30, w_mm: 5 });
    const far = see(look, { u_mm: 5, y_mm: 60, w_mm: 5 });
    expect(far.x_px).toBeLessThan(near.x_px);
    expect(see(look, { u_mm: 0, y_mm: 40, w_mm: 6 }).y_px).toBeLessThan(see(look, { u_mm: 0, y_mm: 40, w_mm: 0 }).y_px);
  });
});

describe('the net the skin hangs on', () => {
  it('has lines exactly on the root and on a lap’s edge', () => {
    const { places } = makeNet('lap', 5, 30, 40);
    const us = new Set<number>();
    for (let i = 0; i < places.length; i += 2) us.add(places[i]!);
    expect(us.has(0)).toBe(true);
    expect([...us].some((u) => Math.abs(u + 5 / Math.SQRT2) < 1e-6)).toBe(true);
  });

  it('is its own mirror image on a tee, squares and diagonals', () => {
    const { places, triangles } = makeNet('tee', 6, 30, 4);
    const centres = (mirror: number): string[] => {
      const out: string[] = [];
      for (let t = 0; t < triangles.length; t += 3) {
        const at = (axis: number): number =>
          [0, 1, 2].reduce((sum, corner) => sum + places[2 * triangles[t + corner]! + axis]!, 0) / 3;
        out.push(`${(mirror * at(0)).toFixed(3)} ${at(1).toFixed(3)}`.replace('-0.000', '0.000'));
      }
      return out.sort();
    };
    expect(centres(1)).toEqual(centres(-1));
  });
});

describe('how finely the close view is drawn', () => {
  it('stays full on a machine that draws it in a tenth of a frame', () => {
    const pace = new Pace();
    pace.timed(0.0004, 0.5);
    expect(pace).toMatchObject({ share: 1, plain: false, every: 1 });
  });

  it('is coarser where it takes two frames', () => {
    const pace = new Pace();
    pace.timed(0.0055, 0.5);
    expect(pace.plain).toBe(false);
    expect(pace.share).toBeGreaterThan(0.49);
    expect(pace.share).toBeLessThan(0.7);
  });

  it('is plain, coarse and rarer without a graphics card', () => {
    const pace = new Pace();
    pace.timed(0.11, 0.5);
    expect(pace.plain).toBe(true);
    expect(pace.share).toBeCloseTo(0.35, 2);
    expect(pace.every).toBeGreaterThan(1);
  });

  it('gives way while frames come late: coarser, then plain, then rarer', () => {
    const pace = new Pace();
    for (let n = 0; n < 400; n++) pace.judge(1 / 12);
    expect(pace).toMatchObject({ plain: true, every: 3 });
    expect(pace.share).toBeLessThan(0.5);
  });
});

import { describe, expect, it } from 'vitest';
import { noFaults, POSE_RATE_HZ, weaveHand } from '../../../../engine/index.ts';
import { Follow } from '../../../../game/view/lens/follow.ts';
import { exerciseNamed } from '../../../../scoring/index.ts';

const FRAME_S = 1 / 60;
/** An inverted V that reaches 2.5 mm ahead, as tall a weave as any ready exercise shows. */
const WEAVE = {
  ...exerciseNamed('tee-inverted-v')!.demonstration,
  travel_mmps: 2.2,
  width_mm: 6,
  apex_mm: 2.5,
  shelf_s: 1.2,
  length_mm: 50,
  reStrikes: 0,
};

/** Follows a robot hand; heights of the picture's middle and of the arc, without the first five seconds and the last three (it stands). */
function follow(still: boolean, frame_s = FRAME_S): { at: number[]; arc: number[] } {
  const poses = [...weaveHand(WEAVE, noFaults())];
  const camera = new Follow();
  const at: number[] = [];
  const arc: number[] = [];
  for (let t = 0; t * POSE_RATE_HZ < poses.length; t += frame_s) {
    const pose = poses[Math.floor(t * POSE_RATE_HZ)]!;
    camera.step(pose.y_mm, frame_s, still);
    if (t < 5 || t * POSE_RATE_HZ > poses.length - 3 * POSE_RATE_HZ) continue;
    at.push(camera.y_mm);
    arc.push(pose.y_mm);
  }
  return { at, arc };
}

describe('the close view follows the arc', () => {
  it('cuts to the first arc, and to one more than 20 mm away', () => {
    const camera = new Follow();
    camera.step(30, FRAME_S, false);
    expect(camera.y_mm).toBe(30);
    camera.step(55, FRAME_S, false);
    expect(camera.y_mm).toBe(55);
  });

  it('does not move while the arc stays within its dead zone of 0.8 mm', () => {
    const camera = new Follow();
    camera.step(30, FRAME_S, false);
    // Let it come to rest: a hand that stands still is trailed by nothing.
    for (let n = 0; n < 600; n++) camera.step(30, FRAME_S, false);
    const rest = camera.y_mm;
    for (let n = 0; n < 600; n++) camera.step(30 - 1.5 * Math.abs(Math.sin(n / 20)), FRAME_S, false);
    expect(Math.abs(camera.y_mm - rest)).toBeLessThan(0.01);
  });

  it('climbs as evenly as the work: a weave of 2.5 mm up and down is felt as less than 0.5 mm/s', () => {
    const { at } = follow(false);
    const speeds = at.slice(1).map((y, i) => (y - at[i]!) / FRAME_S);
    const travel = WEAVE.travel_mmps;
    for (const speed of speeds) expect(Math.abs(speed - travel)).toBeLessThan(0.5);
  });

  it('keeps the arc within the weave’s own 2.5 mm of its place in the picture', () => {
    const { at, arc } = follow(false);
    for (const [i, y] of at.entries()) expect(Math.abs(arc[i]! - y)).toBeLessThan(2.6);
  });

  it('moves the same at 20 frames a second as at 60, to 0.2 mm', () => {
    const fast = follow(false).at.at(-1)!;
    const slow = follow(false, 1 / 20).at.at(-1)!;
    expect(Math.abs(fast - slow)).toBeLessThan(0.2);
  });

  it('with motion reduced stands still but for steps of 6 mm, and never lets the arc past the middle 12', () => {
    const { at, arc } = follow(true);
    for (let i = 1; i < at.length; i++) {
      const step = at[i]! - at[i - 1]!;
      expect(Math.abs(step) < 1e-9 || Math.abs(Math.abs(step) - 6) < 1e-9).toBe(true);
      expect(Math.abs(arc[i]! - at[i]!)).toBeLessThan(6.001);
    }
  });
});

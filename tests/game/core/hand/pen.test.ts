import { describe, expect, it } from 'vitest';
import { PenCheck, penAngles } from '../../../../game/core/hand/pen.ts';

describe('pen', () => {
  it('turns lean into torch angles: right over the right plate, towards the hand is push', () => {
    expect(penAngles(0, 0)).toEqual({ workAngle_deg: 45, travelAngle_deg: 0 });
    expect(penAngles(10, 0).workAngle_deg).toBe(35);
    expect(penAngles(0, 12).travelAngle_deg).toBe(12);
    expect(penAngles(-80, -80)).toEqual({ workAngle_deg: 85, travelAngle_deg: -40 });
  });

  it('believes a pen only after four different leans', () => {
    const check = new PenCheck();
    expect(check.see(0, 0)).toBe(false);
    expect(check.see(-20, 0)).toBe(false);
    expect(check.see(25, 0)).toBe(false);
    expect(check.see(0, 30)).toBe(false);
    expect(check.see(0, -16)).toBe(true);
  });

  it('never believes a pen that reports no lean', () => {
    const check = new PenCheck();
    for (let n = 0; n < 100; n++) check.see(0, 0);
    expect(check.passed).toBe(false);
  });
});

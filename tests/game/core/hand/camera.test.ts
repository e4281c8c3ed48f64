import { describe, expect, it } from 'vitest';
import { fitCamera, toJoint, toPane } from '../../../../game/core/hand/camera.ts';

const ends = { low_mm: 0, high_mm: 60 };

describe('camera', () => {
  it('shows the whole joint with room at both ends, u = 0 in the middle', () => {
    const camera = fitCamera({ width_px: 500, height_px: 800, ...ends, fixedScale: null });
    const bottom = toPane(camera, 0, 0);
    const top = toPane(camera, 0, 60);
    expect(bottom.x_px).toBe(250);
    expect(bottom.y_px).toBeLessThan(800 - 40);
    expect(top.y_px).toBeGreaterThan(20);
  });

  it('turns pane pixels into millimetres and back', () => {
    const camera = fitCamera({ width_px: 373, height_px: 641, low_mm: -12, high_mm: 102, fixedScale: null });
    for (const [x, y] of [
      [0, 0],
      [200.25, 320.5],
      [373, 641],
    ]) {
      const joint = toJoint(camera, x, y);
      const pane = toPane(camera, joint.u_mm, joint.y_mm);
      expect(pane.x_px).toBeCloseTo(x, 9);
      expect(pane.y_px).toBeCloseTo(y, 9);
    }
  });

  it('has u to the right and y upwards', () => {
    const camera = fitCamera({ width_px: 400, height_px: 600, ...ends, fixedScale: null });
    const low = toJoint(camera, 100, 500);
    const high = toJoint(camera, 300, 100);
    expect(high.u_mm).toBeGreaterThan(low.u_mm);
    expect(high.y_mm).toBeGreaterThan(low.y_mm);
  });

  it('keeps a fixed scale whatever the pane is', () => {
    for (const height_px of [300, 900])
      expect(fitCamera({ width_px: 400, height_px, ...ends, fixedScale: 6.1 }).scale).toBe(6.1);
  });

  it('never shows less than 13 mm either side', () => {
    const camera = fitCamera({ width_px: 200, height_px: 3000, ...ends, fixedScale: null });
    expect(camera.width_px / camera.scale / 2).toBeGreaterThanOrEqual(13);
  });
});

import { describe, expect, it } from 'vitest';
import { createSimulation, defaultOptions } from '../../../../engine/index.ts';
import { TRACE_STRIDE, TraceLog } from '../../../../game/core/bench/trace-log.ts';

describe('trace log', () => {
  it('keeps "there was none" apart from nought, and survives being posted in parts', () => {
    const options = defaultOptions();
    const piece = createSimulation({ ...options, joint: { ...options.joint, length_mm: 20 } });
    const log = new TraceLog();
    const copy = new TraceLog();
    let sent = 0;
    for (let n = 0; n < 1100; n++) {
      log.push(
        piece.step({
          u_mm: 0,
          y_mm: 5,
          tipToWork_mm: 12,
          workAngle_deg: 45,
          travelAngle_deg: 8,
          trigger: n > 5 && n < 60,
        }),
      );
      if (n % 7 === 0) {
        copy.append(log.slice(sent));
        sent = log.length;
      }
    }
    copy.append(log.slice(sent));
    expect(copy.length).toBe(1100);
    expect(copy.slice(0)).toEqual(log.slice(0));
    expect(log.slice(1000)).toHaveLength(100 * TRACE_STRIDE);
    expect(log.value(0, 'frontY_mm')).toBeNaN();
    expect(log.value(0, 'arcOn')).toBe(0);
    expect(log.value(50, 'arcOn')).toBe(1);
    expect(log.firstAt(4)).toBeCloseTo(0.07, 1);
    expect(log.firstAt(12)).toBeNull();
  });
});

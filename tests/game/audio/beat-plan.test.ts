import { describe, expect, it } from 'vitest';
import { defaultWeave, weaveAt } from '../../../engine/index.ts';
import { arcNoise } from '../../../game/audio/arc-noise.ts';
import { beatsBetween } from '../../../game/audio/beat-plan.ts';

describe('beat', () => {
  const weave = { ...defaultWeave(), cyclesPerSecond: 0.8, pauseA_s: 0.3, pauseB_s: 0.2 };

  it('arrives at a toe when the weave does and leaves it after the pause', () => {
    for (const beat of beatsBetween(weave, 0, 10)) {
      const away = (t: number): number => weaveAt(weave, (t * weave.cyclesPerSecond) % 1).away;
      const side = Math.sign(weaveAt(weave, ((beat.t_s + 1e-9) * weave.cyclesPerSecond) % 1).u_mm);
      expect(away(beat.t_s + 1e-6)).toBeGreaterThan(0.999);
      expect(side).toBe(beat.toe === 'A' ? 1 : -1);
    }
  });

  it('gives the same beats in one look or many', () => {
    const whole = beatsBetween(weave, 0, 6);
    const parts = [0, 1, 2, 3, 4, 5].flatMap((t) => beatsBetween(weave, t, t + 1));
    expect(parts.map((b) => b.t_s)).toEqual([...whole.map((b) => b.t_s)].sort((a, b) => a - b));
    expect(whole).toHaveLength(4 * Math.ceil(6 * 0.8));
  });

  it('leaves a straight run in silence', () => {
    expect(beatsBetween({ ...weave, pattern: 'straight' }, 0, 10)).toEqual([]);
  });

  it('makes a loop of arc noise that is loud enough and never clips', () => {
    const samples = arcNoise(8000, { shortCircuit_Hz: 95, regime: 'short-circuiting' });
    const peak = samples.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
    expect(samples).toHaveLength(16000);
    expect(peak).toBeGreaterThan(0.1);
    expect(peak).toBeLessThan(1);
  });
});

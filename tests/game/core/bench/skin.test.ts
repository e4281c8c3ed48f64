import { describe, expect, it } from 'vitest';
import { createSimulation, noFaults, type SurfaceView, weaveHand } from '../../../../engine/index.ts';
import { RippleClock } from '../../../../game/core/bench/ripple-clock.ts';
import { Skin } from '../../../../game/core/bench/skin.ts';
import { footOf } from '../../../../game/view/lens/foot.ts';
import { exerciseNamed } from '../../../../scoring/index.ts';

const NU = 9;
const NY = 11;

/** A made-up surface: a pool of 3 x 3 columns round the middle, frozen metal below it, bare plate elsewhere. */
function surface(): SurfaceView {
  const n = NU * NY;
  const view: SurfaceView = {
    nu: NU,
    ny: NY,
    u0_mm: -2,
    du_mm: 0.5,
    y0_mm: 0,
    dy_mm: 0.75,
    height_mm: new Float32Array(n),
    plate_mm: new Float32Array(n),
    temp_C: new Float32Array(n).fill(400),
    liquid: new Float32Array(n),
    peak_C: new Float32Array(n).fill(900),
    frozen_s: new Float32Array(n).fill(Number.NaN),
  };
  for (let k = 3; k <= 5; k++) {
    for (let j = 4; j <= 6; j++) {
      const i = k * NY + j;
      view.temp_C[i] = 1600;
      view.liquid[i] = 1;
      view.height_mm[i] = 2;
    }
    for (let j = 0; j < 4; j++) view.frozen_s[k * NY + j] = j;
  }
  return view;
}

function read(view: SurfaceView, now_s = 10): (field: number, k: number, j: number) => number {
  const skin = new Skin(NU, NY);
  skin.read(view, now_s, new RippleClock());
  return (field, k, j) => skin.texels[(field >= 4 ? NU * NY * 4 : 0) + (k * NY + j) * 4 + (field % 4)]!;
}

describe('the skin made of a surface', () => {
  it('has its level above zero where liquid, below where solid, and zero between the two columns', () => {
    const at = read(surface());
    expect(at(4, 4, 5)).toBeGreaterThan(0.5);
    expect(at(4, 0, 5)).toBeLessThan(-0.9);
    expect(at(4, 4, 6) * at(4, 4, 8)).toBeLessThan(0);
  });

  it('keeps a column on its own side though its temperature says otherwise', () => {
    const view = surface();
    // Undercooled liquid, and solid that reads a little too warm.
    view.temp_C.fill(1470);
    const at = read(view);
    expect(at(4, 4, 5)).toBeGreaterThan(0);
    expect(at(4, 0, 10)).toBeLessThan(0);
  });

  it('grows freeze times four columns into metal that never melted, and calls the rest now', () => {
    const at = read(surface());
    expect(at(7, 4, 2)).toBeCloseTo(2, 5);
    expect(at(7, 1, 2)).toBeGreaterThan(1);
    expect(at(7, 1, 2)).toBeLessThan(10);
    expect(at(7, 4, 10)).toBe(10);
  });

  it('is its own mirror image for a mirrored surface', () => {
    const view = surface();
    view.temp_C[3 * NY + 4] = 1500;
    const mirrored = surface();
    mirrored.temp_C[5 * NY + 4] = 1500;
    const one = read(view);
    const two = read(mirrored);
    for (let field = 0; field < 8; field++)
      for (let k = 0; k < NU; k++)
        for (let j = 0; j < NY; j++) expect(one(field, k, j)).toBeCloseTo(two(field, NU - 1 - k, j), 5);
  });

  it('shows metal standing on a toe over a tenth of a second, not in one jump; a replay that jumps shows it at once', () => {
    const skin = new Skin(NU, NY);
    const bare = surface();
    bare.height_mm.fill(0);
    const clock = new RippleClock();
    skin.read(bare, 1, clock);
    skin.read(surface(), 1.05, clock);
    const i = (4 * NY + 5) * 4 + 1;
    expect(skin.texels[i]).toBeGreaterThan(0.5);
    expect(skin.texels[i]).toBeLessThan(1);
    skin.read(surface(), 8, clock);
    expect(skin.texels[i]).toBe(2);
  });

  it('leaves slices it was not asked for as they were', () => {
    const skin = new Skin(NU, NY);
    const clock = new RippleClock();
    skin.read(surface(), 1, clock);
    const before = skin.texels[(4 * NY + 9) * 4 + 2];
    const hot = surface();
    hot.temp_C.fill(1000);
    skin.read(hot, 1.02, clock, { from: 0, to: 6 });
    expect(skin.texels[(4 * NY + 9) * 4 + 2]).toBe(before);
    expect(skin.texels[(0 * NY + 2) * 4 + 2]).toBe(1000);
  });
});

describe('ripples are counted by root crossings', () => {
  /** A weave of a period and width, sampled each hundredth of a second. */
  function weave(period_s: number, half_mm: number, seconds: number): RippleClock {
    const clock = new RippleClock();
    for (let n = 0; n < seconds * 100; n++) clock.add(n / 100, half_mm * Math.cos((2 * Math.PI * n) / 100 / period_s));
    return clock;
  }

  it('by one from each crossing to the next', () => {
    const clock = weave(1.2, 2.5, 20);
    // Crossings lie half a period apart.
    for (let t = 3; t < 15; t += 0.6) expect(clock.phaseAt(t + 0.6) - clock.phaseAt(t)).toBeCloseTo(1, 1);
  });

  it('grows with time and never runs back', () => {
    const clock = weave(1, 2, 12);
    let last = -1;
    for (let t = 0; t < 13; t += 0.01) {
      const phase = clock.phaseAt(t);
      expect(phase).toBeGreaterThanOrEqual(last);
      last = phase;
    }
  });

  it('does not take a shaky straight run for a weave', () => {
    const clock = weave(0.3, 0.4, 10);
    expect(clock.phaseAt(10)).toBeCloseTo(26, 0);
  });
});

describe('the foot of the arc as the hand has it', () => {
  it('lies where the engine puts it, to half a millimetre in the mean and one at worst', () => {
    const exercise = exerciseNamed('tee-inverted-v')!;
    const { joint, process, demonstration } = exercise;
    const simulation = createSimulation({ joint: { ...joint, length_mm: 30 }, process, cell_mm: 0.75 });
    const { u0_mm, du_mm, y0_mm, dy_mm, nu, ny } = simulation.surface();
    let worst = 0;
    let sum = 0;
    let count = 0;
    for (const pose of weaveHand({ ...demonstration, length_mm: 16 }, noFaults())) {
      const sample = simulation.step(pose);
      if (!sample.arcOn || sample.t_s < 2 || simulation.steps % 5 !== 0) continue;
      const { height_mm } = simulation.surface();
      const heightAt = (u: number, y: number): number => {
        const k = Math.min(nu - 1, Math.max(0, Math.round((u - u0_mm) / du_mm)));
        const j = Math.min(ny - 1, Math.max(0, Math.round((y - y0_mm) / dy_mm)));
        return height_mm[k * ny + j]!;
      };
      const foot = footOf(pose, { ...pose, wire_mm: process.wire_mm }, heightAt);
      const off = Math.hypot(foot.u_mm - sample.footU_mm, foot.y_mm - sample.footY_mm);
      worst = Math.max(worst, off);
      sum += off;
      count += 1;
    }
    expect(count).toBeGreaterThan(50);
    expect(sum / count).toBeLessThan(0.5);
    expect(worst).toBeLessThan(1);
  });
});

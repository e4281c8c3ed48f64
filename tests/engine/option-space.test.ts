/**
 * Welds drawn from everything the options allow: a law that holds on a 6 mm tee at the working cell has to hold on a 2 mm lap in cells of a
 * millimetre too, and what cannot be welded is refused before it is tried.
 */
import { describe, expect, it } from 'vitest';
import {
  checkOptions,
  createRandom,
  createSimulation,
  defaultWeave,
  noFaults,
  type SimulationOptions,
  type WeaveOptions,
  weaveHand,
} from '../../engine/index.ts';

const SEED = 20261126;
const WELDS = 24;
/** Three seconds of arc: strike, shelf and the first cycles. */
const POSES = 300;

interface Drawn {
  options: SimulationOptions;
  weave: WeaveOptions;
}

function draw(random: ReturnType<typeof createRandom>): Drawn {
  const within = (low: number, high: number): number => low + (high - low) * random.next();
  const one = <T>(list: readonly T[]): T => list[Math.floor(random.next() * list.length)]!;
  const options: SimulationOptions = {
    joint: {
      kind: one(['tee', 'lap', 'corner', 'plate'] as const),
      plateA_mm: within(2, 20),
      plateB_mm: within(2, 20),
      plateWidth_mm: within(30, 300),
      length_mm: within(20, 40),
      gap_mm: one([0, 0, within(0, 3)]),
      startTemp_C: within(-20, 350),
      ambient_C: within(-20, 50),
      sink_WpmmK: within(0, 0.05),
      tabs: random.next() < 0.3,
    },
    process: {
      wire_mm: one([0.8, 0.9, 1.0, 1.2] as const),
      feed_mpmin: within(1, 12),
      volts_V: within(12, 30),
      gas: one(['M21-ArC-18', 'M21-ArC-25', 'C1'] as const),
      tip_mm: within(-6, 6),
      nozzle_mm: within(10, 26),
    },
    // A cell of 0.375 mm costs a hundred times one of 1.5: few of them are drawn, but the range is all of it.
    cell_mm: 1.5 - 1.125 * random.next() ** 3,
  };
  const weave: WeaveOptions = {
    ...defaultWeave(),
    pattern: one(['straight', 'inverted-v', 'triangle'] as const),
    start_mm: 3,
    length_mm: options.joint.length_mm - 6,
    travel_mmps: within(0.6, 5),
    width_mm: within(1, 14),
    cyclesPerSecond: within(0.4, 3),
    pauseA_s: within(0, 0.5),
    pauseB_s: within(0, 0.5),
    tipToWork_mm: within(6, 30),
    workAngle_deg: within(10, 80),
    travelAngle_deg: within(-45, 45),
    apex_mm: within(-5, 5),
  };
  return { options, weave };
}

describe(`random welds over the whole of the options (seed ${SEED})`, () => {
  const random = createRandom(SEED);
  const drawn = Array.from({ length: WELDS }, () => draw(random));
  const allowed = drawn.filter(({ options }) => checkOptions(options).length === 0);

  it('are refused only for cells too large for a thin plate', () => {
    const refused = drawn.filter((d) => !allowed.includes(d));
    for (const { options } of refused)
      expect(checkOptions(options).map((p) => [p.code, p.path])).toEqual([['out-of-range', 'cell_mm']]);
    expect(allowed.length).toBeGreaterThan(0.8 * WELDS);
  });

  it('close the books: mass to 1e-9, energy to 1e-4, every height finite', () => {
    let arcs = 0;
    for (const { options, weave } of allowed) {
      const sim = createSimulation(options);
      let left = POSES;
      for (const pose of weaveHand(weave, noFaults())) {
        if (left-- === 0) break;
        sim.step(pose);
      }
      const what = JSON.stringify({ options, weave });
      const { massError, energyError, fed_g } = sim.accounts();
      if (fed_g > 0.1) arcs++;
      expect(massError, what).toBeLessThan(1e-9);
      expect(energyError, what).toBeLessThan(1e-4);
      expect(sim.surface().height_mm.every(Number.isFinite), what).toBe(true);
    }
    // A wire that never finds the joint proves nothing.
    expect(arcs).toBeGreaterThan(0.8 * allowed.length);
  });
});

describe('cells against thin plates', () => {
  const at = (plate_mm: number, cell_mm: number): SimulationOptions => {
    const random = createRandom(1);
    const { options } = draw(random);
    return { ...options, joint: { ...options.joint, plateA_mm: 6, plateB_mm: plate_mm, gap_mm: 0 }, cell_mm };
  };
  it.each([
    [2, 1.25, '0.375 to 1.24 mm with a plate of 2 mm'],
    [2, 1.5, '0.375 to 1.24 mm with a plate of 2 mm'],
    [2.4, 1.5, '0.375 to 1.49 mm with a plate of 2.4 mm'],
  ])('a plate of %d mm refuses cells of %d mm and names the largest that will do', (plate, cell, says) => {
    expect(() => createSimulation(at(plate, cell))).toThrow(says);
  });
  it.each([
    [2, 1.24],
    [2.4, 1.49],
    [2.5, 1.5],
  ])('a plate of %d mm welds in cells of %d mm, the largest named', (plate, cell) => {
    const sim = createSimulation(at(plate, cell));
    for (const pose of [...weaveHand({ ...defaultWeave(), start_mm: 3, length_mm: 10 })].slice(0, 100)) sim.step(pose);
    expect(sim.accounts().energyError).toBeLessThan(1e-4);
  });
});

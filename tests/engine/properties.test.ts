import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  checkOptions,
  createSimulation,
  defaultOptions,
  defaultWeave,
  EngineError,
  firstDivergence,
  type Pose,
  weaveHand,
} from '../../engine/index.ts';
import { optionsOf } from '../support/weld.ts';

/** Numbers a broken device or a hostile file may send. */
const hostile = fc.oneof(
  fc.double({ noDefaultInfinity: false }),
  fc.constantFrom(0, -0, 1e308, -1e308, Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 5e-324),
  fc.double({ min: -60, max: 160, noNaN: true }),
);

const pose = fc.record({
  u_mm: hostile,
  y_mm: hostile,
  tipToWork_mm: hostile,
  workAngle_deg: hostile,
  travelAngle_deg: hostile,
  trigger: fc.boolean(),
}) as fc.Arbitrary<Pose>;

describe('hostile input', () => {
  it('(seed 20260107) any pose is refused by name or leaves the attempt finite with closed accounts', () => {
    const options = optionsOf({ joint: { length_mm: 20 }, cell_mm: 1 });
    fc.assert(
      fc.property(fc.array(pose, { minLength: 5, maxLength: 60 }), (list) => {
        const sim = createSimulation(options);
        for (const p of list) {
          try {
            const trace = sim.step(p);
            for (const value of Object.values(trace))
              if (typeof value === 'number' && !Number.isFinite(value)) return false;
          } catch (error) {
            if (!(error instanceof EngineError) || error.code !== 'bad-pose') throw error;
          }
        }
        const a = sim.accounts();
        return a.massError < 1e-9 && a.energyError < 1e-3;
      }),
      { seed: 20260107, numRuns: 60 },
    );
  });

  it('(seed 20260108) any settings are refused with a path and a range, or weld', () => {
    const any = fc.oneof(hostile, fc.string({ maxLength: 8 }), fc.constant(null), fc.boolean(), fc.constant(undefined));
    fc.assert(
      fc.property(
        fc.dictionary(fc.constantFrom(...Object.keys(defaultOptions().joint), 'colour'), any),
        fc.dictionary(fc.constantFrom(...Object.keys(defaultOptions().process), 'mode'), any),
        any,
        (joint, process, cell) => {
          const o = defaultOptions();
          const options = {
            joint: { ...o.joint, length_mm: 20, ...joint },
            process: { ...o.process, ...process },
            cell_mm: typeof cell === 'number' ? cell : 1,
          } as typeof o;
          const problems = checkOptions(options);
          for (const p of problems) expect(p.allowed.length).toBeGreaterThan(3);
          if (problems.length > 0) {
            expect(() => createSimulation(options)).toThrow(EngineError);
          } else {
            const sim = createSimulation(options);
            for (let n = 0; n < 5; n++)
              sim.step({ u_mm: 0, y_mm: 10, tipToWork_mm: 12, workAngle_deg: 45, travelAngle_deg: 8, trigger: true });
            expect(sim.accounts().energyError).toBeLessThan(1e-3);
          }
        },
      ),
      { seed: 20260108, numRuns: 150 },
    );
  });
});

describe('first divergence', () => {
  const poses = (): Pose[] => [...weaveHand({ ...defaultWeave(), length_mm: 1 })].slice(0, 60);

  it('says nothing of equal attempts, whichever kernel', () => {
    const options = optionsOf({ joint: { length_mm: 20 }, cell_mm: 1 });
    const a = createSimulation(options, { kernel: 'simd' });
    const b = createSimulation(options, { kernel: 'reference' });
    expect(firstDivergence(a, b, poses()).step).toBeNull();
  });

  it('names the pose and the field where two attempts part', () => {
    const options = optionsOf({ joint: { length_mm: 20 }, cell_mm: 1 });
    const a = createSimulation(options);
    const b = createSimulation(options);
    const list = poses();
    for (const p of list.slice(0, 20)) {
      a.step(p);
      b.step(p);
    }
    b.step({ ...list[20]!, u_mm: list[20]!.u_mm + 0.01 });
    a.step(list[20]!);
    const found = firstDivergence(a, b, list.slice(21));
    expect(found.step).toBe(22);
    expect(found.field).not.toBeNull();
    expect(found.a).not.toBe(found.b);
  });
});

describe('window', () => {
  it('coarse lengths change the bead and the heat by less than the mesh does', () => {
    const options = optionsOf({ joint: { length_mm: 70, plateWidth_mm: 40 }, cell_mm: 1 });
    const fine = createSimulation(options, { fineEverywhere: true });
    const windowed = createSimulation(options);
    for (const p of weaveHand({ ...defaultWeave(), length_mm: 60 })) {
      fine.step(p);
      windowed.step(p);
    }
    const a = fine.surface();
    const b = windowed.surface();
    let sumHeight = 0;
    let sumTemp = 0;
    let worstTemp = 0;
    for (let i = 0; i < a.height_mm.length; i++) {
      const off_K = Math.abs(a.temp_C[i]! - b.temp_C[i]!);
      sumHeight += (a.height_mm[i]! - b.height_mm[i]!) ** 2;
      sumTemp += off_K ** 2;
      worstTemp = Math.max(worstTemp, off_K);
    }
    const count = a.height_mm.length;
    expect(Math.sqrt(sumHeight / count)).toBeLessThan(0.1);
    // What DEVELOPERS.md says of it: 8 K (rms), 45 K at worst, between metal at some 600 °C and the plate beside it.
    expect(Math.sqrt(sumTemp / count)).toBeLessThan(10);
    expect(worstTemp).toBeLessThan(50);
    const strips = [fine.rootStrip(), windowed.rootStrip()];
    const mean = (i: number): number => {
      let sum = 0;
      let n = 0;
      strips[i]!.y_mm.forEach((y, k) => {
        if (y < 20 || y > 55) return;
        sum += strips[i]!.depthB_mm[k]!;
        n++;
      });
      return sum / n;
    };
    expect(Math.abs(mean(0) - mean(1))).toBeLessThan(0.1);
  });
});

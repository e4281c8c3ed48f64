import { describe, expect, it } from 'vitest';
import { createRandom, createSimulation, EngineError, type Pose, type Simulation } from '../../engine/index.ts';
import { share } from '../support/share.ts';
import { optionsOf, type WeldCase, weld } from '../support/weld.ts';

const short: WeldCase = { joint: { length_mm: 30 }, weave: { length_mm: 20 } };

describe('accounts', () => {
  const cases: [string, WeldCase][] = [
    ['tee weave', {}],
    ['lap with odd thickness', { joint: { kind: 'lap', plateA_mm: 5, plateB_mm: 4.3 } }],
    ['straight and slow, dripping', { weave: { pattern: 'straight', travel_mmps: 1.2 }, process: { feed_mpmin: 7 } }],
    ['gap and warm plates', { joint: { gap_mm: 1.5, startTemp_C: 200 } }],
  ];
  it.each(share(cases, 1))('close within 0.1 percent: %s', (_name, c) => {
    const a = weld({ ...c, joint: { length_mm: 34, ...c.joint } }).accounts();
    expect(a.fed_g).toBeGreaterThan(1);
    expect(a.massError).toBeLessThan(1e-9);
    expect(a.energyError).toBeLessThan(1e-3);
  });
});

describe('symmetry', () => {
  it.each(share([6.7, 6, 8], 1))(
    'a mirrored hand on the symmetric joint of %d mm gives the mirrored bead, bit for bit',
    (plate) => {
      // Fine everywhere: sums over coarse tiles round differently on the two sides. Whole cells through the plate, and a row left over.
      const c = {
        joint: { kind: 'corner' as const, length_mm: 30, plateA_mm: plate, plateB_mm: plate },
        fineEverywhere: true,
      };
      const a = weld({ ...c, weave: { length_mm: 18, firstToe: 'A', pauseA_s: 0.1, pauseB_s: 0.35 } }).surface();
      const b = weld({ ...c, weave: { length_mm: 18, firstToe: 'B', pauseA_s: 0.35, pauseB_s: 0.1 } }).surface();
      let lopsided = 0;
      for (let c = 0; c < a.nu; c++) {
        for (let j = 0; j < a.ny; j++) {
          const i = c * a.ny + j;
          const m = (a.nu - 1 - c) * a.ny + j;
          expect(b.height_mm[m]).toBe(a.height_mm[i]);
          lopsided = Math.max(lopsided, Math.abs(a.height_mm[m]! - a.height_mm[i]!));
        }
      }
      // The hand was lopsided, so the bead is: the equality above compares something.
      expect(lopsided).toBeGreaterThan(0.2);
    },
  );
});

describe('height on the joint', () => {
  it('a strike stands the same puddle wherever on the joint it is struck', () => {
    const crest = (y: number): number => {
      const sim = createSimulation(optionsOf({ joint: { length_mm: 150 }, cell_mm: 1 }));
      const pose: Pose = { u_mm: 0, y_mm: y, tipToWork_mm: 12, workAngle_deg: 45, travelAngle_deg: 8, trigger: true };
      for (let n = 0; n < 100; n++) sim.step(pose);
      return Math.max(...sim.section(y).w_mm.slice(8, -8));
    };
    const low = crest(30);
    expect(low).toBeGreaterThan(3);
    expect(crest(80)).toBeCloseTo(low, 1);
    expect(crest(120)).toBeCloseTo(low, 1);
  });
});

describe('rest', () => {
  it('a still cold plate stays cold and whole', () => {
    const sim = createSimulation(optionsOf(short));
    const before = sim.surface().height_mm.slice();
    const pose: Pose = { u_mm: 0, y_mm: 10, tipToWork_mm: 12, workAngle_deg: 45, travelAngle_deg: 0, trigger: false };
    for (let n = 0; n < 300; n++) sim.step(pose);
    const view = sim.surface();
    expect(view.height_mm).toEqual(before);
    expect(Math.max(...view.temp_C)).toBeCloseTo(20, 3);
    expect(sim.accounts().fed_g).toBe(0);
  });

  it('hot metal left alone only cools', () => {
    const sim = weld(short);
    const hot = Math.max(...sim.surface().temp_C);
    const pose: Pose = { u_mm: 0, y_mm: 10, tipToWork_mm: 12, workAngle_deg: 45, travelAngle_deg: 0, trigger: false };
    for (let n = 0; n < 1000; n++) sim.step(pose);
    expect(Math.max(...sim.surface().temp_C)).toBeLessThan(hot);
    expect(Math.min(...sim.surface().temp_C)).toBeGreaterThan(20);
  });
});

describe('hostile hands', () => {
  const modes = ['still', 'scribble', 'teleport', 'ends', 'twice', 'down'] as const;
  it.each(modes.map((mode, i) => [mode, 7 + i] as const))('%s (seed %i): finite, accounts closed', (mode, seed) => {
    const random = createRandom(seed);
    const sim = createSimulation(optionsOf({ joint: { length_mm: 30, plateB_mm: 3 }, cell_mm: 1 }));
    let u = 0;
    let y = 10;
    for (let n = 0; n < 900; n++) {
      if (mode === 'scribble') {
        u += (random.next() - 0.5) * 3;
        y += (random.next() - 0.5) * 3;
      } else if (mode === 'teleport') {
        u = (random.next() - 0.5) * 2e9;
        y = (random.next() - 0.5) * 120;
      } else if (mode === 'ends') y = n < 450 ? 0 : 30;
      else if (mode === 'twice') y = 4 + (n % 450) * 0.05;
      else if (mode === 'down') y = 28 - n * 0.03;
      const trace = sim.step({
        u_mm: u,
        y_mm: y,
        tipToWork_mm: random.next() * 60 - 10,
        workAngle_deg: random.next() * 200 - 50,
        travelAngle_deg: random.next() * 300 - 150,
        trigger: random.next() < 0.97,
      });
      for (const value of Object.values(trace))
        if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
    }
    const a = sim.accounts();
    expect(a.massError).toBeLessThan(1e-9);
    expect(a.energyError).toBeLessThan(1e-3);
    for (const t of sim.surface().temp_C) expect(t).toBeLessThan(2900);
  });

  let welded: Simulation | null = null;
  it.each([
    ['u_mm', Number.NaN],
    ['y_mm', Number.POSITIVE_INFINITY],
    ['tipToWork_mm', Number.NaN],
  ] as const)('refuses %s = %s by name and stays as it was', (field, value) => {
    welded ??= weld(short);
    const sim = welded;
    const before = sim.hash();
    const pose = { u_mm: 0, y_mm: 5, tipToWork_mm: 12, workAngle_deg: 45, travelAngle_deg: 0, trigger: true };
    let caught: unknown;
    try {
      sim.step({ ...pose, [field]: value });
    } catch (error) {
      caught = error;
    }
    expect(caught).toBeInstanceOf(EngineError);
    expect((caught as EngineError).path).toBe(`pose.${field}`);
    expect(sim.hash()).toBe(before);
  });

  it('refuses settings out of range, naming field, finding and range', () => {
    expect(() => createSimulation(optionsOf({ joint: { plateA_mm: 0.5 } }))).toThrow(
      'joint.plateA_mm: found 0.5, allowed is 2 to 20 mm',
    );
    expect(() => createSimulation(optionsOf({ process: { volts_V: Number.NaN } }))).toThrow(
      'process.volts_V: found NaN',
    );
  });
});

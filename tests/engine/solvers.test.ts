import { describe, expect, it } from 'vitest';
import { createHeatPiece, EngineError, type HeatCase, type SurfaceCase, settleSurface } from '../../engine/index.ts';

/** The two solvers on their own: their door, their accounts, and that they are the engine's own. Their answers: tests/reference. */

const bar: HeatCase = {
  piece: { kind: 'block', width_mm: 12, depth_mm: 9, length_mm: 15 },
  cell_mm: 0.75,
  material: { kind: 'steel' },
  start_C: 20,
  sources: [{ faces: ['b+'], power_W: 900, radius_mm: 1.5, path: (t) => ({ a_mm: 6, b_mm: 0, y_mm: 4 + 3 * t }) }],
};

function refusal(run: () => unknown): EngineError {
  try {
    run();
  } catch (error) {
    if (error instanceof EngineError) return error;
    throw error;
  }
  throw new Error('nothing was refused');
}

describe('heat on its own', () => {
  it('closes its account with sources, held faces and losses', () => {
    const piece = createHeatPiece({
      ...bar,
      held: [
        { face: 'a-', temp_C: 300 },
        { face: 'y+', temp_C: 20 },
      ],
      losses: { ambient_C: 20, emissivity: 0.7, convection_Wpm2K: 20 },
    });
    piece.run(2);
    const account = piece.account();
    expect(account.put_J).toBeCloseTo(900 * piece.time_s, 6);
    expect(account.lost_J).toBeGreaterThan(1);
    expect(Math.abs(account.held_J)).toBeGreaterThan(1);
    expect(account.error).toBeLessThan(1e-6);
  });

  it('puts in all of a source that hangs over the edge, none of one that is off or off the piece', () => {
    const at = (a: number, y: number): HeatCase => ({
      ...bar,
      sources: [{ faces: ['b+'], power_W: 500, radius_mm: 2, path: () => ({ a_mm: a, b_mm: 0, y_mm: y }) }],
    });
    for (const [a, y, share] of [
      [0, 0, 1],
      [12, 7, 1],
      [6, 200, 0],
    ] as const) {
      const piece = createHeatPiece(at(a, y));
      piece.run(0.2);
      expect(piece.account().put_J).toBeCloseTo(share * 500 * piece.time_s, 6);
    }
  });

  it('gives the same bits on both kernels', () => {
    const run = (kernel: 'reference' | 'simd'): ReturnType<typeof createHeatPiece> => {
      const piece = createHeatPiece({ ...bar, kernel });
      expect(piece.kernel).toBe(kernel);
      piece.run(1);
      return piece;
    };
    const one = run('reference').field();
    const two = run('simd').field();
    expect(two.temp_C).toEqual(one.temp_C);
    expect(two.peak_C).toEqual(one.peak_C);
  });

  it.each(['tee', 'lap', 'corner'] as const)('runs on a %s, and heats both its faces alike at the root', (kind) => {
    const piece = createHeatPiece({
      piece: { kind, plateA_mm: 6, plateB_mm: 6, plateWidth_mm: 60, length_mm: 24, gap_mm: 0 },
      cell_mm: 1,
      material: { kind: 'steel' },
      start_C: ({ a_mm }) => (a_mm > 0 ? 100 : 20),
      sources: [{ faces: ['A', 'B'], power_W: 1500, radius_mm: 2, path: () => ({ a_mm: 0, b_mm: 0, y_mm: 12 }) }],
      losses: { ambient_C: 20, emissivity: 0.5, convection_Wpm2K: 20, sink_WpmmK: 0.0005 },
    });
    piece.run(1);
    const account = piece.account();
    expect(account.put_J).toBeCloseTo(1500 * piece.time_s, 6);
    expect(account.error).toBeLessThan(1e-6);
    expect(piece.peak({ a_mm: 1, b_mm: -0.5, y_mm: 12 })).toBeGreaterThan(400);
    expect(piece.peak({ a_mm: -0.5, b_mm: 1, y_mm: 12 })).toBeGreaterThan(300);
    expect(piece.temperature({ a_mm: 20, b_mm: -3, y_mm: 2 })).toBeCloseTo(100, 0);
    expect(piece.field().temp_C.some(Number.isNaN)).toBe(true);
  });

  it('joins A and B of a corner as mirror images', () => {
    const piece = createHeatPiece({
      piece: { kind: 'corner', plateA_mm: 6, plateB_mm: 6, plateWidth_mm: 60, length_mm: 24, gap_mm: 0 },
      cell_mm: 1,
      material: { kind: 'steel' },
      start_C: 20,
      sources: [{ faces: ['A', 'B'], power_W: 1500, radius_mm: 2, path: () => ({ a_mm: 0, b_mm: 0, y_mm: 12 }) }],
    });
    piece.run(1);
    for (const [along, into] of [
      [0.5, -0.5],
      [3.5, -2.5],
      [20, -3],
    ] as const) {
      const a = piece.temperature({ a_mm: along, b_mm: into, y_mm: 10 });
      expect(piece.temperature({ a_mm: into, b_mm: along, y_mm: 10 })).toBeCloseTo(a, 3);
    }
  });

  it('grows its cells beyond the even part and still fills the block exactly', () => {
    const piece = createHeatPiece({
      ...bar,
      piece: { kind: 'block', width_mm: 50, depth_mm: 40, length_mm: 6, even: { a_mm: [10, 16], b_mm: [-6, 0] } },
    });
    const { area_mm2, a_mm, b_mm } = piece.field();
    expect(area_mm2.reduce((sum, a) => sum + a, 0)).toBeCloseTo(2000, 6);
    expect(Math.min(...a_mm)).toBeGreaterThan(0);
    expect(Math.max(...b_mm)).toBeCloseTo(-0.375, 9);
    expect(piece.temperature({ a_mm: 49, b_mm: -39, y_mm: 3 })).toBeCloseTo(20, 4);
  });

  it('refuses what it cannot compute, naming field, finding and what is allowed', () => {
    const cases: [string, HeatCase][] = [
      ['cell_mm', { ...bar, cell_mm: 0 }],
      ['piece.depth_mm', { ...bar, piece: { kind: 'block', width_mm: 12, depth_mm: Number.NaN, length_mm: 15 } }],
      [
        'piece.even.a_mm',
        {
          ...bar,
          piece: {
            ...bar.piece,
            kind: 'block',
            width_mm: 12,
            depth_mm: 9,
            length_mm: 15,
            even: { a_mm: [5, 4], b_mm: [-3, 0] },
          },
        },
      ],
      ['sources[0].radius_mm', { ...bar, sources: [{ ...bar.sources![0]!, radius_mm: -1 }] }],
      ['sources[0].faces', { ...bar, sources: [{ ...bar.sources![0]!, faces: ['A'] }] }],
      ['material.melting.liquidus_C', { ...bar, material: melting(1500, 1500) }],
      ['material.melting.solidus_C', { ...bar, material: melting(0, 5) }],
      ['step_s', { ...bar, step_s: 1 }],
      ['held[0].temp_C', { ...bar, held: [{ face: 'a-', temp_C: Number.POSITIVE_INFINITY }] }],
    ];
    for (const [path, heatCase] of cases) {
      const error = refusal(() => createHeatPiece(heatCase));
      expect(error.path).toBe(path);
      expect(error.message).toContain('allowed is');
    }
    const hole = refusal(() => createHeatPiece({ ...bar, start_C: ({ a_mm }) => (a_mm > 6 ? Number.NaN : 20) }));
    expect(hole.path).toContain('start_C');
    expect(refusal(() => createHeatPiece(bar).putHeat({ a_mm: -1, b_mm: 0, y_mm: 0 }, 5)).path).toBe('at');
    const joint = { kind: 'tee', plateA_mm: 1, plateB_mm: 6, plateWidth_mm: 60, length_mm: 24, gap_mm: 0 } as const;
    expect(refusal(() => createHeatPiece({ ...bar, piece: joint, sources: [] })).path).toBe('joint.plateA_mm');
  });
});

function melting(solidus_C: number, liquidus_C: number): HeatCase['material'] {
  return {
    kind: 'constant',
    conductivity_WpmK: 30,
    specificHeat_JpkgK: 700,
    density_kgpm3: 7300,
    melting: { solidus_C, liquidus_C, latent_Jpkg: 270e3 },
  };
}

const pool: SurfaceCase = {
  nu: 10,
  ny: 12,
  du_mm: 0.53,
  dy_mm: 0.75,
  bottom_mm: 0,
  edge: () => ({ height_mm: 0 }),
  tension_NpM: 1.2,
  density_kgpm3: 7000,
  volume_mm3: 30,
};

describe('surface on its own', () => {
  const volumeOf = (height: Float64Array): number =>
    height.reduce((sum, h) => sum + (Number.isNaN(h) ? 0 : h), 0) * pool.du_mm * pool.dy_mm;

  it('keeps the volume, whatever pulls at it', () => {
    for (const gravity_mps2 of [
      { u: 0, y: 0, w: 0 },
      { u: 0, y: -9.81, w: 0 },
      { u: 4, y: 0, w: -9.81 },
      { u: 0, y: 0, w: 9.81 },
    ]) {
      const face = settleSurface({ ...pool, gravity_mps2, pressure_Pa: (u, y) => 40 * Math.exp(-u * u - y * y) });
      expect(face.converged).toBe(true);
      expect(volumeOf(face.height_mm)).toBeCloseTo(30, 6);
    }
  });

  it('sags down the way gravity points, and dents where it is pressed', () => {
    const still = settleSurface({ ...pool, gravity_mps2: { u: 0, y: 0, w: 0 } });
    const sagged = settleSurface(pool);
    const low = 5 * pool.ny + 2;
    const high = 5 * pool.ny + 9;
    expect(sagged.height_mm[low]!).toBeGreaterThan(still.height_mm[low]! + 0.02);
    expect(sagged.height_mm[high]!).toBeLessThan(still.height_mm[high]! - 0.02);
    const pressed = settleSurface({
      ...pool,
      gravity_mps2: { u: 0, y: 0, w: 0 },
      pressure_Pa: Float64Array.from({ length: 120 }, (_, i) => (i === low ? 300 : 0)),
    });
    expect(pressed.height_mm[low]!).toBeLessThan(still.height_mm[low]!);
  });

  it('starts from the same answer far up the joint: only differences of head count', () => {
    const near = settleSurface(pool);
    const far = settleSurface({ ...pool, y0_mm: 140 });
    expect(far.converged).toBe(true);
    for (let i = 0; i < 120; i++) expect(far.height_mm[i]!).toBeCloseTo(near.height_mm[i]!, 5);
    expect(far.pressure_Pa - near.pressure_Pa).toBeCloseTo(7000 * 9.81 * 0.14, 2);
  });

  it('never goes below its bottom', () => {
    const bottom = Float64Array.from({ length: 120 }, (_, i) => (i % 12 < 4 ? 0.9 : 0));
    const face = settleSurface({ ...pool, bottom_mm: bottom, volume_mm3: 6 });
    for (let i = 0; i < 120; i++) expect(face.height_mm[i]!).toBeGreaterThanOrEqual(bottom[i]!);
    expect(face.height_mm.some((h, i) => h === bottom[i])).toBe(true);
  });

  it('leaves dry columns out and pins the liquid at their height', () => {
    const liquid = Uint8Array.from({ length: 120 }, (_, i) => (i % 12 > 2 && i % 12 < 9 ? 1 : 0));
    const face = settleSurface({
      ...pool,
      liquid,
      edge: 1,
      bottom_mm: 0,
      volume_mm3: 24,
      gravity_mps2: { u: 0, y: 0, w: 0 },
    });
    expect(face.converged).toBe(true);
    expect(Number.isNaN(face.height_mm[0]!)).toBe(true);
    // 24 mm³ over 10 x 6 columns are 1.006 mm: hardly more than the edges' height.
    expect(face.height_mm[5 * 12 + 5]!).toBeGreaterThan(1);
    expect(face.height_mm[5 * 12 + 5]!).toBeLessThan(1.03);
  });

  it('says when it was not given sweeps enough', () => {
    const face = settleSurface({ ...pool, tolerance_mm: 1e-12, mostSweeps: 64 });
    expect(face.converged).toBe(false);
    expect(face.residual_mm).toBeGreaterThan(1e-12);
    expect(face.sweeps).toBe(64);
  });

  it('refuses what it cannot compute', () => {
    const cases: [string, SurfaceCase][] = [
      ['nu', { ...pool, nu: 0 }],
      ['tension_NpM', { ...pool, tension_NpM: -1 }],
      ['volume_mm3', { ...pool, volume_mm3: Number.NaN }],
      ['bottom_mm', { ...pool, bottom_mm: new Float64Array(3) }],
      ['liquid', { ...pool, liquid: new Uint8Array(120) }],
      ['edge(0, 0, 0).reach_mm', { ...pool, edge: () => ({ height_mm: 0, reach_mm: 0 }) }],
    ];
    for (const [path, surfaceCase] of cases) expect(refusal(() => settleSurface(surfaceCase)).path).toBe(path);
  });
});

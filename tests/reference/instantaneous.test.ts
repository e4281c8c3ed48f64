import { describe, it } from 'vitest';
import { type BlockPiece, createHeatPiece, type Place } from '../../engine/index.ts';
import { constantMaterial } from './cases/constant.ts';
import { lineSource, KOU_STEEL as metal, planeSource, pointInBlock, pointSource } from './formulas/heat.ts';
import { openReport } from './report.ts';

const report = openReport('instantaneous', 'Heat set free at once');
report.note(
  'All of the heat starts in one cell of 0.75 mm (working size), 2 s before the reading; λ 41 W/(m K), ρc 4.5 MJ/(m³ K). Distances are whole numbers of cells.',
);
const SOURCE = 'Carslaw & Jaeger, Conduction of Heat in Solids, ch. X (memory)';
const H = 0.75;
const TIME = 2;
const AFAR = [0, 4, 8];

function piece(across: number, down: number, along: number): BlockPiece {
  return { kind: 'block', width_mm: across * H, depth_mm: down * H, length_mm: along * H };
}

function free(block: BlockPiece, at: Place, joules: number): ReturnType<typeof createHeatPiece> {
  const heat = createHeatPiece({ piece: block, cell_mm: H, material: constantMaterial(metal), start_C: 20 });
  heat.putHeat(at, joules);
  heat.run(TIME);
  return heat;
}

describe('plane source, 100 J/mm²', () => {
  const joules = 100 * H * H;
  it.each([
    ['across (a)', piece(81, 1, 1), (x: number): Place => ({ a_mm: 40.5 * H + x, b_mm: -H / 2, y_mm: H / 2 })],
    ['through (b)', piece(1, 81, 1), (x: number): Place => ({ a_mm: H / 2, b_mm: -40.5 * H - x, y_mm: H / 2 })],
    ['along (y)', piece(1, 1, 81), (x: number): Place => ({ a_mm: H / 2, b_mm: -H / 2, y_mm: 40.5 * H + x })],
  ])('%s', (name, block, place) => {
    const heat = free(block, place(0), joules);
    for (const n of AFAR)
      report.check({
        check: `plane source, spreading ${name}, ${n * H} mm off`,
        source: SOURCE,
        unit: 'K',
        expected: planeSource(metal, 100, n * H, heat.time_s),
        got: heat.temperature(place(n * H)) - 20,
        tolerance: { share: 0.01 },
      });
  });
});

describe('line source, 100 J/mm', () => {
  it.each([
    [
      'along y',
      piece(81, 81, 1),
      (x: number, z: number): Place => ({ a_mm: 40.5 * H + x, b_mm: -40.5 * H - z, y_mm: H / 2 }),
    ],
    [
      'along b',
      piece(81, 1, 81),
      (x: number, z: number): Place => ({ a_mm: 40.5 * H + x, b_mm: -H / 2, y_mm: 40.5 * H + z }),
    ],
  ])('%s', (name, block, place) => {
    const heat = free(block, place(0, 0), 100 * H);
    for (const n of AFAR)
      report.check({
        check: `line source ${name}, ${(n * H).toFixed(2)} mm off on the diagonal`,
        source: SOURCE,
        unit: 'K',
        expected: lineSource(metal, 100, n * H * Math.SQRT2, heat.time_s),
        got: heat.temperature(place(n * H, n * H)) - 20,
        tolerance: { share: 0.01 },
      });
  });
});

describe('point source, 1000 J', () => {
  const middle = 24.5 * H;
  it('inside', () => {
    const heat = free(piece(49, 49, 49), { a_mm: middle, b_mm: -middle, y_mm: middle }, 1000);
    for (const n of AFAR)
      report.check({
        check: `point source, ${n * H} mm off`,
        source: SOURCE,
        unit: 'K',
        expected: pointSource(metal, 1000, n * H, heat.time_s),
        got: heat.temperature({ a_mm: middle + n * H, b_mm: -middle, y_mm: middle }) - 20,
        tolerance: { share: 0.01 },
      });
  });

  it('on the surface: twice as hot, spreading below it', () => {
    const heat = free(piece(49, 33, 49), { a_mm: middle, b_mm: 0, y_mm: middle }, 1000);
    for (const n of [4, 8])
      report.check({
        check: `point source on the upper face, ${n * H} mm below it`,
        source: SOURCE,
        unit: 'K',
        expected: 2 * pointSource(metal, 1000, n * H, heat.time_s),
        got: heat.temperature({ a_mm: middle, b_mm: -n * H, y_mm: middle }) - 20,
        tolerance: { share: 0.01 },
      });
  });

  it('in a small insulated block: images at every face', () => {
    const block = piece(17, 13, 21);
    const from = { a_mm: 6.5 * H, b_mm: -4.5 * H, y_mm: 8.5 * H };
    const heat = free(block, from, 400);
    const size = { width: block.width_mm, depth: block.depth_mm, length: block.length_mm };
    for (const [a, b, y] of [
      [6.5, 4.5, 8.5],
      [0.5, 0.5, 0.5],
      [16.5, 12.5, 20.5],
    ] as const)
      report.check({
        check: `point in an insulated block 12.75 x 9.75 x 15.75 mm, read at (${a * H}, ${b * H}, ${y * H})`,
        source: `${SOURCE}, images`,
        unit: 'K',
        expected: pointInBlock(
          metal,
          400,
          size,
          [from.a_mm, -from.b_mm, from.y_mm],
          [a * H, b * H, y * H],
          heat.time_s,
        ),
        got: heat.temperature({ a_mm: a * H, b_mm: -b * H, y_mm: y * H }) - 20,
        tolerance: { share: 0.01 },
      });
  });
});

report.readme();

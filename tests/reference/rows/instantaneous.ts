import { type BlockPiece, createHeatPiece, type HeatPiece, type Place } from '../../../engine/index.ts';
import { constantMaterial } from '../cases/constant.ts';
import { lineSource, KOU_STEEL as metal, planeSource, pointInBlock, pointSource } from '../formulas/heat.ts';
import { once, type Row, type Section } from '../run.ts';

const SOURCE = 'Carslaw & Jaeger, Conduction of Heat in Solids, ch. X (memory)';
const COMMON = { source: SOURCE, unit: 'K', tolerance: { share: 0.01 } } as const;
const H = 0.75;
const TIME = 2;
const AFAR = [0, 4, 8];

function piece(across: number, down: number, along: number): BlockPiece {
  return { kind: 'block', width_mm: across * H, depth_mm: down * H, length_mm: along * H };
}

/** Sets heat free in one cell and lets it spread, once. */
function free(block: BlockPiece, at: Place, joules: number): () => HeatPiece {
  return once(() => {
    const heat = createHeatPiece({ piece: block, cell_mm: H, material: constantMaterial(metal), start_C: 20 });
    heat.putHeat(at, joules);
    heat.run(TIME);
    return heat;
  });
}

const PLANES: readonly (readonly [string, BlockPiece, (x: number) => Place])[] = [
  ['across (a)', piece(81, 1, 1), (x) => ({ a_mm: 40.5 * H + x, b_mm: -H / 2, y_mm: H / 2 })],
  ['through (b)', piece(1, 81, 1), (x) => ({ a_mm: H / 2, b_mm: -40.5 * H - x, y_mm: H / 2 })],
  ['along (y)', piece(1, 1, 81), (x) => ({ a_mm: H / 2, b_mm: -H / 2, y_mm: 40.5 * H + x })],
];
const LINES: readonly (readonly [string, BlockPiece, (x: number, z: number) => Place])[] = [
  ['along y', piece(81, 81, 1), (x, z) => ({ a_mm: 40.5 * H + x, b_mm: -40.5 * H - z, y_mm: H / 2 })],
  ['along b', piece(81, 1, 81), (x, z) => ({ a_mm: 40.5 * H + x, b_mm: -H / 2, y_mm: 40.5 * H + z })],
];

function points(): Row[] {
  const middle = 24.5 * H;
  const inside = free(piece(49, 49, 49), { a_mm: middle, b_mm: -middle, y_mm: middle }, 1000);
  const onTop = free(piece(49, 33, 49), { a_mm: middle, b_mm: 0, y_mm: middle }, 1000);
  const block = piece(17, 13, 21);
  const from = { a_mm: 6.5 * H, b_mm: -4.5 * H, y_mm: 8.5 * H };
  const small = free(block, from, 400);
  const size = { width: block.width_mm, depth: block.depth_mm, length: block.length_mm };
  const READ = [
    [6.5, 4.5, 8.5],
    [0.5, 0.5, 0.5],
    [16.5, 12.5, 20.5],
  ] as const;
  return [
    ...AFAR.map((n) => ({
      ...COMMON,
      check: `point source, ${n * H} mm off`,
      expected: () => pointSource(metal, 1000, n * H, inside().time_s),
      got: () => inside().temperature({ a_mm: middle + n * H, b_mm: -middle, y_mm: middle }) - 20,
    })),
    // On the surface: twice as hot, spreading below it.
    ...[4, 8].map((n) => ({
      ...COMMON,
      check: `point source on the upper face, ${n * H} mm below it`,
      expected: () => 2 * pointSource(metal, 1000, n * H, onTop().time_s),
      got: () => onTop().temperature({ a_mm: middle, b_mm: -n * H, y_mm: middle }) - 20,
    })),
    ...READ.map(([a, b, y]) => ({
      ...COMMON,
      check: `point in an insulated block 12.75 x 9.75 x 15.75 mm, read at (${a * H}, ${b * H}, ${y * H})`,
      source: `${SOURCE}, images`,
      expected: () =>
        pointInBlock(metal, 400, size, [from.a_mm, -from.b_mm, from.y_mm], [a * H, b * H, y * H], small().time_s),
      got: () => small().temperature({ a_mm: a * H, b_mm: -b * H, y_mm: y * H }) - 20,
    })),
  ];
}

export const instantaneous: Section = {
  name: 'instantaneous',
  title: 'Heat set free at once',
  note: 'All of the heat starts in one cell of 0.75 mm (working size), 2 s before the reading; λ 41 W/(m K), ρc 4.5 MJ/(m³ K). Distances are whole numbers of cells.',
  rows: [
    // 100 J/mm² in a plane, 100 J/mm in a line, 1000 J in a point.
    ...PLANES.flatMap(([name, block, place]) => {
      const heat = free(block, place(0), 100 * H * H);
      return AFAR.map((n) => ({
        ...COMMON,
        check: `plane source, spreading ${name}, ${n * H} mm off`,
        expected: () => planeSource(metal, 100, n * H, heat().time_s),
        got: () => heat().temperature(place(n * H)) - 20,
      }));
    }),
    ...LINES.flatMap(([name, block, place]) => {
      const heat = free(block, place(0, 0), 100 * H);
      return AFAR.map((n) => ({
        ...COMMON,
        check: `line source ${name}, ${(n * H).toFixed(2)} mm off on the diagonal`,
        expected: () => lineSource(metal, 100, n * H * Math.SQRT2, heat().time_s),
        got: () => heat().temperature(place(n * H, n * H)) - 20,
      }));
    }),
    ...points(),
  ],
};

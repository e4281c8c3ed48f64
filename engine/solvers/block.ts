/** A rectangular block as rods: a grid of rectangles in the section, even in a part of it and growing beyond. */
import { PART, RodBuilder } from '../grid/rods.ts';
import { lagrange, nearestFour } from './interpolate.ts';
import type { Patch, PieceMesh, Share } from './mesh.ts';
import type { BlockEnd, BlockFace, BlockPiece } from './types.ts';

const GROWTH = 1.25;
const WIDEST_MM = 4;

/** Borders of cells from `from` to `to`: even between `evenFrom` and `evenTo`, growing outward on both sides. */
function divide(from: number, to: number, evenFrom: number, evenTo: number, cell: number): number[] {
  const below = grow(evenFrom - from, cell).reverse();
  const n = Math.max(1, Math.round((evenTo - evenFrom) / cell));
  const edges = [from];
  let at = from;
  for (const size of below) {
    at += size;
    edges.push(at);
  }
  edges[edges.length - 1] = evenFrom;
  for (let i = 1; i <= n; i++) edges.push(evenFrom + ((evenTo - evenFrom) * i) / n);
  at = evenTo;
  for (const size of grow(to - evenTo, cell)) {
    at += size;
    edges.push(at);
  }
  edges[edges.length - 1] = to;
  return edges;
}

/** Sizes growing outward that fill a length exactly. */
function grow(length: number, cell: number): number[] {
  const sizes: number[] = [];
  let sum = 0;
  let size = cell;
  while (sum < length - 1e-9 * cell) {
    size = Math.min(size * GROWTH, Math.max(WIDEST_MM, cell));
    sizes.push(size);
    sum += size;
  }
  return sizes.map((s) => (s * length) / sum);
}

const middles = (edges: number[]): Float64Array =>
  Float64Array.from({ length: edges.length - 1 }, (_, i) => (edges[i]! + edges[i + 1]!) / 2);

export function buildBlock(piece: BlockPiece, cell: number, held: readonly (BlockFace | BlockEnd)[]): PieceMesh {
  const { width_mm, depth_mm, length_mm } = piece;
  const [aFrom, aTo] = piece.even?.a_mm ?? [0, width_mm];
  const [bFrom, bTo] = piece.even?.b_mm ?? [-depth_mm, 0];
  const aEdges = divide(0, width_mm, aFrom, aTo, cell);
  const bEdges = divide(-depth_mm, 0, bFrom, bTo, cell);
  const aMid = middles(aEdges);
  const bMid = middles(bEdges);
  const na = aMid.length;
  const nb = bMid.length;
  const wide = (i: number): number => aEdges[i + 1]! - aEdges[i]!;
  const tall = (j: number): number => bEdges[j + 1]! - bEdges[j]!;
  const builder = new RodBuilder();
  for (let j = 0; j < nb; j++) for (let i = 0; i < na; i++) builder.add(PART.A, aMid[i]!, bMid[j]!, wide(i) * tall(j));
  for (let j = 0; j < nb; j++) {
    for (let i = 0; i < na; i++) {
      const p = j * na + i;
      if (i + 1 < na) builder.join(p, p + 1, 1, tall(j) / (aMid[i + 1]! - aMid[i]!));
      if (j + 1 < nb) builder.join(p, p + na, 3, wide(i) / (bMid[j + 1]! - bMid[j]!));
    }
  }
  const column = (i: number): Patch[] =>
    Array.from({ length: nb }, (_, j) => ({
      rod: j * na + i,
      from_mm: bEdges[j]!,
      to_mm: bEdges[j + 1]!,
      inside_mm: wide(i) / 2,
    }));
  const row = (j: number): Patch[] =>
    Array.from({ length: na }, (_, i) => ({
      rod: j * na + i,
      from_mm: aEdges[i]!,
      to_mm: aEdges[i + 1]!,
      inside_mm: tall(j) / 2,
    }));
  const faces = new Map<BlockFace, Patch[]>([
    ['a-', column(0)],
    ['a+', column(na - 1)],
    ['b-', row(0)],
    ['b+', row(nb - 1)],
  ]);
  for (const [face, patches] of faces)
    if (!held.includes(face)) for (const p of patches) builder.expose(p.rod, p.to_mm - p.from_mm);
  const ny = Math.max(1, Math.round(length_mm / cell));
  const none = new Int32Array(1);
  return {
    plan: {
      rods: builder.build(),
      ny,
      dy: length_mm / ny,
      nu: 0,
      du: cell / Math.SQRT2,
      long_mm: 0,
      area_mm2: 0,
      base: new Float64Array(0),
      stackStart: none,
      stack: new Int32Array(0),
    },
    fill: new Float64Array(na * nb).fill(1),
    w: new Float64Array(0),
    y0_mm: length_mm / ny / 2,
    faces,
    level: new Map([
      ['a-', 0],
      ['a+', width_mm],
      ['b-', -depth_mm],
      ['b+', 0],
    ]),
    read(a, b) {
      const ia = nearestFour(aMid, a);
      const ib = nearestFour(bMid, b);
      const wa = lagrange(aMid, ia, a);
      const wb = lagrange(bMid, ib, b);
      const shares: Share[] = [];
      wb.forEach((weightB, j) => {
        wa.forEach((weightA, i) => {
          shares.push({ rod: (ib + j) * na + ia + i, weight: weightA * weightB });
        });
      });
      return shares;
    },
    under(a, b) {
      const rods: number[] = [];
      for (const j of holding(bEdges, b)) for (const i of holding(aEdges, a)) rods.push(j * na + i);
      return rods;
    },
  };
}

/** Intervals a coordinate lies in, borders counted to both sides. */
export function holding(edges: ArrayLike<number>, x: number): number[] {
  const near = 1e-9 * (edges[edges.length - 1]! - edges[0]!);
  const out: number[] = [];
  for (let i = 0; i + 1 < edges.length; i++) if (x >= edges[i]! - near && x <= edges[i + 1]! + near) out.push(i);
  return out;
}

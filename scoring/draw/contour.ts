/** Closed outlines of the region of a grid where a value is at or above 0: marching squares, straight between nodes. */

export interface GridPoint {
  /** Column and row, fractional. */
  i: number;
  j: number;
}

/**
 * @param value node value, NaN counts as outside
 * @returns closed rings in grid coordinates, each once round, first point not repeated
 */
export function rings(columns: number, rows: number, value: (i: number, j: number) => number): GridPoint[][] {
  const at = (i: number, j: number): number => {
    if (i < 0 || j < 0 || i >= columns || j >= rows) return -1;
    const v = value(i, j);
    return Number.isNaN(v) ? -1 : v;
  };
  // Segments keyed by the grid edge they start from; a ring is followed from edge to edge.
  const next = new Map<string, { to: string; point: GridPoint }>();
  for (let j = -1; j < rows; j++) {
    for (let i = -1; i < columns; i++) {
      const a = at(i, j);
      const b = at(i + 1, j);
      const c = at(i + 1, j + 1);
      const d = at(i, j + 1);
      const code = (a >= 0 ? 1 : 0) + (b >= 0 ? 2 : 0) + (c >= 0 ? 4 : 0) + (d >= 0 ? 8 : 0);
      // Most squares lie wholly inside or outside.
      if (code === 0 || code === 15) continue;
      const low: Edge = edge(i, j, 'h', a, b);
      const right: Edge = edge(i + 1, j, 'v', b, c);
      const high: Edge = edge(i, j + 1, 'h', d, c);
      const left: Edge = edge(i, j, 'v', a, d);
      for (const [from, to] of segments(code, a + b + c + d, low, right, high, left))
        next.set(from.key, { to: to.key, point: from.point });
    }
  }
  const out: GridPoint[][] = [];
  while (next.size > 0) {
    const start = next.keys().next().value as string;
    const ring: GridPoint[] = [];
    let key = start;
    for (let step = next.get(key); step !== undefined; step = next.get(key)) {
      ring.push(step.point);
      next.delete(key);
      key = step.to;
    }
    if (ring.length > 2) out.push(ring);
  }
  return out;
}

interface Edge {
  key: string;
  point: GridPoint;
}

function edge(i: number, j: number, way: 'h' | 'v', from: number, to: number): Edge {
  const t = from === to ? 0.5 : Math.min(1, Math.max(0, from / (from - to)));
  return { key: `${way}${i},${j}`, point: way === 'h' ? { i: i + t, j } : { i, j: j + t } };
}

/** Segments of one square with the inside on the left; the two saddles go by the square's mean. */
function segments(code: number, sum: number, low: Edge, right: Edge, high: Edge, left: Edge): [Edge, Edge][] {
  switch (code) {
    case 1:
      return [[low, left]];
    case 2:
      return [[right, low]];
    case 3:
      return [[right, left]];
    case 4:
      return [[high, right]];
    case 5:
      return sum >= 0
        ? [
            [low, right],
            [high, left],
          ]
        : [
            [low, left],
            [high, right],
          ];
    case 6:
      return [[high, low]];
    case 7:
      return [[high, left]];
    case 8:
      return [[left, high]];
    case 9:
      return [[low, high]];
    case 10:
      return sum >= 0
        ? [
            [right, high],
            [left, low],
          ]
        : [
            [right, low],
            [left, high],
          ];
    case 11:
      return [[right, high]];
    case 12:
      return [[left, right]];
    case 13:
      return [[low, right]];
    case 14:
      return [[left, low]];
    default:
      return [];
  }
}

/** Mean squares of a crossed table: macros in rows, readers in columns, trials in cells (two-way analysis of variance). */
export interface MeanSquares {
  macros: number;
  readers: number;
  trials: number;
  ofMacros: number;
  ofReaders: number;
  /** Macro by reader; with one trial it is all that is left, and stands for the error too. */
  ofBoth: number;
  /** Within a cell; null with one trial. */
  ofError: number | null;
}

/** @param values macro, reader, trial; every cell with as many trials */
export function meanSquares(values: readonly (readonly (readonly number[])[])[]): MeanSquares {
  const [n, k, r] = [values.length, values[0]!.length, values[0]![0]!.length];
  const cells = values.map((row) => row.map(mean));
  const rows = cells.map(mean);
  const columns = Array.from({ length: k }, (_, j) => mean(cells.map((row) => row[j]!)));
  const all = mean(rows);
  const ofMacros = (k * r * sum(rows.map((x) => (x - all) ** 2))) / (n - 1);
  const ofReaders = (n * r * sum(columns.map((x) => (x - all) ** 2))) / (k - 1);
  const both = cells.flatMap((row, i) => row.map((x, j) => (x - rows[i]! - columns[j]! + all) ** 2));
  const ofBoth = (r * sum(both)) / ((n - 1) * (k - 1));
  const within = values.flatMap((row, i) => row.flatMap((cell, j) => cell.map((x) => (x - cells[i]![j]!) ** 2)));
  return {
    ...{ macros: n, readers: k, trials: r, ofMacros, ofReaders, ofBoth },
    ofError: r === 1 ? null : sum(within) / (n * k * (r - 1)),
  };
}

function sum(xs: readonly number[]): number {
  return xs.reduce((a, b) => a + b, 0);
}

function mean(xs: readonly number[]): number {
  return sum(xs) / xs.length;
}

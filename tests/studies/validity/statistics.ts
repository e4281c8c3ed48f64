/** Ranks from 1, ties shared. */
export function ranks(values: readonly number[]): number[] {
  const order = values.map((v, i) => [v, i] as const).sort((a, b) => a[0] - b[0]);
  const out = new Array<number>(values.length);
  for (let i = 0; i < order.length; ) {
    let j = i;
    while (j + 1 < order.length && order[j + 1]![0] === order[i]![0]) j++;
    for (let k = i; k <= j; k++) out[order[k]![1]] = (i + j) / 2 + 1;
    i = j + 1;
  }
  return out;
}

export function mean(values: readonly number[]): number {
  return values.reduce((a, b) => a + b, 0) / values.length;
}

export function deviation(values: readonly number[]): number {
  const m = mean(values);
  return Math.sqrt(values.reduce((sum, v) => sum + (v - m) ** 2, 0) / Math.max(1, values.length - 1));
}

function pearson(x: readonly number[], y: readonly number[]): number {
  const mx = mean(x);
  const my = mean(y);
  let xy = 0;
  let xx = 0;
  let yy = 0;
  for (let i = 0; i < x.length; i++) {
    xy += (x[i]! - mx) * (y[i]! - my);
    xx += (x[i]! - mx) ** 2;
    yy += (y[i]! - my) ** 2;
  }
  return xx > 0 && yy > 0 ? xy / Math.sqrt(xx * yy) : 0;
}

/** Spearman's rank correlation, ties shared. */
export function spearman(x: readonly number[], y: readonly number[]): number {
  return pearson(ranks(x), ranks(y));
}

/** Chance that one of the good reads higher than one of the bad; ties count half (Mann-Whitney). */
export function auc(good: readonly number[], bad: readonly number[]): number {
  let sum = 0;
  for (const g of good) for (const b of bad) sum += g > b ? 1 : g === b ? 0.5 : 0;
  return sum / (good.length * bad.length);
}

/**
 * Intraclass correlation ICC(1,1) (Shrout and Fleiss 1979, from memory): rows are what is rated, columns are ratings of it with nothing
 * telling the columns apart. NaN without rows.
 */
export function icc1(rows: readonly (readonly number[])[]): number {
  const n = rows.length;
  const k = rows[0]?.length ?? 0;
  const grand = mean(rows.flat());
  const between = (k * rows.reduce((sum, row) => sum + (mean(row) - grand) ** 2, 0)) / (n - 1);
  const within = rows.reduce((sum, row) => sum + row.reduce((s, v) => s + (v - mean(row)) ** 2, 0), 0) / (n * (k - 1));
  return (between - within) / (between + (k - 1) * within);
}

/** ICC(2,1), two ways random, absolute agreement (Shrout and Fleiss 1979, from memory): rows rated, columns raters. */
export function icc2(rows: readonly (readonly number[])[]): number {
  const n = rows.length;
  const k = rows[0]!.length;
  const grand = mean(rows.flat());
  const columns = Array.from({ length: k }, (_, j) => mean(rows.map((row) => row[j]!)));
  const rowsMean = rows.map(mean);
  const msr = (k * rowsMean.reduce((sum, m) => sum + (m - grand) ** 2, 0)) / (n - 1);
  const msc = (n * columns.reduce((sum, m) => sum + (m - grand) ** 2, 0)) / (k - 1);
  let rest = 0;
  for (let i = 0; i < n; i++)
    for (let j = 0; j < k; j++) rest += (rows[i]![j]! - rowsMean[i]! - columns[j]! + grand) ** 2;
  const mse = rest / ((n - 1) * (k - 1));
  return (msr - mse) / (msr + (k - 1) * mse + (k * (msc - mse)) / n);
}

/** Kendall's coefficient of concordance W with correction for ties (from memory): rows rated, columns raters. 1: one order. */
export function kendallW(rows: readonly (readonly number[])[]): number {
  const n = rows.length;
  const m = rows[0]!.length;
  const columns = Array.from({ length: m }, (_, j) => ranks(rows.map((row) => row[j]!)));
  const totals = rows.map((_, i) => columns.reduce((sum, c) => sum + c[i]!, 0));
  const average = mean(totals);
  const s = totals.reduce((sum, t) => sum + (t - average) ** 2, 0);
  const ties = columns.reduce((sum, c) => sum + tieTerm(c), 0);
  return (12 * s) / (m * m * (n ** 3 - n) - m * ties);
}

function tieTerm(column: readonly number[]): number {
  const counts = new Map<number, number>();
  for (const r of column) counts.set(r, (counts.get(r) ?? 0) + 1);
  return [...counts.values()].reduce((sum, t) => sum + t ** 3 - t, 0);
}

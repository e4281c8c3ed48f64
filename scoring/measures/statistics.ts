/** Mean of the values; null when there are none. */
export function mean(values: readonly number[]): number | null {
  if (values.length === 0) return null;
  let sum = 0;
  for (const v of values) sum += v;
  return sum / values.length;
}

/** Standard deviation over mean; null with fewer than three values or a mean of 0. */
export function variation(values: readonly number[]): number | null {
  const m = mean(values);
  if (m === null || m === 0 || values.length < 3) return null;
  let sum = 0;
  for (const v of values) sum += (v - m) * (v - m);
  return Math.sqrt(sum / (values.length - 1)) / Math.abs(m);
}

/** Value below which a share of the values lies, straight between ranks. NaN for none. */
export function quantile(values: readonly number[], share: number): number {
  if (values.length === 0) return Number.NaN;
  const sorted = [...values].sort((a, b) => a - b);
  const at = share * (sorted.length - 1);
  const low = Math.floor(at);
  const high = Math.min(sorted.length - 1, low + 1);
  return sorted[low]! + (at - low) * (sorted[high]! - sorted[low]!);
}

/** Slope of the least-squares line; null where x does not spread. */
export function slope(x: readonly number[], y: readonly number[]): number | null {
  const mx = mean(x);
  const my = mean(y);
  if (mx === null || my === null) return null;
  let xx = 0;
  let xy = 0;
  for (let i = 0; i < x.length; i++) {
    xx += (x[i]! - mx) * (x[i]! - mx);
    xy += (x[i]! - mx) * (y[i]! - my);
  }
  return xx > 1e-12 ? xy / xx : null;
}

/** Middle value; the mean of the two in the middle of an even number. Null of nothing. */
export function median(values: readonly number[]): number | null {
  if (values.length === 0) return null;
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}

/** Lowest and highest; null of fewer than two. */
export function spread(values: readonly number[]): { from: number; to: number } | null {
  return values.length < 2 ? null : { from: Math.min(...values), to: Math.max(...values) };
}

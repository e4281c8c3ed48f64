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

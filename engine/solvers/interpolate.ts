/** Reading between cell centres: Lagrange's polynomial through the four nearest, one-sided at a face. */

/** First of up to four neighbouring entries of a rising list that lie round x. */
export function nearestFour(at: ArrayLike<number>, x: number): number {
  let i = 0;
  while (i < at.length && at[i]! < x) i++;
  return Math.max(0, Math.min(i - 2, at.length - 4));
}

/** Weights of entries first, first + 1, ... (four, or as many as there are) for the value at x. */
export function lagrange(at: ArrayLike<number>, first: number, x: number): number[] {
  const n = Math.min(4, at.length);
  const weights: number[] = [];
  for (let i = 0; i < n; i++) {
    let weight = 1;
    for (let k = 0; k < n; k++) if (k !== i) weight *= (x - at[first + k]!) / (at[first + i]! - at[first + k]!);
    weights.push(weight);
  }
  return weights;
}

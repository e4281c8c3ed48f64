/**
 * Damped least squares over a few parameters inside their ranges, and what the targets know of them: the singular values of the
 * residuals' slopes, with the mixture of parameters each belongs to. A small one is a mixture that the targets hardly see.
 */
import { PARAMETERS, type ParameterName } from '../../../engine/physics/calibration.ts';

export type Overrides = Partial<Record<ParameterName, number>>;

export interface SearchProblem {
  names: ParameterName[];
  /** In half widths of the targets' bands. */
  residuals(x: Overrides): number[];
}

export interface Found {
  at: Overrides;
  /** Mean square residual before each round and at the end. */
  misfits: number[];
  directions: { size: number; mix: string }[];
}

/** Share of its range a parameter is moved by to find its slope. */
const PROBE = 0.08;
const DAMPING = [0.1, 1, 10];
/** Mixtures are written out down to this weight. */
const NAMED = 0.3;

export function search(problem: SearchProblem, start: Overrides, rounds: number): Found {
  const { names } = problem;
  const range = names.map((n) => PARAMETERS[n].range);
  const span = range.map(([low, high]) => high - low);
  const named = (v: number[]): Overrides => Object.fromEntries(names.map((n, k) => [n, v[k]!]));
  const slopesAt = (x: number[], r: number[]): number[][] =>
    x.map((v, k) => {
      const sign = v + PROBE * span[k]! > range[k]![1] ? -1 : 1;
      const moved = problem.residuals(named(x.map((w, m) => (m === k ? w + sign * PROBE * span[k]! : w))));
      return moved.map((q, i) => (sign * (q - r[i]!)) / PROBE);
    });
  let x = names.map((n) => start[n]!);
  let r = problem.residuals(named(x));
  const misfits = [meanSquare(r)];
  let slopes = slopesAt(x, r);
  for (let round = 0; round < rounds; round++) {
    let moved = false;
    for (const damping of DAMPING) {
      const step = solve(normal(slopes, damping), gradient(slopes, r));
      const trial = x.map((v, k) => Math.min(range[k]![1], Math.max(range[k]![0], v - step[k]! * span[k]!)));
      const value = problem.residuals(named(trial));
      // No number means no bead to read: never a way to go.
      if (!(meanSquare(value) < meanSquare(r))) continue;
      x = trial;
      r = value;
      moved = true;
      break;
    }
    misfits.push(meanSquare(r));
    if (!moved) break;
    slopes = slopesAt(x, r);
  }
  return { at: named(x), misfits, directions: directions(names, normal(slopes, 0)) };
}

const meanSquare = (r: number[]): number => r.reduce((sum, v) => sum + v * v, 0) / r.length;
const dot = (a: number[], b: number[]): number => a.reduce((sum, v, i) => sum + v * b[i]!, 0);
const gradient = (slopes: number[][], r: number[]): number[] => slopes.map((s) => dot(s, r));
const normal = (slopes: number[][], damping: number): number[][] =>
  slopes.map((a, k) => slopes.map((b, m) => dot(a, b) + (k === m ? damping : 0)));

/** Gauss elimination of a small positive definite system. */
function solve(matrix: number[][], right: number[]): number[] {
  const n = right.length;
  const a = matrix.map((row, k) => [...row, right[k]!]);
  for (let k = 0; k < n; k++)
    for (let m = k + 1; m < n; m++) {
      const f = a[m]![k]! / a[k]![k]!;
      for (let c = k; c <= n; c++) a[m]![c]! -= f * a[k]![c]!;
    }
  const x = new Array<number>(n).fill(0);
  for (let k = n - 1; k >= 0; k--) {
    let sum = a[k]![n]!;
    for (let c = k + 1; c < n; c++) sum -= a[k]![c]! * x[c]!;
    x[k] = sum / a[k]![k]!;
  }
  return x;
}

/** Square roots of the eigenvalues of SᵀS by Jacobi rotations, largest first. */
function directions(names: ParameterName[], matrix: number[][]): Found['directions'] {
  const n = names.length;
  const a = matrix.map((row) => [...row]);
  const v = a.map((_, k) => a.map((__, m) => (k === m ? 1 : 0)));
  const turnColumns = (m: number[][], p: number, q: number, c: number, s: number): void => {
    for (const row of m) [row[p], row[q]] = [c * row[p]! - s * row[q]!, s * row[p]! + c * row[q]!];
  };
  for (let turn = 0; turn < 30; turn++)
    for (let p = 0; p < n; p++)
      for (let q = p + 1; q < n; q++) {
        if (Math.abs(a[p]![q]!) < 1e-12) continue;
        const angle = 0.5 * Math.atan2(2 * a[p]![q]!, a[q]![q]! - a[p]![p]!);
        const [c, s] = [Math.cos(angle), Math.sin(angle)];
        turnColumns(a, p, q, c, s);
        const [top, low] = [a[p]!, a[q]!];
        a[p] = top.map((t, k) => c * t - s * low[k]!);
        a[q] = top.map((t, k) => s * t + c * low[k]!);
        turnColumns(v, p, q, c, s);
      }
  return names
    .map((_, k) => ({
      size: Math.sqrt(Math.max(0, a[k]![k]!)),
      mix: names
        .map((name, m) => ({ name, weight: v[m]![k]! }))
        .filter(({ weight }) => Math.abs(weight) > NAMED)
        .map(({ name, weight }) => `${weight.toFixed(2)} ${name}`)
        .join(', '),
    }))
    .sort((p, q) => q.size - p.size);
}

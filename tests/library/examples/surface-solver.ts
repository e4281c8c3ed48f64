// The liquid's surface alone: a strip of molten steel pinned at both edges, gravity square into it. Checked against the closed form.
import { settleSurface } from 'toehold/engine/solvers';

const nu = 40;
const du_mm = 0.1;
const tension_NpM = 1.2;
const density_kgpm3 = 7000;
const g = 9.81;

const strip = settleSurface({
  nu,
  ny: 1,
  du_mm,
  dy_mm: 1,
  bottom_mm: 0,
  edge: (_column, _slice, face) => (face < 2 ? { height_mm: 0 } : null),
  tension_NpM,
  density_kgpm3,
  gravity_mps2: { u: 0, y: 0, w: -g },
  volume_mm3: 0.2,
});

// Small slopes: tension h'' = density g h - pressure, h = 0 at both edges.
const half_m = (nu * du_mm) / 2000;
const k = Math.sqrt((density_kgpm3 * g) / tension_NpM);
export const { converged } = strip;
export const middle_mm = strip.height_mm[nu / 2]!;
export const closedForm_mm =
  (strip.pressure_Pa / (density_kgpm3 * g)) * (1 - Math.cosh((k * du_mm) / 2000) / Math.cosh(k * half_m)) * 1000;

console.log(middle_mm, closedForm_mm);

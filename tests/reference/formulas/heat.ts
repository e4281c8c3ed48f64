/**
 * Closed forms of heat flow with constant properties. Lengths mm, times s, powers W; λ in W/(mm K), ρc in J/(mm³ K), a = λ/ρc in mm²/s.
 * x is ahead of a source that moves along +x, y across, z down from the surface.
 */
import { besselK0, bisect, erf, simpson } from './special.ts';

export interface Metal {
  /** W/(m K) */
  conductivity_WpmK: number;
  /** J/(m³ K) */
  volumetric_Jpm3K: number;
}

/** Carbon steel of Kou, Welding Metallurgy 2e, Table 2.2 (from memory): λ 41 W/(m K), ρc 4.5e6 J/(m³ K), so a = 9.1 mm²/s. */
export const KOU_STEEL: Metal = { conductivity_WpmK: 41, volumetric_Jpm3K: 4.5e6 };

const lambda = (m: Metal): number => m.conductivity_WpmK * 1e-3;
const rhoC = (m: Metal): number => m.volumetric_Jpm3K * 1e-9;
export const diffusivity = (m: Metal): number => lambda(m) / rhoC(m);

/** Instantaneous plane, line and point source in endless metal (Carslaw & Jaeger, Conduction of Heat in Solids, ch. X). */
export const planeSource = (m: Metal, joulesPerArea: number, x: number, t: number): number =>
  (joulesPerArea / (rhoC(m) * Math.sqrt(4 * Math.PI * diffusivity(m) * t))) *
  Math.exp((-x * x) / (4 * diffusivity(m) * t));

export const lineSource = (m: Metal, joulesPerLength: number, r: number, t: number): number =>
  (joulesPerLength / (4 * Math.PI * lambda(m) * t)) * Math.exp((-r * r) / (4 * diffusivity(m) * t));

export const pointSource = (m: Metal, joules: number, r: number, t: number): number =>
  (joules / (8 * rhoC(m) * (Math.PI * diffusivity(m) * t) ** 1.5)) * Math.exp((-r * r) / (4 * diffusivity(m) * t));

/** Rosenthal, Weld. J. 20 (1941) 220s: point source on thick metal, quasi-steady. */
export function rosenthalThick(m: Metal, q: number, v: number, x: number, y: number, z: number): number {
  const r = Math.sqrt(x * x + y * y + z * z);
  return (q / (2 * Math.PI * lambda(m) * r)) * Math.exp((-v * (r + x)) / (2 * diffusivity(m)));
}

/** Rosenthal: line source through a sheet of thickness h, quasi-steady. */
export function rosenthalThin(m: Metal, q: number, v: number, h: number, x: number, y: number): number {
  const k = v / (2 * diffusivity(m));
  return (q / (2 * Math.PI * lambda(m) * h)) * Math.exp(-k * x) * besselK0(k * Math.sqrt(x * x + y * y));
}

/** Point source on a plate of thickness h: images at z = ±2ih (Grong, Metallurgical Modelling of Welding, 1.10.4). */
export function rosenthalPlate(m: Metal, q: number, v: number, h: number, x: number, y: number, z: number): number {
  let sum = 0;
  for (let i = -200; i <= 200; i++) sum += rosenthalThick(m, q, v, x, y, z + 2 * i * h);
  return sum;
}

/**
 * Eagar & Tsai, Weld. J. 62 (1983) 346s: Gaussian of standard deviation `sigma` moving on thick metal since `since` seconds (endless:
 * quasi-steady). With t = s² the integrand is smooth:
 * T - T0 = q / (π ρc √(4πa)) ∫ 2 ds / (2as² + σ²) exp(-((x + v s²)² + y²)/(4as² + 2σ²) - z²/(4as²)).
 */
export function eagarTsai(
  m: Metal,
  q: number,
  v: number,
  sigma: number,
  x: number,
  y: number,
  z: number,
  since = 400,
): number {
  const a = diffusivity(m);
  const integrand = (s: number): number => {
    const t = s * s;
    if (t === 0) return z === 0 ? (2 / (sigma * sigma)) * Math.exp(-(x * x + y * y) / (2 * sigma * sigma)) : 0;
    const away = (x + v * t) * (x + v * t) + y * y;
    return (
      (2 / (2 * a * t + sigma * sigma)) * Math.exp(-away / (4 * a * t + 2 * sigma * sigma) - (z * z) / (4 * a * t))
    );
  };
  const scale = q / (Math.PI * rhoC(m) * Math.sqrt(4 * Math.PI * a));
  return scale * simpson(integrand, 0, Math.sqrt(since), 8000);
}

/** A bar of the block's size with every face insulated: images of one coordinate, Gaussian of variance `spread`. */
function images(at: number, source: number, length: number, spread: number): number {
  let sum = 0;
  for (let n = -4; n <= 4; n++) {
    const near = at - source + 2 * n * length;
    const far = at + source + 2 * n * length;
    sum += Math.exp((-near * near) / (2 * spread)) + Math.exp((-far * far) / (2 * spread));
  }
  return sum / Math.sqrt(2 * Math.PI * spread);
}

export interface Block {
  width: number;
  depth: number;
  length: number;
}

/** Point Q set free at time 0 in an insulated block, by images: temperature rise at time t. */
export function pointInBlock(m: Metal, q: number, block: Block, from: number[], at: number[], t: number): number {
  const spread = 2 * diffusivity(m) * t;
  const size = [block.width, block.depth, block.length];
  return size.reduce((product, length, i) => product * images(at[i]!, from[i]!, length, spread), q / rhoC(m));
}

/**
 * Gaussian source (standard deviation sigma) moving over the upper face of an insulated block, by images: rise at (across, down, along)
 * at time t. The sum over earlier instants is an integral over age s².
 */
export function sourceOnBlock(
  m: Metal,
  q: number,
  sigma: number,
  block: Block,
  path: (t: number) => { across: number; along: number },
  at: { across: number; down: number; along: number },
  t: number,
): number {
  const a = diffusivity(m);
  const integrand = (s: number): number => {
    const age = Math.max(s * s, 1e-9);
    const from = path(t - age);
    const flat = 2 * a * age + sigma * sigma;
    return (
      2 *
      Math.sqrt(age) *
      images(at.across, from.across, block.width, flat) *
      images(at.along, from.along, block.length, flat) *
      images(at.down, 0, block.depth, 2 * a * age)
    );
  };
  return (q / rhoC(m)) * simpson(integrand, 0, Math.sqrt(t), 2000);
}

export interface Neumann {
  melt_C: number;
  wall_C: number;
  latent_Jpkg: number;
  specificHeat_JpkgK: number;
  conductivity_WpmK: number;
  density_kgpm3: number;
}

/** Stefan's problem in Neumann's form, one phase: s = 2 Λ √(at), √π Λ exp(Λ²) erf Λ = c (T_m - T_w) / L (Carslaw & Jaeger ch. XI). */
export function neumann(p: Neumann): {
  root: number;
  front(t: number): number;
  temperature(x: number, t: number): number;
} {
  const ste = (p.specificHeat_JpkgK * (p.melt_C - p.wall_C)) / p.latent_Jpkg;
  const root = bisect((l) => Math.sqrt(Math.PI) * l * Math.exp(l * l) * erf(l) - ste, 1e-6, 4);
  const a = (p.conductivity_WpmK / (p.density_kgpm3 * p.specificHeat_JpkgK)) * 1e6;
  return {
    root,
    front: (t) => 2 * root * Math.sqrt(a * t),
    temperature: (x, t) => p.wall_C + ((p.melt_C - p.wall_C) * erf(x / Math.sqrt(4 * a * t))) / erf(root),
  };
}

/**
 * Carbon steel: conductivity and specific heat of EN 1993-1-2 3.4.1 up to 1200 °C, held from there to the solidus; latent heat
 * spread evenly over solidus to liquidus; constant specific heat in the liquid. Specific enthalpy H [J/g] is zero at 20 °C and is
 * what the model stores; T(H) and the Kirchhoff potential Θ(H) = ∫λ dT [W/mm] come from one table with even steps of H.
 */

/** One density for mass, heat and geometry, so that the mass balance can be exact. EN 1993-1-2 3.2.2. */
export const DENSITY_GPMM3 = 7.85e-3;
/** Where melting begins on heating, °C; all is liquid from `LIQUIDUS_C`. Plain carbon steel, common values, from memory. */
export const SOLIDUS_C = 1460;
/** Where all is liquid on heating, °C; see `SOLIDUS_C`. */
export const LIQUIDUS_C = 1520;
/** Latent heat of fusion: 247 (pure iron) to 277 kJ/kg in published fillet models. */
const LATENT_JPG = 270;
/** Specific heat of the liquid, 790 to 825 J/kgK (memory). */
const LIQUID_HEAT_JPGK = 0.8;
/** Andrews (JISI 203, 1965, 721): Ac1 = 723 - 10.7 Mn + 29.1 Si for C 0.17, Si 0.2, Mn 1.0. */
export const AC1_C = 718;

/** Thermal conductivity in W/(m K), EN 1993-1-2 3.4.1.3; constant outside 20 to 1200 °C. */
export function conductivity(temp_C: number): number {
  if (temp_C >= 800) return 27.3;
  return 54 - 3.33e-2 * Math.max(temp_C, 20);
}

/** Specific heat in J/(kg K), EN 1993-1-2 3.4.1.2; constant outside 20 to 1200 °C. */
export function specificHeat(temp_C: number): number {
  const t = Math.max(temp_C, 20);
  if (t < 600) return 425 + 7.73e-1 * t - 1.69e-3 * t * t + 2.22e-6 * t * t * t;
  if (t < 735) return 666 + 13002 / (738 - t);
  if (t < 900) return 545 + 17820 / (t - 731);
  return 650;
}

/** Steps of the table and enthalpy between them; 0.33 K at worst in T. */
export const TABLE_STEPS = 2048;
const TABLE_STEP_JPG = 1.5625;

export interface MaterialTable {
  /** Interleaved [value, slope per step] pairs at H = i * TABLE_STEP_JPG; f32, as the kernels read them. */
  potential: Float32Array;
  temperature: Float32Array;
  solidus_JPG: number;
  liquidus_JPG: number;
  /** Largest dΘ/dH: sets the explicit time step. */
  steepest: number;
}

/** Integration step in K for the curves; the spike at 735 °C needs it this fine. */
const STEP_K = 0.1;

export interface Curves {
  /** W/(m K) */
  conductivity(temp_C: number): number;
  /** J/(kg K), latent heat not counted */
  specificHeat(temp_C: number): number;
  latent_JPG: number;
  solidus_C: number;
  liquidus_C: number;
}

const steelTables = new Map<number, MaterialTable>();

/** The table of the steel curves; made once per stirring, because a class or a search welds with the same steel many times. Read only. */
export function steelTable(stirring: number): MaterialTable {
  let table = steelTables.get(stirring);
  if (!table) {
    table = buildTable(steelCurves(stirring));
    steelTables.set(stirring, table);
  }
  return table;
}

/** The steel curves with the liquid's stirred conductivity. */
export function steelCurves(stirring: number): Curves {
  return {
    conductivity(t) {
      if (t <= SOLIDUS_C) return conductivity(t);
      const share = t >= LIQUIDUS_C ? 1 : (t - SOLIDUS_C) / (LIQUIDUS_C - SOLIDUS_C);
      return conductivity(t) * (1 + (stirring - 1) * share);
    },
    specificHeat: (t) => (t > LIQUIDUS_C ? 1000 * LIQUID_HEAT_JPGK : specificHeat(t)),
    latent_JPG: LATENT_JPG,
    solidus_C: SOLIDUS_C,
    liquidus_C: LIQUIDUS_C,
  };
}

function sliceHeat(curves: Curves, t0: number, d: number): number {
  const c = (d / 6) * (curves.specificHeat(t0) + 4 * curves.specificHeat(t0 + d / 2) + curves.specificHeat(t0 + d));
  const lo = Math.max(t0, curves.solidus_C);
  const hi = Math.min(t0 + d, curves.liquidus_C);
  const melted = hi > lo ? (hi - lo) / (curves.liquidus_C - curves.solidus_C) : 0;
  return c / 1000 + melted * curves.latent_JPG;
}

function sliceConduct(curves: Curves, t0: number, d: number): number {
  return (
    ((d / 6) * (curves.conductivity(t0) + 4 * curves.conductivity(t0 + d / 2) + curves.conductivity(t0 + d))) / 1000
  );
}

/** Tabulates the curves over H = 0 .. 3200 J/g. Below 0 the first step is extended (plates colder than 20 °C). */
export function buildTable(curves: Curves): MaterialTable {
  const n = TABLE_STEPS;
  const temps = new Float64Array(n + 1);
  const thetas = new Float64Array(n + 1);
  temps[0] = 20;
  let h = 0;
  let theta = 0;
  let t = 20;
  let filled = 1;
  let solidus = 0;
  let liquidus = 0;
  let count = 0;
  while (filled <= n) {
    const dh = sliceHeat(curves, t, STEP_K);
    const dtheta = sliceConduct(curves, t, STEP_K);
    while (filled <= n && filled * TABLE_STEP_JPG <= h + dh) {
      const f = (filled * TABLE_STEP_JPG - h) / dh;
      temps[filled] = t + f * STEP_K;
      thetas[filled] = theta + f * dtheta;
      filled++;
    }
    h += dh;
    theta += dtheta;
    count++;
    t = 20 + count * STEP_K;
    if (solidus === 0 && t >= curves.solidus_C - 1e-6) solidus = h;
    if (liquidus === 0 && t >= curves.liquidus_C - 1e-6) liquidus = h;
  }
  const potential = new Float32Array(2 * n);
  const temperature = new Float32Array(2 * n);
  let steepest = 0;
  for (let i = 0; i < n; i++) {
    potential[2 * i] = thetas[i]!;
    potential[2 * i + 1] = thetas[i + 1]! - thetas[i]!;
    temperature[2 * i] = temps[i]!;
    temperature[2 * i + 1] = temps[i + 1]! - temps[i]!;
    steepest = Math.max(steepest, (thetas[i + 1]! - thetas[i]!) / TABLE_STEP_JPG);
  }
  return { potential, temperature, solidus_JPG: solidus, liquidus_JPG: liquidus, steepest };
}

/** Fraction of the metal that is liquid at an enthalpy, 0 to 1; 0 where the material does not melt. */
export function liquidFraction({ solidus_JPG, liquidus_JPG }: MaterialTable, h: number): number {
  if (h <= solidus_JPG) return 0;
  return h >= liquidus_JPG ? 1 : (h - solidus_JPG) / (liquidus_JPG - solidus_JPG);
}

/** T at enthalpy, read from the table as the kernels do (f32 pairs, even steps). */
export function temperatureAt(table: MaterialTable, h: number): number {
  return lookup(table.temperature, h);
}

export function lookup(pairs: Float32Array, h: number): number {
  const x = h * (1 / TABLE_STEP_JPG);
  let i = x | 0;
  if (i < 0) i = 0;
  else if (i > TABLE_STEPS - 1) i = TABLE_STEPS - 1;
  return pairs[2 * i]! + (x - i) * pairs[2 * i + 1]!;
}

/** Enthalpy at a temperature, the inverse of `temperatureAt` on the same table. */
export function enthalpyAt(table: MaterialTable, temp_C: number): number {
  const pairs = table.temperature;
  if (temp_C < 20) return ((temp_C - pairs[0]!) / pairs[1]!) * TABLE_STEP_JPG;
  let lo = 0;
  let hi = TABLE_STEPS - 1;
  while (lo < hi) {
    const mid = (lo + hi + 1) >> 1;
    if (pairs[2 * mid]! <= temp_C) lo = mid;
    else hi = mid - 1;
  }
  return (lo + (temp_C - pairs[2 * lo]!) / pairs[2 * lo + 1]!) * TABLE_STEP_JPG;
}

/** 1/TABLE_STEP_JPG is exact in binary (0.64 is not; the kernels use the f32 nearest to it). */
export const INV_STEP_F32 = Math.fround(1 / TABLE_STEP_JPG);

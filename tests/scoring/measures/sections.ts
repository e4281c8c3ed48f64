import { type JointOptions, PART, type Section } from '../../../engine/index.ts';

/** Sections made up from a face and a peak-temperature field, for measures with a known answer. */
export interface Made {
  cell_mm?: number;
  joint?: Partial<JointOptions>;
  /** Height of the metal at u; the plate as cut where it lies lower. */
  face?: (u: number) => number;
  /** Peak temperature at (a, b), °C. */
  peak?: (a: number, b: number) => number;
  /** Metal surface given outright, below the plate too (undercut). */
  surface?: (u: number, plate: number) => number;
}

export const SOLIDUS_C = 1460;
export const START_C = 20;

export const teeJoint: JointOptions = {
  kind: 'tee',
  plateA_mm: 6,
  plateB_mm: 6,
  plateWidth_mm: 75,
  length_mm: 60,
  gap_mm: 0,
  startTemp_C: START_C,
  ambient_C: 20,
  sink_WpmmK: 0,
  tabs: false,
};

function plateAsCut(j: JointOptions, u: number): number {
  const away = Math.abs(u) * Math.SQRT2;
  if (j.kind === 'lap' && u < 0 && away > j.plateB_mm + j.gap_mm) return u + Math.SQRT2 * (j.plateB_mm + j.gap_mm);
  return Math.abs(u);
}

export function makeSection(made: Made): Section {
  const h = made.cell_mm ?? 0.75;
  const joint = { ...teeJoint, ...made.joint };
  const columns = Math.round(15 / h) * 2 - 1;
  const middle = (columns - 1) / 2;
  const du = h / Math.SQRT2;
  const u_mm = new Float64Array(columns);
  const w_mm = new Float64Array(columns);
  const plate_mm = new Float64Array(columns);
  const wet_s = new Float64Array(columns).fill(Number.NaN);
  const frozen_s = new Float64Array(columns).fill(Number.NaN);
  for (let c = 0; c < columns; c++) {
    const u = (c - middle) * du;
    const plate = plateAsCut(joint, u);
    u_mm[c] = u;
    plate_mm[c] = plate;
    w_mm[c] = made.surface ? made.surface(u, plate) : Math.max(plate, made.face ? made.face(u) : plate);
    if (w_mm[c] !== plate) {
      wet_s[c] = 10 + c / 100;
      frozen_s[c] = 11 + c / 100;
    }
  }
  const low = -12;
  const na = Math.round(27 / h);
  const nb = na;
  const part = new Uint8Array(na * nb);
  const fill = new Float32Array(na * nb);
  const peak_C = new Float32Array(na * nb).fill(Number.NaN);
  for (let ib = 0; ib < nb; ib++) {
    for (let ia = 0; ia < na; ia++) {
      const a = low + (ia + 0.5) * h;
      const b = low + (ib + 0.5) * h;
      const kind = partAt(joint, a, b);
      const cell = ib * na + ia;
      part[cell] = kind;
      if (kind === PART.VOID) continue;
      fill[cell] = 1;
      peak_C[cell] = made.peak ? made.peak(a, b) : START_C;
    }
  }
  return {
    y_mm: 30,
    cell_mm: h,
    joint,
    solidus_C: SOLIDUS_C,
    ac1_C: 718,
    start_C: START_C,
    u_mm,
    w_mm,
    plate_mm,
    wet_s,
    frozen_s,
    toeIndex: new Float64Array(u_mm.length),
    na,
    nb,
    a0_mm: low + h / 2,
    b0_mm: low + h / 2,
    part,
    fill,
    peak_C,
  };
}

function partAt(j: JointOptions, a: number, b: number): number {
  if (b < 0) return b > -j.plateA_mm ? PART.A : PART.VOID;
  if (a < 0 && b > j.gap_mm) {
    if (j.kind === 'tee') return a > -j.plateB_mm ? PART.B : PART.VOID;
    return b < j.gap_mm + j.plateB_mm ? PART.B : PART.VOID;
  }
  return a > 0 && b > 0 && a + b < 20 ? PART.WELD : PART.VOID;
}

/** Circular-segment face on the chord of an equal-leg fillet: leg z, convexity c (negative: hollow). */
export function segmentFace(z: number, c: number): (u: number) => number {
  const half = z / Math.SQRT2;
  const chord = z / Math.SQRT2;
  if (c === 0) return (u) => (Math.abs(u) <= half ? chord : Number.NEGATIVE_INFINITY);
  const radius = (half * half + c * c) / (2 * Math.abs(c));
  return (u) => {
    if (Math.abs(u) > half) return Number.NEGATIVE_INFINITY;
    const rise = Math.sqrt(radius * radius - u * u) - (radius - Math.abs(c));
    return chord + (c > 0 ? rise : -rise);
  };
}

/** Peak field of a line of heat at (a0, b0): the rise falls as 1/r², so s is straight in r; solidus at radius `melted`. */
export function lineOfHeat(a0: number, b0: number, melted: number): (a: number, b: number) => number {
  const strength = (SOLIDUS_C - START_C) * melted * melted;
  return (a, b) => START_C + strength / Math.max(1e-6, (a - a0) * (a - a0) + (b - b0) * (b - b0));
}

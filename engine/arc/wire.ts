/** Settings to amps, watts and metal. Feed sets the current; volts set the arc. */
import type { GasName, JointOptions, ProcessOptions } from '../input/options.ts';

import { PI } from '../numerics/math.ts';
import { type Calibration, calibration, PARAMETERS } from '../physics/calibration.ts';
import { DENSITY_GPMM3 } from '../physics/steel.ts';

/** How the wire goes over at these volts and amps; `off` without an arc. */
export type TransferRegime = 'off' | 'stubbing' | 'short-circuiting' | 'globular';

export interface GasSet {
  title: string;
  /** Volts the same arc needs above a 75/25 mix (CO2 wants 1 to 2 V more: common practice, no source). */
  volts_V: number;
  /** Which calibrated spatter share applies. */
  spatter: 'spatterC18' | 'spatterC25' | 'spatterCO2';
}

/** Gas groups after ISO 14175. */
export const GASES: Record<GasName, GasSet> = {
  'M21-ArC-18': { title: 'argon with 18 % CO2', volts_V: -0.5, spatter: 'spatterC18' },
  'M21-ArC-25': { title: 'argon with 25 % CO2', volts_V: 0, spatter: 'spatterC25' },
  C1: { title: 'CO2', volts_V: 1.5, spatter: 'spatterCO2' },
};

/** No extension is shorter, however close the tip: the melting balance has its resistance to divide by. Only a tip in the puddle comes near. */
const SHORTEST_EXTENSION_MM = 2;

/** What a feed comes to at a tip-to-work distance: amps, melting rate, power into the work, transfer. */
export interface WireState {
  current_A: number;
  feed_mmps: number;
  melt_mm3ps: number;
  metal_gps: number;
  /** Power reaching the work, arc and wire together: the volts that reach it x amps. */
  power_W: number;
  /** Part of it that arrives as the enthalpy of molten wire. */
  metal_W: number;
  regime: TransferRegime;
  extension_mm: number;
  shortCircuit_Hz: number;
  spatterShare: number;
  arcRadius_mm: number;
}

/** Cross-section of the wire, mm². */
export function wireArea_mm2(p: ProcessOptions): number {
  return (PI / 4) * p.wire_mm * p.wire_mm;
}

/** Lowest and highest volts at which this feed runs steadily; about two volts wide round the load line less 2 V. */
export function steadyVolts(
  p: ProcessOptions,
  current_A: number,
  cal: Calibration = calibration(),
): { low: number; high: number; middle: number } {
  const middle = middleVolts(p, current_A);
  return { low: middle - cal.steadyBelow, high: middle + cal.steadyAbove, middle };
}

/** IEC 60974-1 load line 14 + 0.05 I; argon-mix short arc sits 1 to 3 V below it (published settings tables). */
function middleVolts(p: ProcessOptions, current_A: number): number {
  return 14 + 0.05 * current_A - 2 + GASES[p.gas].volts_V;
}

/** Volts whose power reaches the work: the falls at both ends of the arc give most of theirs, its column much less. */
export function workVolts(p: ProcessOptions, cal: Calibration): number {
  const column = p.volts_V - GASES[p.gas].volts_V - cal.columnFrom;
  const reached = cal.arcEfficiency * (p.volts_V - column) + cal.columnEfficiency * column;
  return Math.min(cal.mostEfficient * p.volts_V, reached);
}

/**
 * Melting-rate balance in volume form: melt = a I + (b / A) L I², A the wire's area, L the electrode extension (Lesnewich 1958,
 * Halmøy 1979); a and b are `meltArc` and `meltResistance` of calibration.ts.
 */
export function wireState(p: ProcessOptions, tipToWork_mm: number, cal: Calibration = calibration()): WireState {
  const out = createWire();
  fillWire(out, p, tipToWork_mm, cal);
  return out;
}

export function createWire(): WireState {
  return {
    current_A: 0,
    feed_mmps: 0,
    melt_mm3ps: 0,
    metal_gps: 0,
    power_W: 0,
    metal_W: 0,
    regime: 'off',
    extension_mm: 0,
    shortCircuit_Hz: 0,
    spatterShare: 0,
    arcRadius_mm: 0,
  };
}

/** Radius of the arc on the work, mm. */
export function arcRadius(p: ProcessOptions, cal: Calibration): number {
  const arcVolts = p.volts_V - GASES[p.gas].volts_V;
  return Math.min(2.5, Math.max(0.6, cal.arcRadius + cal.arcRadiusPerVolt * (arcVolts - 17)));
}

/** `wireState` into an object at hand: it runs every tick. */
export function fillWire(out: WireState, p: ProcessOptions, tipToWork_mm: number, cal: Calibration): void {
  const area = wireArea_mm2(p);
  const feed = (p.feed_mpmin * 1000) / 60;
  const melt = area * feed;
  const extension = Math.max(tipToWork_mm - cal.arcLength, SHORTEST_EXTENSION_MM);
  const q = (cal.meltResistance / area) * extension;
  const current =
    q > 0 ? (2 * melt) / (cal.meltArc + Math.sqrt(cal.meltArc * cal.meltArc + 4 * q * melt)) : melt / cal.meltArc;
  const metal = melt * DENSITY_GPMM3;
  const power = workVolts(p, cal) * current;
  const middle = middleVolts(p, current);
  const regime: TransferRegime =
    p.volts_V < middle - cal.steadyBelow
      ? 'stubbing'
      : p.volts_V > middle + cal.steadyAbove
        ? 'globular'
        : 'short-circuiting';
  const off = p.volts_V - middle;
  const spatterShare = Math.min(0.3, cal[GASES[p.gas].spatter] * (1 + cal.spatterOffVolts * off * off));
  // Short-circuit rate, falling as volts lengthen the arc: 60 to 150 /s over the steady range (common practice, no source). For sound only.
  const shortCircuit = regime === 'globular' ? 25 : Math.max(20, Math.min(200, 110 - 12 * off));
  out.current_A = current;
  out.feed_mmps = feed;
  out.melt_mm3ps = melt;
  out.metal_gps = metal;
  out.power_W = power;
  out.metal_W = Math.min(metal * cal.wireEnthalpy, 0.9 * power);
  out.regime = regime;
  out.extension_mm = extension;
  out.shortCircuit_Hz = shortCircuit;
  out.spatterShare = spatterShare;
  out.arcRadius_mm = arcRadius(p, cal);
}

/** Share of the fed wire lost as spatter in the middle of the steady range. */
function depositionLoss(p: ProcessOptions): number {
  return PARAMETERS[GASES[p.gas].spatter].value;
}

/** Metal laid per length of joint: wire area x feed x deposition efficiency / travel (exact mass balance). mm². */
export function metalLaid_mm2(p: ProcessOptions, travel_mmps: number): number {
  return (wireArea_mm2(p) * ((p.feed_mpmin * 1000) / 60) * (1 - depositionLoss(p))) / travel_mmps;
}

/**
 * Metal a flat fillet of this leg holds: z²/2, more by what a gap adds, less where a lap edge is thinner than the leg. mm².
 */
export function jointHolds_mm2(j: JointOptions, leg_mm: number): number {
  const legB = j.kind === 'lap' ? Math.min(leg_mm, j.plateB_mm) : leg_mm;
  return (leg_mm * (legB + j.gap_mm)) / 2;
}

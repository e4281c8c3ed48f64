import { NUMERICAL, type NumericalName } from './numerical.ts';
import { type Parameter, parameter } from './parameter.ts';

/**
 * Every free parameter of the model: unit, usual range, source, what moves when it moves. Nothing else in the engine is tuned; numbers of the
 * scheme that move nothing that matters stand in `NUMERICAL`.
 * "prototype" means: found with a rebuilt prototype of this model, see DEVELOPERS.md, Calibration.
 */
export const PARAMETERS = {
  meltArc: parameter(
    0.32,
    'mm3/(A s)',
    [0.3, 0.36],
    'melting-rate balance, Lesnewich 1958; with meltResistance fitted to handbook factors (9 to 13 g/(A h), 0.8 to 1.2 mm wire)',
    'amps at a feed: more is fewer amps',
  ),
  meltResistance: parameter(
    5e-5,
    'mm4/(A2 s)',
    [3e-5, 6.5e-5],
    'resistive part of the same balance; slope with extension -1.4 to -1.8 % per mm',
    'amps against tip-to-work',
  ),
  spatterC18: parameter(
    0.04,
    'share of fed wire',
    [0.02, 0.08],
    'deposition efficiency 93 to 98 % (GMAW guide); by gas from memory',
    'metal laid',
  ),
  spatterC25: parameter(
    0.05,
    'share of fed wire',
    [0.03, 0.08],
    'as above; 96 % for 75Ar-25CO2 (memory)',
    'metal laid',
  ),
  spatterCO2: parameter(0.07, 'share of fed wire', [0.05, 0.1], 'as above; 93 % for CO2 (memory)', 'metal laid'),
  spatterOffVolts: parameter(
    0.12,
    '1/V2',
    [0, 0.3],
    'spatter is least in the middle of the steady range and grows both ways; common practice, no source for the curve',
    'metal laid off the steady range',
  ),
  arcEfficiency: parameter(
    0.85,
    '-',
    [0.8, 0.88],
    'DuPont & Marder, Weld. J. 74 (1995) 406s: GMAW 0.84; Pepe et al., STWJ 16 (2011) 412: dip transfer 0.85',
    'all heat: fused depth, puddle size',
  ),
  columnEfficiency: parameter(
    0.37,
    '-',
    [0.3, 0.6],
    'no source for the value; a longer arc radiates more of what it is given: 0.85 dipping, 0.75 to 0.78 for long pulsed and spray arcs (Pepe et al. 2011, from memory)',
    'fused depth against volts',
  ),
  wireEnthalpy: parameter(
    1900,
    'J/g',
    [1700, 2100],
    'droplet enthalpy 1.7 to 2.1 MJ/kg above 20 °C, from memory',
    'share of the power that comes with the metal',
  ),
  arcRadius: parameter(
    1.1,
    'mm',
    [0.8, 1.3],
    'no source; calibrated so that 15 V with 3.5 m/min leaves the root short and 18 V with 4.6 m/min just ties it in',
    'root fusion (strongly), face width',
  ),
  arcRadiusPerVolt: parameter(
    0.03,
    'mm/V above 17 V',
    [0, 0.15],
    'sign: GMAW handbook trend table (volts widen the bead, hardly deepen it); size set so that volts alone move depth by at most 15 % over 3 V',
    'width against volts',
  ),
  arcLength: parameter(
    3,
    'mm',
    [2, 4],
    'length of a short arc between dips, taken off tip-to-work to get the electrode extension; common practice, no source',
    'amps at a tip-to-work, little',
  ),
  currentLag: parameter(
    0.01,
    's',
    [0.003, 0.03],
    'electrical and melting inertia after a change of extension; common practice, no source',
    'amps of a hand that bobs',
  ),
  columnFrom: parameter(
    17,
    'V',
    [16, 18],
    'no source; volts above this lengthen the arc column, and arcEfficiency holds at it',
    'where columnEfficiency begins to count',
  ),
  mostEfficient: parameter(0.92, '-', [0.88, 0.95], 'no arc gives the work more; from memory', 'very low volts only'),
  steadyBelow: parameter(
    2,
    'V',
    [1.5, 2.5],
    'steady range under its middle; published settings tables, from memory',
    'which settings are said to stub',
  ),
  steadyAbove: parameter(
    2.5,
    'V',
    [2, 3],
    'steady range over its middle; published settings tables, from memory',
    'which settings are said to go over in globules',
  ),
  shortestTip: parameter(4, 'mm', [3, 6], 'closer the wire stubs; common practice, no source', 'a tip in the puddle'),
  longestTip: parameter(
    32,
    'mm',
    [25, 40],
    'beyond it the wire sags and no steady arc holds; common practice, no source',
    'how far out the arc still burns',
  ),
  heatedDepth: parameter(
    1,
    'mm',
    [0.75, 1.5],
    'no source; the arc digs its heat this deep, or one cell if that is more',
    'root and fused depth, somewhat',
  ),
  depositRadius: parameter(
    0.7,
    'mm',
    [0.4, 1.2],
    'no source; about the wire radius plus drop travel',
    'nearly nothing',
  ),
  arcShade: parameter(
    3.5,
    'mm',
    [3, 8],
    'no source; prototype: at 1 mm the arc sticks to a wall',
    'how much nearer metal draws the arc',
  ),
  stirring: parameter(
    1.75,
    '-',
    [1, 3],
    'usual liquid-conductivity factor in conduction models of weld pools, from memory; within that range set with the arc radius so that 3 V flatten by 0.2 mm',
    'wall melting, how much volts flatten; isotropic, so it grows no finger',
  ),
  advanceHot: parameter(
    10,
    'degree',
    [0, 45],
    'no source for the value; a line that freezes as it runs arrests at an angle that grows with the Stefan number (Schiaffino & Sonin 1997, from memory)',
    'whether the puddle runs ahead over the root of a slow run; in a right angle a line wicks without limit below 45 degrees (Concus & Finn 1969)',
  ),
  advanceCold: parameter(
    110,
    'degree',
    [70, 130],
    'no source for the value; as above',
    'toe spread on cold plate, overlap, legs of straight runs',
  ),
  advanceSpan: parameter(
    1700,
    'K',
    [700, 2400],
    'no source for the value; from the solidus down over this span the advancing angle goes from hot to cold, linear in the Stefan number',
    'as the two angles',
  ),
  advanceReach: parameter(
    0.5,
    'mm',
    [0.25, 1],
    'no source; the plate is read this far beyond the contact line, along its face and between columns, so that the cell does not choose it',
    'as the span: nearer is warmer',
  ),
  mixingDepth: parameter(
    1,
    'mm',
    [0.5, 2],
    'no source; the arc stirs the top of the liquid within a pose',
    'depth of fusion, most at the root; without it the cell does the mixing',
  ),
  relaxation: parameter(
    0.04,
    's',
    [0.02, 0.1],
    'capillary settling of an 8 mm pool, sqrt(rho L^3/gamma)/pi about 0.02 to 0.05 s',
    'nothing that matters within the range',
  ),
  gapConductance: parameter(
    3e-3,
    'W/(mm2 K)',
    [1e-3, 1e-2],
    'contact conductance of clamped mill-scale plate, from memory',
    'heat crossing the faying face, root of the base plate',
  ),
  emissivity: parameter(
    0.5,
    '-',
    [0.3, 0.8],
    'EN 1993-1-2 gives 0.7 for oxidised plate; liquid 0.3 to 0.4 (memory)',
    'cooling of hot metal',
  ),
  convection: parameter(
    2e-5,
    'W/(mm2 K)',
    [5e-6, 3e-5],
    'natural convection 5 to 30 W/m2K, handbook range',
    'late cooling',
  ),
  surfaceTension: parameter(
    1.2,
    'N/m',
    [1.0, 1.8],
    'active-gas GMAW pools 1.0 to 1.4 N/m, from memory; Keene 1993: pure iron 1.86',
    'sag, crown, drip',
  ),
  liquidDensity: parameter(
    7.0e-3,
    'g/mm3',
    [6.8e-3, 7.1e-3],
    'Assael et al., JPCRD 35 (2006): 7.03e-3 at melting (coefficients from memory)',
    'head of the puddle only; mass and heat use one solid density',
  ),
  rmsCurrent: parameter(1.3, '-', [1.15, 1.5], 'I_rms/I of a short-circuit wave, from memory', 'arc force'),
  evaporation_C: parameter(
    2860,
    'degree C',
    [2500, 2900],
    'boiling of pure iron 2862 °C; pools under an arc are measured 300 to 400 K below it (memory)',
    'hottest the liquid gets; what is above it leaves as vapour and is booked',
  ),
  afterDrop: parameter(
    0.7,
    '-',
    [0.5, 0.9],
    'no source; share of what it can hold that a puddle keeps after a drop has fallen',
    'size of drops',
  ),
  dropPart: parameter(
    0.5,
    '-',
    [0.3, 0.7],
    'no source; lowest part of the puddle a drop is taken from',
    'shape left by a drop',
  ),
  releaseSpan: parameter(
    1.45,
    '-',
    [0.9, 1.6],
    'cos(receding 20 degrees) - cos(pinned at an edge, 120 degrees); Furmidge retention of a drop on a wall, from memory',
    'when a held puddle drops out',
  ),
} satisfies Record<string, Parameter>;

export type ParameterName = keyof typeof PARAMETERS;
/** Values of all free parameters and numerical constants by name, each in the unit its table states. */
export type Calibration = Record<ParameterName | NumericalName, number>;

/** The values alone; overrides are for studies (calibration, sensitivities), never for attempts. */
export function calibration(overrides: Partial<Calibration> = {}): Calibration {
  const out = {} as Calibration;
  const all = { ...PARAMETERS, ...NUMERICAL };
  for (const name of Object.keys(all) as (keyof typeof all)[]) out[name] = overrides[name] ?? all[name].value;
  return out;
}

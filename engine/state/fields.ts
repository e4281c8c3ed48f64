/**
 * The list of everything a weld is: what each array is called, how long it is, and what it is for. Allocation, check number, snapshot,
 * restore and `fields()` all go by it; a row added here is in all five.
 *
 *     decides   the next step depends on it       hashed, saved
 *     reports   only what is shown depends on it  hashed, saved
 *     follows   counted or labelled anew from the others after a restore
 *     scratch   written before it is read, within one step
 *
 * A digest goes by a field's name: rows may be moved, not renamed under a standing engine version.
 */

type Kind = 'f32' | 'f64' | 'i32' | 'u8';

/** Where in the state its array hangs: heat.*, the state itself, coarse.*; and the work areas of arc and pool. */
export type Part = 'heat' | 'surface' | 'coarse' | 'footprint' | 'pool';

export interface Field {
  /** Its name inside its part. */
  key: string;
  kind: Kind;
  part: Part;
  unit: string;
  role: 'decides' | 'reports' | 'follows' | 'scratch';
  length(d: Dims): number;
  /** What it is filled with; the cold piece may write over it. */
  start: number;
}

/** Sizes a joint comes to. */
export interface Dims {
  /** Rods, and their cells with padding. */
  rods: number;
  cells: number;
  /** Columns of the height field times slices. */
  columns: number;
  /** Blocks of slices; tiles, touching pairs and faying pairs over all blocks. */
  blocks: number;
  tiles: number;
  pairs: number;
  gaps: number;
}

/** Most columns one footprint covers. */
export const FOOTPRINT_CAPACITY = 4096;

const cells = (d: Dims): number => d.cells;
const rods = (d: Dims): number => d.rods;
const columns = (d: Dims): number => d.columns;
const faces = (d: Dims): number => 4 * d.columns;
const blocks = (d: Dims): number => d.blocks;
const tiles = (d: Dims): number => d.tiles;
const pairs = (d: Dims): number => d.pairs;
const gaps = (d: Dims): number => d.gaps;
const footprint = (): number => FOOTPRINT_CAPACITY;

const heat = <K extends string, T extends Kind>(
  key: K,
  kind: T,
  unit: string,
  role: Field['role'],
  length: Field['length'],
) => ({ key, kind, part: 'heat', unit, role, length, start: 0 }) as const;
const surface = <K extends string, T extends Kind>(
  key: K,
  kind: T,
  unit: string,
  role: Field['role'],
  length: Field['length'] = columns,
  start = 0,
) => ({ key, kind, part: 'surface', unit, role, length, start }) as const;
const coarse = <K extends string, T extends Kind>(
  key: K,
  kind: T,
  unit: string,
  length: Field['length'],
  role: Field['role'] = 'decides',
  start = 0,
) => ({ key, kind, part: 'coarse', unit, role, length, start }) as const;
const scratch = <K extends string, T extends Kind, P extends Part>(
  part: P,
  key: K,
  kind: T,
  length: Field['length'],
  start = 0,
) => ({ key, kind, part, unit: '-', role: 'scratch', length, start }) as const;

export const FIELDS = {
  /** Heat of a cell's metal above 20 °C, and what f32 could not hold of it (Kahan). */
  enthalpy: heat('H', 'f32', 'J/g', 'decides', cells),
  residual: heat('residual', 'f32', 'J/g', 'decides', cells),
  /** Kirchhoff potential, of this tick. */
  potential: heat('potential', 'f32', 'W/mm', 'scratch', cells),
  /** Fraction of a cell that is metal, and the highest enthalpy that metal has had. */
  fill: heat('fill', 'f32', '-', 'decides', cells),
  peak: heat('peak', 'f32', 'J/g', 'decides', cells),
  /** Cells of a rod that are not full of metal, and that hold any. */
  notFull: heat('notFull', 'i32', 'cells', 'follows', rods),
  holding: heat('holding', 'i32', 'cells', 'follows', rods),

  /** Height field, where it would come to rest, and how it answers to the pool's pressure. Index c * ny + j. */
  height: surface('w', 'f64', 'mm', 'decides'),
  equilibrium: surface('wEq', 'f64', 'mm', 'decides'),
  response: surface('response', 'f64', 'mm/Pa', 'decides'),
  /** Bottom of the liquid. */
  bottom: surface('bottom', 'f64', 'mm', 'decides'),
  /** Distance of the contact line from the column's centre towards u-, u+, y-, y+. */
  contactLine: surface('edge', 'f64', 'column spacings', 'decides', faces, 0.5),
  /** Height at which a wetted column was dry, NaN where none is; and the tick until which a thin film lives. */
  wetLevel: surface('wetLevel', 'f64', 'mm', 'decides', columns, Number.NaN),
  wetUntil: surface('wetUntil', 'i32', 'tick', 'decides', columns, -1),
  /**
   * Pressure of the pool each column belonged to last, above that pool's mean load: fresh columns start at 0, wherever on the joint they
   * melt.
   */
  pressure: surface('pressure', 'f64', 'Pa', 'decides'),
  /** Pressure in the liquid under the surface as last settled: what it froze with where it is solid, NaN where it never was liquid. */
  skinPressure: surface('skinPressure', 'f64', 'Pa', 'reports', columns, Number.NaN),
  /** Potential of the flow that last moved the metal: where the next one starts from. */
  flowPotential: surface('flowPotential', 'f64', 'mm²', 'decides'),
  /** First wetting and last freezing, -1 never. */
  wetStamp: surface('wetTick', 'i32', 'tick', 'decides', columns, -1),
  freezeStamp: surface('frozenTick', 'i32', 'tick', 'reports', columns, -1),
  liquid: surface('liquid', 'u8', '0 or 1', 'decides'),
  /** Number of the pool a liquid column belongs to, -1 none. */
  pool: surface('puddle', 'i32', 'label', 'follows', columns, -1),
  /** Place in its column's stack of the heat cell that holds the surface; that cell, and the one under it (itself where it is the lowest). */
  surfacePlace: surface('surfacePlace', 'i32', 'place', 'follows'),
  surfaceCell: surface('surfaceCell', 'i32', 'cell', 'follows'),
  underCell: surface('underCell', 'i32', 'cell', 'follows'),

  /** Index block * tiles + tile. */
  tileEnthalpy: coarse('H', 'f64', 'J/g', tiles),
  tileMass: coarse('mass', 'f64', 'g', tiles),
  tileArea: coarse('area', 'f64', 'mm²', tiles),
  /** Outer face. */
  tileFace: coarse('face', 'f64', 'mm²', tiles),
  /** Between tiles that touch (mm: times a difference of potential it gives W), and across faying faces open and melted. */
  tileConductance: coarse('conduct', 'f64', 'mm', pairs),
  tileGapOpen: coarse('gapOpen', 'f64', 'W/K', gaps),
  tileGapMelted: coarse('gapMelted', 'f64', 'mm', gaps),
  /** Heat that crossed the fine region's ends since the last coarse step, and the coarse potential seen there. */
  tileCrossing: coarse('crossing', 'f64', 'J', tiles),
  tilePotential: coarse('potential', 'f64', 'W/mm', tiles),
  /** What crosses an end in one tick for each W/mm. */
  crossingGain: coarse('crossingGain', 'f64', 'J mm/W', rods, 'follows'),
  /** 1 where a block is coarse: fine blocks form one run. 0 where a coarse block is as cold as room and plate were: nothing to step. */
  coarse: coarse('isCoarse', 'u8', '0 or 1', blocks, 'decides', 1),
  active: coarse('isActive', 'u8', '0 or 1', blocks),

  footprintColumn: scratch('footprint', 'column', 'i32', footprint),
  footprintWeight: scratch('footprint', 'weight', 'f64', footprint),
  footprintDeposit: scratch('footprint', 'deposit', 'f64', footprint),
  poolColumn: scratch('pool', 'column', 'i32', columns),
  poolNode: scratch('pool', 'nodeOf', 'i32', columns, -1),
  poolQueue: scratch('pool', 'queue', 'i32', columns),
  /** What has run into a node of the flow so far, and its enthalpy x volume; then the nodes by falling potential. */
  flowInflow: scratch('pool', 'inflow', 'f64', columns),
  flowInheat: scratch('pool', 'inheat', 'f64', columns),
  flowOrder: scratch('pool', 'order', 'i32', columns),
  flowSpare: scratch('pool', 'spare', 'i32', columns),
  flowRuns: scratch('pool', 'runs', 'i32', columns),
} satisfies Record<string, Field>;

export type FieldName = keyof typeof FIELDS;
type ArrayOf<K extends Kind> = K extends 'f32'
  ? Float32Array
  : K extends 'f64'
    ? Float64Array
    : K extends 'i32'
      ? Int32Array
      : Uint8Array;
export type FieldArray = Float32Array | Float64Array | Int32Array | Uint8Array;

/** The arrays of one part, by their keys. */
export type Arrays<P extends Part> = {
  [N in FieldName as (typeof FIELDS)[N]['part'] extends P ? (typeof FIELDS)[N]['key'] : never]: ArrayOf<
    (typeof FIELDS)[N]['kind']
  >;
};

export const FIELD_NAMES = Object.keys(FIELDS) as FieldName[];
/** What is hashed and saved. */
export const SAVED: readonly FieldName[] = FIELD_NAMES.filter((name) => {
  const { role } = FIELDS[name];
  return role === 'decides' || role === 'reports';
});

/** Where a number of the state hangs, and its name there. */
export type ScalarOwner = 'state' | 'liquidSlices' | 'fine' | 'lastPose' | 'ledger';

/** Every single number that decides the future or stands in the balance; flags count as 0 and 1. */
export const SCALARS = {
  steps: ['state', 'steps'],
  tick: ['state', 'tick'],
  /** Smoothed current; arc foot and radius of the last tick, for the load on the pool. */
  current: ['state', 'current'],
  arcOn: ['state', 'arcOn'],
  footU: ['state', 'footU'],
  footY: ['state', 'footY'],
  arcRadius: ['state', 'arcRadius'],
  'liquidSlices.from': ['liquidSlices', 'from'],
  'liquidSlices.to': ['liquidSlices', 'to'],
  'fine.from': ['fine', 'from'],
  'fine.to': ['fine', 'to'],
  /** A step starts where the last pose ended. */
  lastPose: ['state', 'posed'],
  'lastPose.u': ['lastPose', 'u_mm'],
  'lastPose.y': ['lastPose', 'y_mm'],
  'lastPose.tipToWork': ['lastPose', 'tipToWork_mm'],
  'lastPose.workAngle': ['lastPose', 'workAngle_deg'],
  'lastPose.travelAngle': ['lastPose', 'travelAngle_deg'],
  'lastPose.trigger': ['lastPose', 'trigger'],
  fed_g: ['ledger', 'fed_g'],
  spatter_g: ['ledger', 'spatter_g'],
  dripped_g: ['ledger', 'dripped_g'],
  arc_J: ['ledger', 'arc_J'],
  wire_J: ['ledger', 'wire_J'],
  lost_J: ['ledger', 'lost_J'],
  sink_J: ['ledger', 'sink_J'],
  evaporated_J: ['ledger', 'evaporated_J'],
  dripped_J: ['ledger', 'dripped_J'],
  ampSeconds: ['ledger', 'ampSeconds'],
  arcTime_s: ['ledger', 'arcTime_s'],
  meanVolts_V: ['ledger', 'meanVolts_V'],
  start_J: ['ledger', 'start_J'],
  start_mm3: ['ledger', 'start_mm3'],
} as const satisfies Record<string, readonly [ScalarOwner, string]>;

export type ScalarName = keyof typeof SCALARS;
export const SCALAR_NAMES = Object.keys(SCALARS) as ScalarName[];

/** Defaults and the door: what an attempt may be set to, and what is said when it is not. */
import { EngineError } from './error.ts';

/** How the two plates of a fillet stand to each other. */
export type JointKind = 'tee' | 'lap' | 'corner';

/**
 * A fillet up a wall, or a bead on one plate that lies flat (PA in ISO 6947): the piece that most published measurements are made on. It is
 * plate A (plate B and gap are not looked at), and a work angle of 45 degrees is square to it.
 */
export type PieceKind = JointKind | 'plate';

/** The pieces as clamped on the bench. */
export interface JointOptions {
  kind: PieceKind;
  /** Plate A: the through plate of a tee, the back plate of a lap. */
  plateA_mm: number;
  /** Plate B: the standing plate of a tee, the edge plate of a lap (its edge is the fusion face). */
  plateB_mm: number;
  /** Width of each plate, measured square to the joint. */
  plateWidth_mm: number;
  /** Length of the joint up the plate, run-on and run-off tabs not counted. */
  length_mm: number;
  /** Fit-up gap between A's face and plate B. */
  gap_mm: number;
  startTemp_C: number;
  ambient_C: number;
  /** Conductance of clamp and bench at the plates' outer edges, W/K per mm of joint length and edge. 0 = hanging free. */
  sink_WpmmK: number;
  /** Run-on and run-off tabs: 12 mm more joint at each end; y = 0 stays the bottom of the joint proper. */
  tabs: boolean;
}

/** Two plates to be joined by a fillet. */
export interface FilletOptions extends JointOptions {
  kind: JointKind;
}

/** Shielding gas by its ISO 14175 group: argon with 18 or 25 % CO2, or CO2 alone. */
export type GasName = 'M21-ArC-18' | 'M21-ArC-25' | 'C1';

/** What is set on the machine and fitted to the gun. */
export interface ProcessOptions {
  wire_mm: 0.8 | 0.9 | 1.0 | 1.2;
  feed_mpmin: number;
  volts_V: number;
  gas: GasName;
  /** Contact tip against the nozzle's end: 0 flush, + out of the nozzle, - inside it. */
  tip_mm: number;
  /** Outside diameter of the nozzle. */
  nozzle_mm: number;
}

/** One attempt before the arc is struck: joint, process and cell size. */
export interface SimulationOptions {
  joint: JointOptions;
  process: ProcessOptions;
  /** Edge of the near-joint cells. Working size 0.75; 1.0 and 0.5 for mesh studies. */
  cell_mm: number;
}

/** One setting that cannot be welded with, as data. */
export interface OptionProblem {
  code: 'wrong-type' | 'out-of-range' | 'not-one-of' | 'unknown-field' | 'inconsistent';
  path: string;
  found: unknown;
  allowed: string;
}

/** Bench and clamps take little: a coupon standing in two light clamps (stated default, no source). */
const DEFAULT_SINK_WPMMK = 0.0005;

/** The joint everything starts from: a tee of two plates in light clamps, cold. */
export function defaultJoint(): FilletOptions {
  return {
    kind: 'tee',
    plateA_mm: 6,
    plateB_mm: 6,
    plateWidth_mm: 75,
    length_mm: 150,
    gap_mm: 0,
    startTemp_C: 20,
    ambient_C: 20,
    sink_WpmmK: DEFAULT_SINK_WPMMK,
    tabs: false,
  };
}

/** Settings everything starts from: 0.9 mm wire, 4.6 m/min, 18 V, argon with 18 % CO2. */
export function defaultProcess(): ProcessOptions {
  return { wire_mm: 0.9, feed_mpmin: 4.6, volts_V: 18, gas: 'M21-ArC-18', tip_mm: 0, nozzle_mm: 16 };
}

/** Default joint and process at the working cell of 0.75 mm. */
export function defaultOptions(): SimulationOptions & { joint: FilletOptions } {
  return { joint: defaultJoint(), process: defaultProcess(), cell_mm: 0.75 };
}

/**
 * The same settings in objects of their own. Written out, not spread: whoever put the settings together, what is compiled for one weld serves
 * the next (see `makeArrays`).
 */
export function copyOptions({ joint, process, cell_mm }: SimulationOptions): SimulationOptions {
  return {
    joint: {
      kind: joint.kind,
      plateA_mm: joint.plateA_mm,
      plateB_mm: joint.plateB_mm,
      plateWidth_mm: joint.plateWidth_mm,
      length_mm: joint.length_mm,
      gap_mm: joint.gap_mm,
      startTemp_C: joint.startTemp_C,
      ambient_C: joint.ambient_C,
      sink_WpmmK: joint.sink_WpmmK,
      tabs: joint.tabs,
    },
    process: {
      wire_mm: process.wire_mm,
      feed_mpmin: process.feed_mpmin,
      volts_V: process.volts_V,
      gas: process.gas,
      tip_mm: process.tip_mm,
      nozzle_mm: process.nozzle_mm,
    },
    cell_mm,
  };
}

/** A range, a list to choose from, or yes and no. */
export type Rule =
  | { low: number; high: number; unit: string }
  | { oneOf: readonly (string | number)[] }
  | { flag: true };

/** What each setting of joint and machine may be. */
export const RANGES: Record<string, Record<string, Rule>> = {
  joint: {
    kind: { oneOf: ['tee', 'lap', 'corner', 'plate'] },
    plateA_mm: { low: 2, high: 20, unit: 'mm' },
    plateB_mm: { low: 2, high: 20, unit: 'mm' },
    plateWidth_mm: { low: 30, high: 300, unit: 'mm' },
    length_mm: { low: 20, high: 300, unit: 'mm' },
    gap_mm: { low: 0, high: 3, unit: 'mm' },
    startTemp_C: { low: -20, high: 350, unit: '°C' },
    ambient_C: { low: -20, high: 50, unit: '°C' },
    sink_WpmmK: { low: 0, high: 0.05, unit: 'W/(mm K)' },
    tabs: { flag: true },
  },
  process: {
    wire_mm: { oneOf: [0.8, 0.9, 1.0, 1.2] },
    feed_mpmin: { low: 1, high: 12, unit: 'm/min' },
    volts_V: { low: 12, high: 30, unit: 'V' },
    gas: { oneOf: ['M21-ArC-18', 'M21-ArC-25', 'C1'] },
    tip_mm: { low: -6, high: 6, unit: 'mm' },
    nozzle_mm: { low: 10, high: 26, unit: 'mm' },
  },
};

/**
 * Cells through a plate, more than this: then it has two rows or more, and the front one is a whole cell. A plate of a single, taller row has no whole
 * cell for the surface above it to stand on.
 */
export const CELLS_THROUGH_PLATE = 1.6;
/** Cells of a simulation, mm. */
const FINEST_MM = 0.375;
const COARSEST_MM = 1.5;

/** Every problem found, in field order; an empty list means the options will do. Never throws. */
export function checkOptions(options: unknown): OptionProblem[] {
  const problems: OptionProblem[] = [];
  if (typeof options !== 'object' || options === null) {
    return [
      { code: 'wrong-type', path: 'options', found: options, allowed: 'an object with joint, process and cell_mm' },
    ];
  }
  const record = options as Record<string, unknown>;
  for (const group of Object.keys(RANGES)) {
    const part = record[group];
    if (typeof part !== 'object' || part === null) {
      problems.push({ code: 'wrong-type', path: group, found: part, allowed: 'an object' });
      continue;
    }
    checkGroup(group, part as Record<string, unknown>, problems);
  }
  if (!(typeof record.cell_mm === 'number' && record.cell_mm >= FINEST_MM && record.cell_mm <= COARSEST_MM)) {
    const allowed = `${FINEST_MM} to ${COARSEST_MM} mm`;
    problems.push({ code: 'out-of-range', path: 'cell_mm', found: record.cell_mm, allowed });
  }
  if (problems.length === 0) checkCellAgainstPlates(record as unknown as SimulationOptions, problems);
  return problems;
}

function checkCellAgainstPlates({ joint, cell_mm }: SimulationOptions, problems: OptionProblem[]): void {
  const thinner = joint.kind === 'plate' ? joint.plateA_mm : Math.min(joint.plateA_mm, joint.plateB_mm);
  if (cell_mm * CELLS_THROUGH_PLATE < thinner - 1e-9) return;
  // Rounded down, so that what is named is itself allowed.
  const largest = Math.floor((thinner / CELLS_THROUGH_PLATE - 1e-6) * 100) / 100;
  problems.push({
    code: 'out-of-range',
    path: 'cell_mm',
    found: cell_mm,
    allowed: `${FINEST_MM} to ${largest} mm with a plate of ${thinner} mm`,
  });
}

function checkGroup(group: string, part: Record<string, unknown>, problems: OptionProblem[]): void {
  const rules = RANGES[group]!;
  for (const field of Object.keys(rules)) {
    const rule = rules[field]!;
    const found = part[field];
    const path = `${group}.${field}`;
    if ('oneOf' in rule) {
      if (!rule.oneOf.includes(found as string | number))
        problems.push({ code: 'not-one-of', path, found, allowed: `one of ${rule.oneOf.join(', ')}` });
    } else if ('flag' in rule) {
      if (typeof found !== 'boolean') problems.push({ code: 'wrong-type', path, found, allowed: 'true or false' });
    } else if (typeof found !== 'number') {
      problems.push({ code: 'wrong-type', path, found, allowed: `a number, ${rule.low} to ${rule.high} ${rule.unit}` });
    } else if (!(found >= rule.low && found <= rule.high)) {
      problems.push({ code: 'out-of-range', path, found, allowed: `${rule.low} to ${rule.high} ${rule.unit}` });
    }
  }
  for (const field of Object.keys(part)) {
    if (!(field in rules))
      problems.push({
        code: 'unknown-field',
        path: `${group}.${field}`,
        found: part[field],
        allowed: `one of the fields ${Object.keys(rules).join(', ')}`,
      });
  }
}

/** @throws EngineError for the first problem. */
export function requireOptions(options: SimulationOptions): void {
  const [first] = checkOptions(options);
  if (first) throw new EngineError(first.code, first.path, first.found, first.allowed);
}

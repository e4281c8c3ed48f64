/**
 * The shapes the engine takes and hands out. Units are in the names: mm, s, °C, V, A, W, g, J, degrees.
 *
 * Frame (see DEVELOPERS.md): `y` runs up the joint. The plates meet at the root line a = b = 0; `a` runs out along plate A's
 * face, `b` along plate B's, square to each other. The welder looks at `u` across and `w` out of the root:
 *
 *     u = (a - b)/√2   (plate A's side is u > 0, on the right)        a = (w + u)/√2
 *     w = (a + b)/√2                                                  b = (w - u)/√2
 */

export type JointKind = 'tee' | 'lap' | 'corner';

/** The pieces as clamped on the bench. */
export interface JointOptions {
  kind: JointKind;
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

/** Where the hand holds the torch. Sampled every 1/100 s (POSE_RATE_HZ). */
export interface Pose {
  /** Aim point across the joint in the welder's view; + towards plate A. */
  u_mm: number;
  /** Aim point up the joint. */
  y_mm: number;
  /** Distance from contact tip to the reference face (see torch.ts) along the wire. The arc's true tip-to-work is in the trace. */
  tipToWork_mm: number;
  /** Angle of the wire from plate A's (the back plate's) face; 45 splits a right-angled corner evenly. */
  workAngle_deg: number;
  /** Push positive: the wire points up the joint, the way of travel. */
  travelAngle_deg: number;
  trigger: boolean;
}

/** How the wire goes over at these volts and amps; `off` without an arc. */
export type TransferRegime = 'off' | 'stubbing' | 'short-circuiting' | 'globular';

/** What one pose interval did; null is "there was none", never 0. */
export interface TraceSample {
  t_s: number;
  trigger: boolean;
  /** An arc burned during this interval. */
  arcOn: boolean;
  regime: TransferRegime;
  aimU_mm: number;
  aimY_mm: number;
  /** Arc foot: weighted mean of the footprint on the surface (aim where the arc is out). */
  footU_mm: number;
  footY_mm: number;
  /** Contact-tip-to-work distance as the arc had it. */
  tipToWork_mm: number;
  workAngle_deg: number;
  travelAngle_deg: number;
  current_A: number;
  /** Arc and wire power reaching the work. */
  power_W: number;
  /** Upper boundary of the liquid at the foot's u (sub-cell); null without a puddle there. */
  frontY_mm: number | null;
  /** Lowest and highest liquid of the puddle under (or nearest) the arc, and its volume above the fusion boundary. */
  puddleBottom_mm: number | null;
  puddleTop_mm: number | null;
  puddleVolume_mm3: number;
  /** Outermost wet position each side within 1.5 mm of the foot's y, as distance out along the plate's face from the root. */
  wetA_mm: number | null;
  wetB_mm: number | null;
  /** Metal standing on each plate 1 mm inside that wet toe, measured square to the plate. */
  fillA_mm: number | null;
  fillB_mm: number | null;
  nozzleTouching: boolean;
  /** Metal dropped out during this interval. */
  dripped_g: number;
  spatter_g: number;
}

/** Live surface for drawing: arrays over columns, index `k * ny + j` (k across from -u to +u, j up). Do not write. */
export interface SurfaceView {
  nu: number;
  ny: number;
  /** u of column k is `u0_mm + k * du_mm`; y of slice j is `y0_mm + j * dy_mm` (cell centres). */
  u0_mm: number;
  du_mm: number;
  y0_mm: number;
  dy_mm: number;
  /** Surface height w. */
  height_mm: Float32Array;
  /** Height of the joint as cut, before welding. */
  plate_mm: Float32Array;
  temp_C: Float32Array;
  /** 0 solid .. 1 liquid. */
  liquid: Float32Array;
  /** Highest temperature the surface metal has seen (temper colours, heat-affected plate). */
  peak_C: Float32Array;
  /** Time of the last freezing, s; NaN where it never was liquid. */
  frozen_s: Float32Array;
}

/** 0 void, 1 plate A, 2 plate B, 3 weld metal. */
export const PART = { VOID: 0, A: 1, B: 2, WELD: 3 } as const;

/** A cut square to the joint at one height, linear between the slices either side. */
export interface Section {
  y_mm: number;
  cell_mm: number;
  joint: JointOptions;
  solidus_C: number;
  ac1_C: number;
  start_C: number;
  /** Columns of the height field, from plate B's side (u < 0) to plate A's. */
  u_mm: Float64Array;
  /** Metal surface as it stands. */
  w_mm: Float64Array;
  /** Joint surface as cut (exact, from stored geometry). */
  plate_mm: Float64Array;
  /** First wetting and last freezing of the column; NaN: never. */
  wet_s: Float64Array;
  frozen_s: Float64Array;
  /**
   * Toe index per column, -p z / γ: capillary pressure p the column froze with (now, where it is liquid), over what would hold a face that
   * meets both plates as a tangent, γ / z; z is the column's distance from the root along its plate. Read it at a toe, in the
   * outermost column that has a number: 0 or less is safe, at 1 the liquid pulls so hard that a groove must form. NaN where nothing was liquid.
   */
  toeIndex: Float64Array;
  /** Regular grid of square cells, index `ib * na + ia`; the centre of cell (ia, ib) is a0_mm + ia*cell, b0_mm + ib*cell. */
  na: number;
  nb: number;
  a0_mm: number;
  b0_mm: number;
  part: Uint8Array;
  /** Share of the cell that is metal. */
  fill: Float32Array;
  /** Highest temperature reached by the metal in the cell; NaN in the void. */
  peak_C: Float32Array;
}

/** The opened root: one entry per slice of the joint proper. */
export interface RootStrip {
  y_mm: Float64Array;
  /** How far fusion reaches past the root line into each plate, square to its face; negative: short of it. */
  depthA_mm: Float64Array;
  depthB_mm: Float64Array;
  fused: Uint8Array;
}

/** The books of an attempt: metal in g, energy in J, and how far each fails to close. */
export interface Accounts {
  /** Metal fed as wire, and where it is. fed = deposited + spatter + dripped (+ wire that never melted, not counted as fed). */
  fed_g: number;
  deposited_g: number;
  spatter_g: number;
  dripped_g: number;
  /** |fed - deposited - spatter - dripped| / fed. */
  massError: number;
  arc_J: number;
  wire_J: number;
  stored_J: number;
  lost_J: number;
  sink_J: number;
  evaporated_J: number;
  dripped_J: number;
  /** |in - out - stored| / in. */
  energyError: number;
  arcTime_s: number;
  /** Liquid reached the edge of what is computed: metal may have run where no reading sees it. */
  leftTheRoom: boolean;
  /** Means over the time the arc burned; 0 where none did. */
  meanCurrent_A: number;
  meanVolts_V: number;
}

/** The weave as a curve in time; which knobs a pattern uses is said in weave.ts. */
export type PatternName = 'straight' | 'inverted-v' | 'triangle' | 'zigzag' | 'crescent';

/** What the robot hand is asked to follow. */
export interface WeaveOptions {
  pattern: PatternName;
  cyclesPerSecond: number;
  /** Wire-tip travel from toe to toe across the welder's view. */
  width_mm: number;
  travel_mmps: number;
  /** Pause at each toe, s. */
  pauseA_s: number;
  pauseB_s: number;
  /** Reach ahead at the root crossing, above the toes. */
  apex_mm: number;
  /** Which toe comes first, and which way round a triangle loops. */
  firstToe: 'A' | 'B';
  tipToWork_mm: number;
  workAngle_deg: number;
  travelAngle_deg: number;
  /** Hold at the bottom before climbing (builds the shelf), s. */
  shelf_s: number;
  start_mm: number;
  length_mm: number;
}

/** Imperfections of the robot hand; all zero is a perfect follower. */
export interface HandFaults {
  seed: number;
  /** RMS of aim wander, mm. */
  tremor_mm: number;
  /** Sideways drift per 100 mm climbed, mm. */
  driftU_mm: number;
  /** Tip-to-work grown per 100 mm climbed, mm. */
  driftTip_mm: number;
  /** Travel angle grown per 100 mm climbed, degrees. */
  driftTravel_deg: number;
  /** First-order lag of the hand, s. */
  lag_s: number;
  /** Relative spread of cycle durations and pauses. */
  timing: number;
  /** Relative spread of the pauses at one toe, the beat kept: what is not waited is spent crossing. Left out: even. */
  pauseSpreadA?: number;
  pauseSpreadB?: number;
  /** Offset of the aim up the joint at the root crossings (negative: crosses back in the puddle), mm. */
  lead_mm: number;
}

/** Whose hand held the torch. A robot stays marked as one wherever its recording goes. */
export interface Origin {
  kind: 'hand' | 'robot';
  /** Pattern and faults where a robot welded. */
  weave?: WeaveOptions;
  faults?: HandFaults;
}

/** What the torch was moved with, and what of the hand it could measure. */
export interface DeviceInfo {
  kind: 'mouse' | 'touch' | 'pen' | 'gamepad' | 'keyboard' | 'robot';
  /** What the device really measured; the rest was held by the exercise. */
  measures: { tipToWork: boolean; workAngle: boolean; travelAngle: boolean };
  /** Millimetres of joint per millimetre of hand, if known (1 after calibration). */
  scale: number | null;
}

/** Guides that were shown while welding. */
export interface AidsInUse {
  /** The torch that showed the weave to go by. */
  pacer: boolean;
  beat: boolean;
  toeMarks: boolean;
  plainView: boolean;
  /** The hand rig between pointer and torch, or null. */
  handRig: { gun_g: number; hose: number } | null;
}

/** Who welded, and where, as they gave it: names on a class sheet. */
export interface Trainee {
  name: string;
  bench: string;
}

/**
 * Why an attempt ended: by the welder; off the top of the joint; because the hand had no more to do (a weave welded out); after the longest
 * time an attempt may take; because the machine fell behind real time; because the page was closed or stopped under it.
 */
export const ENDINGS = ['stopped', 'length-reached', 'hand-finished', 'time-limit', 'too-slow', 'interrupted'] as const;
/** One of `ENDINGS`. */
export type Ending = (typeof ENDINGS)[number];

/** Everything needed to weld the same bead again. Pose columns are whole numbers of the quanta in recording.ts. */
export interface Recording {
  format: 'toehold-recording';
  version: 2;
  engine: string;
  simulation: SimulationOptions;
  rate_Hz: number;
  poses: {
    u: number[];
    y: number[];
    tip: number[];
    work: number[];
    travel: number[];
    trigger: number[];
  };
  origin: Origin;
  device: DeviceInfo;
  aids: AidsInUse;
  /** Null where nobody gave a name. */
  trainee: Trainee | null;
  /** When the attempt began, ISO 8601 date and time; null where nobody knows (a robot's file from the command line). */
  started: string | null;
  /** Seed of the robot hand's faults; null for a hand. */
  seed: number | null;
  /** Name of the exercise or null for a free attempt, and the exercise as it stood, as the scoring layer wrote it. */
  exercise: unknown;
  ended: Ending;
  /** State hash at the end, as the welding machine had it. */
  stateHash: string | null;
  /** Check numbers second by second (chain.ts); null in files of version 1 and where poses or settings were changed on purpose. */
  chain: string[] | null;
}

import { z } from 'zod';

/**
 * The joint on the bench and the settings on the machine, as files carry them. Shapes only: the engine's own check decides which
 * values it can weld with, and is asked when a file is read.
 */

export const jointSchema = z.strictObject({
  kind: z.enum(['tee', 'lap', 'corner']),
  plateA_mm: z.number(),
  plateB_mm: z.number(),
  plateWidth_mm: z.number(),
  length_mm: z.number(),
  gap_mm: z.number(),
  startTemp_C: z.number(),
  ambient_C: z.number(),
  sink_WpmmK: z.number(),
  tabs: z.boolean(),
});

export const processSchema = z.strictObject({
  wire_mm: z.literal([0.8, 0.9, 1.0, 1.2]),
  feed_mpmin: z.number(),
  volts_V: z.number(),
  gas: z.enum(['M21-ArC-18', 'M21-ArC-25', 'C1']),
  tip_mm: z.number(),
  nozzle_mm: z.number(),
});

export const simulationSchema = z.strictObject({
  joint: jointSchema,
  process: processSchema,
  cell_mm: z.number(),
});

export const weaveSchema = z.strictObject({
  pattern: z.enum(['straight', 'inverted-v', 'triangle', 'zigzag', 'crescent']),
  cyclesPerSecond: z.number(),
  width_mm: z.number(),
  travel_mmps: z.number(),
  pauseA_s: z.number(),
  pauseB_s: z.number(),
  apex_mm: z.number(),
  firstToe: z.enum(['A', 'B']),
  tipToWork_mm: z.number(),
  workAngle_deg: z.number(),
  travelAngle_deg: z.number(),
  shelf_s: z.number(),
  start_mm: z.number(),
  length_mm: z.number(),
  reStrikes: z.int().min(0).max(2).exactOptional(),
});

const faultsSchema = z.strictObject({
  seed: z.number(),
  tremor_mm: z.number(),
  driftU_mm: z.number(),
  driftTip_mm: z.number(),
  driftTravel_deg: z.number(),
  lag_s: z.number(),
  timing: z.number(),
  lead_mm: z.number(),
  pauseSpreadA: z.number().exactOptional(),
  pauseSpreadB: z.number().exactOptional(),
});

/** The hand rig between pointer and torch: gun weight in grams and hose drag, 0 none to 1 stiff. */
export const handRigSchema = z.strictObject({ gun_g: z.number().min(0).max(5000), hose: z.number().min(0).max(1) });

export const deviceSchema = z.strictObject({
  kind: z.enum(['mouse', 'touch', 'pen', 'gamepad', 'keyboard', 'robot']),
  measures: z.strictObject({ tipToWork: z.boolean(), workAngle: z.boolean(), travelAngle: z.boolean() }),
  scale: z.number().positive().max(1000).nullable(),
});

export const aidsInUseSchema = z.strictObject({
  pacer: z.boolean(),
  beat: z.boolean(),
  toeMarks: z.boolean(),
  plainView: z.boolean(),
  handRig: handRigSchema.nullable(),
});

/** Who welded, and where; names as a class sheet shows them. */
export const traineeSchema = z.strictObject({ name: z.string().min(1).max(120), bench: z.string().max(60) });

export const originSchema = z.strictObject({
  kind: z.enum(['hand', 'robot']),
  weave: weaveSchema.exactOptional(),
  faults: faultsSchema.exactOptional(),
});

/** Weight and drag of the hand rig. */
export type HandRig = z.infer<typeof handRigSchema>;

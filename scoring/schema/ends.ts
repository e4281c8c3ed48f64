import { z } from 'zod';

const reading = z.number().nullable();

/** The bottom end of the bead; see measures/bead/start.ts. */
export const beadStartSchema = z.strictObject({
  /** Lowest metal on the joint. */
  bottom_mm: z.number(),
  /** Face of the settled bead it is compared with, from the root. */
  settledFace_mm: z.number(),
  /** Height of the start over the settled face; negative: it stays under it. */
  lump_mm: z.number(),
  lumpAt_mm: z.number(),
  plusMinus_mm: z.number(),
  /** Lowest height from which the bead keeps nine tenths of its settled width; null: it never does. */
  fullWidthFrom_mm: reading,
  /** The same, over the strike. */
  fullWidthAboveStrike_mm: reading,
});

/** Flaws within 10 mm of a restarted stop; see measures/bead/restart-flaw.ts. Lengths along the joint. */
const flawSchema = z.strictObject({
  rootShort_mm: z.number(),
  overlap_mm: z.number(),
  faceLow_mm: z.number(),
  faceHigh_mm: z.number(),
  /** Length with at least one of them. */
  length_mm: z.number(),
  plusMinus_mm: z.number(),
  /** Least root fusion there, and its height. */
  rootFusion_mm: z.number(),
  rootFusionAt_mm: z.number(),
});

/** The bead where a run stopped; same order as `motion.stops`. See measures/bead/crater.ts. */
export const beadStopSchema = z.strictObject({
  y_mm: z.number(),
  /** Depth of the crater below the settled face, and where it is deepest; null without a settled bead to compare with. */
  craterDepth_mm: reading,
  craterAt_mm: reading,
  plusMinus_mm: z.number(),
  /** Deepest hollow below the line joining the toes. */
  hollow_mm: reading,
  /** Least size in the crater, and where. */
  leastSize_mm: reading,
  leastSizeAt_mm: reading,
  filled: z.boolean().nullable(),
  /** Null where the run was not taken up again. */
  flaw: flawSchema.nullable(),
});

/** The bottom end of a bead. */
export type BeadStart = z.infer<typeof beadStartSchema>;
/** The bead where a run stopped. */
export type BeadStop = z.infer<typeof beadStopSchema>;
/** What is wrong within 10 mm of a restarted stop. */
export type Flaw = z.infer<typeof flawSchema>;

import { z } from 'zod';

/**
 * The bead at one height. Every measure is defined in its own file under `measures/section/`. A is the back plate of a lap or the right plate of
 * a tee in the welder's view, B the edge plate or the left plate.
 */
export const stationSchema = z.strictObject({
  y_mm: z.number(),
  legA_mm: z.number(),
  legB_mm: z.number(),
  /** Leg of the largest right-angled isosceles triangle the weld holds, gap taken off. */
  size_mm: z.number(),
  /** Effective throat: least distance from root to face less convexity, gap taken off. */
  throat_mm: z.number(),
  actualThroat_mm: z.number(),
  theoreticalThroat_mm: z.number(),
  faceWidth_mm: z.number(),
  convexity_mm: z.number(),
  concavity_mm: z.number(),
  toeAngleA_deg: z.number(),
  toeAngleB_deg: z.number(),
  undercutA_mm: z.number(),
  undercutB_mm: z.number(),
  /** Toe of the metal minus edge of the fused plate: positive, metal rests on plate that never melted. */
  overlapA_mm: z.number(),
  overlapB_mm: z.number(),
  /** Melted plate outside the metal: a toe risk, not an undercut. */
  toeRiskA_mm: z.number(),
  toeRiskB_mm: z.number(),
  fusionDepthA_mm: z.number(),
  fusionDepthB_mm: z.number(),
  /** Least fusion along the plate's face between root and toe, ends left out; negative: not fused there. */
  leastFusionA_mm: z.number(),
  leastFusionB_mm: z.number(),
  rootFusionA_mm: z.number(),
  rootFusionB_mm: z.number(),
  /** How far fusion reaches past the original root line, the smaller of the two plates; negative: short of it. */
  rootFusion_mm: z.number(),
  rootFused: z.boolean(),
  /** Lap: how far the edge plate's corner is melted back along its upper face; null on other joints. */
  edgeMeltedBack_mm: z.number().nullable(),
  hazA_mm: z.number(),
  hazB_mm: z.number(),
});

/** How much the bead changes along the judged length; see measures/bead/summary.ts. */
export const consistencySchema = z.strictObject({
  size_mm: z.number(),
  faceWidth_mm: z.number(),
  convexity_mm: z.number(),
});

/** How even the bead is along its length. */
export type Consistency = z.infer<typeof consistencySchema>;
/** The bead at one height. */
export type Station = z.infer<typeof stationSchema>;
/** A measure that is read at every station. */
export type StationMeasure = Exclude<keyof Station, 'y_mm' | 'rootFused'>;

import { z } from 'zod';

const reading = z.number().nullable();

/** One pause at a toe: from the wire's arrival to its leaving. */
const toeVisitSchema = z.strictObject({
  /** Weave cycle, counted from 1. */
  cycle: z.number(),
  toe: z.enum(['A', 'B']),
  from_s: z.number(),
  to_s: z.number(),
  y_mm: z.number(),
  pause_s: z.number(),
  /** Farthest aim across the welder's view, from the root. */
  reach_mm: z.number(),
  /** Wetted at least 1 mm beyond the wire, and metal standing there, when the wire left. Null where the arc was out. */
  filled: z.boolean().nullable(),
});

/** One crossing of the root. */
const crossingSchema = z.strictObject({
  cycle: z.number(),
  t_s: z.number(),
  y_mm: z.number(),
  /** Arc foot minus upper boundary of the liquid; null without a puddle. */
  lead_mm: reading,
  onFront: z.boolean().nullable(),
});

/** What the hand did. Null: not there to read, and `notMeasured` of the result says why. */
export const motionSchema = z.strictObject({
  arcOnFrontShare: reading,
  lead_mm: reading,
  reachA_mm: reading,
  reachB_mm: reading,
  pauseA_s: reading,
  pauseB_s: reading,
  toeFilledShareA: reading,
  toeFilledShareB: reading,
  period_s: reading,
  periodCv: reading,
  /** Share of the sideways motion that lies at the weave's own beat (0 to 1). */
  beatShare: reading,
  width_mm: reading,
  stepUp_mm: reading,
  stepUpCv: reading,
  travel_mmps: reading,
  /** Travel of the top third minus that of the bottom third. */
  travelDrift_mmps: reading,
  tipToWork_mm: reading,
  tipToWorkDrift_mm: reading,
  workAngle_deg: reading,
  travelAngle_deg: reading,
  travelAngleDrift_deg: reading,
  cycles: z.number(),
  crossings: z.array(crossingSchema),
  toes: z.array(toeVisitSchema),
});

export type Motion = z.infer<typeof motionSchema>;
export type Crossing = z.infer<typeof crossingSchema>;
export type ToeVisit = z.infer<typeof toeVisitSchema>;

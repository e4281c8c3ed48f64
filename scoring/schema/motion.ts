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

/** How the run was begun; see measures/hand/shelf.ts. */
const startSchema = z.strictObject({
  t_s: z.number(),
  /** Where the arc was struck. */
  y_mm: z.number(),
  /** From the strike until the hand climbed off. */
  left_s: z.number(),
  /** Width of the shelf when the hand left it, as a share of the settled bead's. */
  shelfShare: reading,
  /** When, after the strike, the shelf reached nine tenths of the settled width, and how far the arc had climbed by then. */
  fullWidth_s: reading,
  fullWidth_mm: reading,
});

/** How the arc was taken up again after a stop; see measures/hand/stops.ts. */
const restartSchema = z.strictObject({
  t_s: z.number(),
  y_mm: z.number(),
  /** Strike over the place where the arc had gone out. */
  above_mm: z.number(),
  /** Nearest the arc came to that place before it climbed on; negative: below it. */
  back_mm: z.number(),
  inCrater_s: z.number(),
  way: z.enum(['above and back', 'on the crater', 'not back']),
});

/** Where a run's arc went out; see measures/hand/stops.ts. */
const stopSchema = z.strictObject({
  t_s: z.number(),
  y_mm: z.number(),
  /** Lowest and highest liquid when the arc went out. */
  craterFrom_mm: reading,
  craterTo_mm: reading,
  /** Short re-strikes that filled the crater, 0 to 2, and their arc time. */
  reStrikes: z.number(),
  reStrikeTime_s: z.number(),
  /** How long the arc was out before the next run; null after the last. */
  out_s: reading,
  restart: restartSchema.nullable(),
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
  /** How the run was begun, over the whole attempt; null where no run was welded. */
  start: startSchema.nullable(),
  /** Every stop of a run, over the whole attempt, in order of time. */
  stops: z.array(stopSchema),
  /** Times the trigger was tapped: short arcs that neither fill a crater nor are a run. */
  taps: z.number(),
});

/** What the hand did. */
export type Motion = z.infer<typeof motionSchema>;
/** One crossing of the root. */
export type Crossing = z.infer<typeof crossingSchema>;
/** One pause at a toe. */
export type ToeVisit = z.infer<typeof toeVisitSchema>;
/** How the run was begun. */
export type StartMotion = z.infer<typeof startSchema>;
/** Where a run's arc went out. */
export type Stop = z.infer<typeof stopSchema>;
/** How the arc was taken up again after a stop. */
export type Restart = z.infer<typeof restartSchema>;

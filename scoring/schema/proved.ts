import { z } from 'zod';
import { lineMeasures } from './profile.ts';
import { adviceSchema, changeSchema, lineVerdicts, resultSchema } from './result.ts';

/** The surface of a bead at one height, and what the cut shows there. Heights and legs in mm. */
const cutSchema = z.strictObject({
  y_mm: z.number(),
  /** Across the welder's view, plate B's side first. */
  u_mm: z.array(z.number()),
  /** Metal as it stands, and the joint as cut, out of the root. */
  w_mm: z.array(z.number()),
  plate_mm: z.array(z.number()),
  rootFusion_mm: z.number().nullable(),
  convexity_mm: z.number().nullable(),
  legA_mm: z.number().nullable(),
  legB_mm: z.number().nullable(),
});

/** A fault that has no line: metal that fell out of the joint. */
export const DROPPED = 'metal dropped out';

const readingSchema = z.strictObject({ reading: z.number(), verdict: z.enum(lineVerdicts), y_mm: z.number() });

/** One change welded again. */
const trialSchema = z.strictObject({
  change: changeSchema,
  /** The fault's own line in the re-run; null where there was none to read. */
  after: readingSchema.nullable(),
  /** The fault's line is within and nothing else got worse, both for this hand and for the same hand going a little differently. */
  mends: z.boolean(),
  /** Held for the hand going a little differently; null: not asked, the change did not mend the first time. */
  again: z.boolean().nullable(),
  /** What the change put outside or made worse, in words; empty: nothing. */
  spoils: z.array(z.string()),
});

/** Format of a piece of proved advice. */
const provedAdviceSchema = adviceSchema.extend({
  /** The change was tried on the trainee's own hand, and it mends this fault without putting another line outside. */
  proved: z.boolean(),
  /** Why nothing was tried: nothing is wrong to mend, nothing can mend it, or the budget went on what comes first. */
  untried: z.enum(['no line is outside', 'not a matter of one change', 'after the first things first']).nullable(),
  /** The line the advice is about. */
  fault: z
    .strictObject({
      measure: z.enum([...lineMeasures, DROPPED]),
      side: z.enum(['A', 'B']).nullable(),
      unit: z.string(),
      sense: z.enum(['at most', 'at least']),
      limit: z.number(),
      plusMinus: z.number(),
    })
    .nullable(),
  before: readingSchema.nullable(),
  after: readingSchema.nullable(),
  /** Both cuts at the fault's height, for the picture; null unless proved. */
  cuts: z.strictObject({ before: cutSchema, after: cutSchema }).nullable(),
  tried: z.array(trialSchema),
  /** Exercise to go to when no single change mends the fault. */
  drill: z.strictObject({ name: z.string(), title: z.string() }).nullable(),
  /** The sentence before anything was tried. */
  unproved: z.string(),
});

/** Format of a result with proved advice. */
export const provedResultSchema = resultSchema.extend({
  advice: z.array(provedAdviceSchema),
  /** Re-runs spent. */
  reruns: z.number(),
});

/** A cut as outlines and readings, small enough to go along with advice. */
export type Cut = z.infer<typeof cutSchema>;
/** One change welded again. */
export type Trial = z.infer<typeof trialSchema>;
/** Advice with what became of it when it was welded again. */
export type ProvedAdvice = z.infer<typeof provedAdviceSchema>;
/** A result whose advice was tried. */
export type ProvedResult = z.infer<typeof provedResultSchema>;

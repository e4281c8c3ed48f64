import { z } from 'zod';
import { adviceCodes, handMeasures, lineVerdicts } from '../../../scoring/index.ts';
import { timeSchema } from '../session/shelf.ts';

/** When a test is to be welded again. */
export const RETENTION_STEPS = ['day', 'week', 'fortnight'] as const;
export type RetentionStep = (typeof RETENTION_STEPS)[number];

/** Drills without metal. */
export const DRILLS = ['pattern', 'beat', 'toes'] as const;
export type Drill = (typeof DRILLS)[number];

const common = {
  id: z.string().min(1).max(200),
  made_ms: timeSchema,
  /** Who it was; null: nobody had said. */
  trainee: z.string().nullable(),
  /** Name of the exercise; null for none. */
  exercise: z.string().nullable(),
};

const band = z.object({ from: z.number(), to: z.number() });

/** What a trainee said of an attempt before the verdict, beside the verdict. */
const judgementSchema = z.object({
  ...common,
  kind: z.literal('judgement'),
  /** Id of the attempt. */
  attempt: z.string(),
  said: z
    .array(z.object({ measure: z.string(), said: z.enum(['inside', 'outside']), was: z.enum(lineVerdicts) }))
    .max(100),
  /** Smallest leg as guessed and as read, mm; null: not guessed. */
  leg: z.object({ said_mm: z.number(), was_mm: z.number(), plusMinus_mm: z.number() }).nullable(),
});

/** A drill: the hand alone, no metal. */
const drillSchema = z.object({
  ...common,
  kind: z.literal('drill'),
  drill: z.enum(DRILLS),
  duration_s: z.number().min(0),
  readings: z
    .array(
      z.object({
        measure: z.enum(handMeasures),
        unit: z.enum(['/s', 'mm', 's', 'mm/s', '%']),
        is: z.number(),
        asked: band.nullable(),
        inside: z.boolean().nullable(),
      }),
    )
    .max(20),
});

/** A test welded again after a while, without guides. */
const retentionSchema = z.object({
  ...common,
  kind: z.literal('retention'),
  attempt: z.string(),
  step: z.enum(RETENTION_STEPS),
  /** When it had been learnt. */
  base_ms: timeSchema,
});

/** A fault named off a robot's coupon. */
const namingSchema = z.object({
  ...common,
  kind: z.literal('naming'),
  level: z.int().min(1).max(3),
  was: z.enum(adviceCodes),
  said: z.enum(adviceCodes),
});

const practiceSchema = z.discriminatedUnion('kind', [judgementSchema, drillSchema, retentionSchema, namingSchema]);

/** What is practised beside attempts, as it is kept. */
export type PracticeRecord = z.infer<typeof practiceSchema>;
export type OwnJudgement = z.infer<typeof judgementSchema>;
export type Retention = z.infer<typeof retentionSchema>;

/** A kept record, or null where nothing can be made of it. */
export function readPractice(kept: unknown): PracticeRecord | null {
  const found = practiceSchema.safeParse(kept);
  return found.success ? found.data : null;
}

/** The record of a kind that belongs to an attempt: one each, so that judging or testing anew replaces it. */
export function idOf(kind: 'judgement' | 'retention', attempt: string): string {
  return `${kind}:${attempt}`;
}

export function isKind<K extends PracticeRecord['kind']>(kind: K) {
  return (r: PracticeRecord): r is Extract<PracticeRecord, { kind: K }> => r.kind === kind;
}

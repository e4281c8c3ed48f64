import { z } from 'zod';

const sha256 = z.string().regex(/^[0-9a-f]{64}$/);
const time = z.iso.datetime();

/**
 * Whose an attempt is and what it was handed in for, beside its file. It carries enough of class, trainee and assignment that the database
 * can be made anew from receipts, attempts and judges alone.
 */
export const receiptSchema = z.strictObject({
  format: z.literal('toehold-lab-receipt'),
  version: z.literal(1),
  attempt: sha256,
  bytes: z.number().int().min(0),
  received: time,
  number: z.number().int().min(1),
  late: z.boolean(),
  class: z.strictObject({ id: z.string(), name: z.string(), code: z.string() }),
  trainee: z.strictObject({
    id: z.string(),
    name: z.string(),
    sourcedId: z.string().nullable(),
    /** Absent from receipts of labs that dealt no pieces. */
    plate: z.number().int().nullable().default(null),
  }),
  assignment: z.strictObject({
    id: z.string(),
    title: z.string(),
    judge: sha256,
    opens: time,
    closes: time.nullable(),
    mostAttempts: z.number().int().min(1).nullable(),
    startWord: z.string().nullable().default(null),
  }),
  /** The judge with the piece dealt to this trainee; null: the assignment's own. */
  piece: sha256.nullable().default(null),
  /** The piece the file says it was welded on. */
  carried: z.strictObject({ number: z.number().int(), seed: z.string() }).nullable().default(null),
});

/** Whose an attempt is and what it was handed in for. */
export type Receipt = z.infer<typeof receiptSchema>;

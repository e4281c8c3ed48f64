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
  trainee: z.strictObject({ id: z.string(), name: z.string(), sourcedId: z.string().nullable() }),
  assignment: z.strictObject({
    id: z.string(),
    title: z.string(),
    judge: sha256,
    opens: time,
    closes: time.nullable(),
    mostAttempts: z.number().int().min(1).nullable(),
  }),
});

/** Whose an attempt is and what it was handed in for. */
export type Receipt = z.infer<typeof receiptSchema>;

import { z } from 'zod';

/** How several attempts become one mark. */
export const marksRuleSchema = z.discriminatedUnion('rule', [
  z.strictObject({ rule: z.literal('best') }),
  z.strictObject({ rule: z.literal('last') }),
  z.strictObject({ rule: z.literal('median of last'), attempts: z.number().int().min(1).max(50) }),
]);

/** How several attempts become one mark. */
export type MarksRule = z.infer<typeof marksRuleSchema>;

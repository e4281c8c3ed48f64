import validate from '@learninglocker/xapi-validation';
import { z } from 'zod';

/**
 * What is wrong with a statement by the rules of others: the package with which an open record store checks what it is sent, run against the conformance tests of the
 * specification's authors (@learninglocker/xapi-validation, MIT). The specification has not changed since that package was written.
 */
export function problemsByOthers(statement: unknown): unknown[] {
  return validate(statement);
}

/**
 * What ours may be besides, written from the published specification: xAPI 1.0.3, Part Two (Data), github.com/adlnet/xAPI-Spec, xAPI-Data.md, sections 2.2
 * to 2.4 and 4. Sections 2.2 to 2.4.2.1 were read there (a key the specification does not allow and null outside extensions are to be refused, 2.2; an
 * agent has exactly one inverse functional identifier, 2.4.2.1; an id is a UUID of RFC 4122, 2.4.1); the wording of the later ones is from memory. It is narrower than
 * they are: an actor is an account, an object an activity.
 */
const iri = z.string().regex(/^[a-z][a-z0-9+.-]*:[^\s<>"{}|\\^`]+$/i);
const language = z.record(z.string().regex(/^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$/), z.string());
const extensions = z.record(iri, z.unknown());
const agent = z.strictObject({
  objectType: z.literal('Agent').optional(),
  name: z.string().optional(),
  // 2.4.2.3: exactly one inverse functional identifier; here an account.
  account: z.strictObject({ homePage: iri, name: z.string().min(1) }),
});
const score = z
  .strictObject({
    scaled: z.number().min(-1).max(1).optional(),
    raw: z.number().optional(),
    min: z.number().optional(),
    max: z.number().optional(),
  })
  .refine((s) => s.raw === undefined || ((s.min ?? -Infinity) <= s.raw && s.raw <= (s.max ?? Infinity)))
  .refine((s) => s.min === undefined || s.max === undefined || s.min < s.max);

export const statementSchema = z.strictObject({
  // RFC 4122, with its variant and a version.
  id: z.string().regex(/^[0-9a-f]{8}-[0-9a-f]{4}-[1-5][0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/),
  actor: agent,
  verb: z.strictObject({ id: iri, display: language }),
  object: z.strictObject({
    objectType: z.literal('Activity'),
    id: iri,
    definition: z.strictObject({
      name: language,
      description: language.optional(),
      type: iri,
      moreInfo: iri.optional(),
    }),
  }),
  result: z.strictObject({
    score: score.optional(),
    success: z.boolean().optional(),
    completion: z.boolean().optional(),
    response: z.string().optional(),
    // ISO 8601, not finer than a hundredth of a second (4.6).
    duration: z
      .string()
      .regex(/^PT\d+(\.\d{1,2})?S$/)
      .optional(),
    extensions: extensions.optional(),
  }),
  // 2.4.6: `revision` and `platform` only where the object is an Activity, as it is here.
  context: z.strictObject({ platform: z.string().optional(), extensions: extensions.optional() }),
  timestamp: z.iso.datetime({ offset: true }),
  version: z.string().regex(/^1\.0\.\d+$/),
});

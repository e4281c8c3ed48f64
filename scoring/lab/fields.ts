import { z } from '@hono/zod-openapi';

/** Text a person typed: of one line, without characters that steer a terminal, reorder a line or cannot be stored. */
const UNFIT = /[\p{Cc}\p{Cs}\u061c\u200e\u200f\u2028\u2029\u202a-\u202e\u2066-\u2069]/u;

export function line(most: number) {
  return z
    .string()
    .trim()
    .min(1)
    .max(most)
    .refine((text) => !UNFIT.test(text), 'has control characters or line breaks');
}

/** Ids the lab gives out. */
export const id = z.uuid();
export const sha256 = z.string().regex(/^[0-9a-f]{64}$/, 'is not a SHA-256 in lower-case hex');
const time = z.iso.datetime({ offset: true });
export const className = line(80);
export const personName = line(120);
export const title = line(120);
/** A password somebody chooses. */
export const newPassword = z.string().min(10).max(200);

/** Years nothing of a school lies outside of; a database takes fewer than a Date does. */
export const when = time
  .refine((text) => /^(19|20|21)\d\d-/.test(text), 'is not between 1900 and 2199')
  .transform((text) => new Date(text));

const problemsSchema = z
  .object({
    error: z.string(),
    problems: z.array(z.object({ field: z.string(), message: z.string() })),
  })
  .openapi('Problems');

/** Answers every route may give besides its own. */
export const refusals = Object.fromEntries(
  (
    [
      [400, 'Something in the request cannot be used; the field is named.'],
      [401, 'Not logged in.'],
      [403, 'Not allowed, or the request did not come from the lab’s own page.'],
      [404, 'Not there, or not yours.'],
      [409, 'It does not fit what is there.'],
      [413, 'Too large.'],
      [415, 'Not the kind of content taken here.'],
      [429, 'Too many requests; Retry-After says how many seconds to wait.'],
      [503, 'The database or the disk does not answer; try again.'],
    ] as const
  ).map(([status, description]) => [
    status,
    { description, content: { 'application/json': { schema: problemsSchema } } },
  ]),
) as Record<never, never>;

export function answers<S extends z.ZodType>(schema: S, description: string) {
  return { 200: { description, content: { 'application/json': { schema } } }, ...refusals };
}

export const done = z.object({ done: z.literal(true) });

/** Answers of a route that sends a file. */
export function fileAnswers(description: string, type: string) {
  return { 200: { description, content: { [type]: { schema: z.string() } } }, ...refusals };
}

/** A route that takes a body of JSON. */
export function jsonBody<S extends z.ZodType>(schema: S) {
  return { body: { required: true, content: { 'application/json': { schema } } } };
}

import type { z } from '@hono/zod-openapi';
import { type Exercise, exerciseNamed, InputError, type Profile, profileSchema, readExercise } from '../index.ts';
import { Refusal } from './refusal.ts';

/** Content of a file as a request carries it. */
export type Given = Record<string, unknown>;

/** An exercise by name, or the content of a school's own file, of this or an earlier version. @throws Refusal naming each field that does not fit */
export function exerciseGiven(asked: string | Given): Exercise {
  if (typeof asked === 'string') {
    const ready = exerciseNamed(asked);
    if (ready === undefined)
      throw new Refusal(400, 'exercise', `There is no ready exercise called ${JSON.stringify(asked)}.`);
    return ready;
  }
  try {
    return readExercise(JSON.stringify(asked));
  } catch (cause) {
    if (!(cause instanceof InputError)) throw cause;
    const [first] = cause.problems;
    throw new Refusal(
      400,
      ['exercise', first?.path ?? ''].filter((p) => p !== '').join('.'),
      `found ${first?.found}, allowed: ${first?.allowed}`,
    );
  }
}

/** A school's own acceptance profile. @throws Refusal naming the first field that does not fit */
export function profileGiven(asked: Given | undefined): Profile | undefined {
  return asked === undefined ? undefined : inside('profile', profileSchema, asked);
}

function inside<T>(field: string, schema: z.ZodType<T>, value: unknown): T {
  const read = schema.safeParse(value);
  if (read.success) return read.data;
  const { path, message } = read.error.issues[0]!;
  throw new Refusal(400, [field, ...path].join('.'), message);
}

import { randomUUID } from 'node:crypto';
import { createRoute, type OpenAPIHono, z } from '@hono/zod-openapi';
import { and, asc, count, eq } from 'drizzle-orm';
import { type LabEnv, only } from '../access.ts';
import { note } from '../audit.ts';
import { answers, done, id, jsonBody } from '../fields.ts';
import { exerciseGiven } from '../given.ts';
import { judgeOf } from '../judge.ts';
import type { Parts } from '../parts.ts';
import { notThere, Refusal } from '../refusal.ts';
import { exercises } from '../tables.ts';

/** Most exercises one instructor keeps here. */
const MOST = 200;

const content = z.record(z.string(), z.unknown());
const exerciseOut = z
  .object({
    id: z.string(),
    title: z.string(),
    added: z.string(),
    /** As its file has it: what handing it out takes. */
    exercise: content,
  })
  .openapi('OwnExercise');

/** An instructor's own exercises, kept to be handed out. Taking one away changes nothing that was handed out: that is judged by its own copy. */
export function exerciseRoutes(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  listExercises(app, parts);
  addExercise(app, parts);
  dropExercise(app, parts);
}

function listExercises(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  const { db } = parts.store;
  app.openapi(
    createRoute({
      method: 'get',
      path: '/api/exercises',
      ...only('instructor', parts),
      responses: answers(z.object({ exercises: z.array(exerciseOut) }), 'This instructor’s own exercises, by title'),
    }),
    async (c) => {
      const { who } = c.var;
      if (who.role !== 'instructor') throw notThere('');
      const rows = await db
        .select()
        .from(exercises)
        .where(eq(exercises.instructorId, who.id))
        .orderBy(asc(exercises.title), asc(exercises.id));
      return c.json({ exercises: rows.map(said) }, 200);
    },
  );
}

function addExercise(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  const { db } = parts.store;
  app.openapi(
    createRoute({
      method: 'post',
      path: '/api/exercises',
      ...only('instructor', parts),
      request: jsonBody(
        z.strictObject({
          /** As its file has it, with the school's own limits in it where it has some. */
          exercise: content,
        }),
      ),
      responses: answers(exerciseOut, 'Kept'),
    }),
    async (c) => {
      const { who } = c.var;
      if (who.role !== 'instructor') throw notThere('');
      const exercise = exerciseGiven(c.req.valid('json').exercise);
      // What could not be handed out is not kept either.
      judgeOf(exercise);
      const row = {
        ...{ id: randomUUID(), instructorId: who.id, title: exercise.title, made: new Date() },
        content: { ...exercise },
      };
      await db.transaction(async (tx) => {
        const [there] = await tx.select({ n: count() }).from(exercises).where(eq(exercises.instructorId, who.id));
        if ((there?.n ?? 0) >= MOST)
          throw new Refusal(409, 'exercise', `There are ${MOST} already: take one away first.`);
        await tx.insert(exercises).values(row);
        await note(tx, who, { did: 'own exercise added', detail: { exercise: row.id } });
      });
      return c.json(said(row), 200);
    },
  );
}

function dropExercise(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  const { db } = parts.store;
  app.openapi(
    createRoute({
      method: 'delete',
      path: '/api/exercises/{exerciseId}',
      ...only('instructor', parts),
      request: { params: z.object({ exerciseId: id }) },
      responses: answers(done, 'Taken away; what was handed out stays'),
    }),
    async (c) => {
      const { who } = c.var;
      const { exerciseId } = c.req.valid('param');
      if (who.role !== 'instructor') throw notThere('exerciseId');
      const gone = await db
        .delete(exercises)
        .where(and(eq(exercises.id, exerciseId), eq(exercises.instructorId, who.id)))
        .returning({ id: exercises.id });
      if (gone.length === 0) throw notThere('exerciseId');
      await note(db, who, { did: 'own exercise taken away', detail: { exercise: exerciseId } });
      return c.json({ done: true as const }, 200);
    },
  );
}

function said(row: typeof exercises.$inferSelect): z.infer<typeof exerciseOut> {
  return { id: row.id, title: row.title, added: row.made.toISOString(), exercise: row.content };
}

import { randomUUID } from 'node:crypto';
import { createRoute, type OpenAPIHono, z } from '@hono/zod-openapi';
import { and, asc, count, eq, inArray, ne, notInArray } from 'drizzle-orm';
import { type LabEnv, only } from '../access.ts';
import { note } from '../audit.ts';
import { answers, done, id, jsonBody, newPassword, personName } from '../fields.ts';
import type { GuessLimit } from '../limits.ts';
import type { Parts } from '../parts.ts';
import { hashSecret, isSecret } from '../passwords.ts';
import { notThere, Refusal } from '../refusal.ts';
import type { Who } from '../sessions.ts';
import type { Db } from '../store.ts';
import { exercises, instructors, sessions, teaches } from '../tables.ts';

const one = z.object({ instructorId: id });
const instructorOut = z
  .object({ id: z.string(), name: z.string(), keeper: z.boolean(), classes: z.number() })
  .openapi('Instructor');

/**
 * Who may come in as an instructor. It is the keepers' to say: the first instructor and whoever a keeper makes one. A keeper can give anybody a new password and so
 * come into any class; that stands in the trail.
 */
export function instructorRoutes(app: OpenAPIHono<LabEnv>, parts: Parts, guesses: GuessLimit): void {
  listInstructors(app, parts);
  addInstructor(app, parts);
  changeInstructor(app, parts);
  removeInstructor(app, parts);
  changeOwnPassword(app, parts, guesses);
}

function listInstructors(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  const { db } = parts.store;
  app.openapi(
    createRoute({
      method: 'get',
      path: '/api/instructors',
      ...only('keeper', parts),
      responses: answers(z.object({ instructors: z.array(instructorOut) }), 'All instructors, by name'),
    }),
    async (c) => {
      const rows = await db
        .select({
          id: instructors.id,
          name: instructors.name,
          keeper: instructors.keeper,
          classes: count(teaches.classId),
        })
        .from(instructors)
        .leftJoin(teaches, eq(teaches.instructorId, instructors.id))
        .groupBy(instructors.id)
        .orderBy(asc(instructors.name));
      return c.json({ instructors: rows }, 200);
    },
  );
}

function addInstructor(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  const { db } = parts.store;
  app.openapi(
    createRoute({
      method: 'post',
      path: '/api/instructors',
      ...only('keeper', parts),
      request: jsonBody(z.strictObject({ name: personName, password: newPassword })),
      responses: answers(done, 'Another instructor, who teaches no class yet'),
    }),
    async (c) => {
      const { name, password: secret } = c.req.valid('json');
      const id = randomUUID();
      const password = await hashSecret(secret, 'password');
      await db.transaction(async (tx) => {
        const made = await tx
          .insert(instructors)
          .values({ id, name, password, keeper: false, made: new Date() })
          .onConflictDoNothing()
          .returning({ id: instructors.id });
        if (made.length === 0) throw new Refusal(409, 'name', 'There is an instructor of this name.');
        await note(tx, c.var.who, { did: 'instructor added', detail: { instructor: id } });
      });
      return c.json({ done: true as const }, 200);
    },
  );
}

function changeInstructor(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  const { db } = parts.store;
  app.openapi(
    createRoute({
      method: 'patch',
      path: '/api/instructors/{instructorId}',
      ...only('keeper', parts),
      request: {
        params: one,
        ...jsonBody(
          z
            .strictObject({
              /** A new one, to be told by word of mouth; ends every session of theirs. */
              password: newPassword.optional(),
              keeper: z.boolean().optional(),
            })
            .refine((change) => Object.keys(change).length > 0, 'changes nothing'),
        ),
      },
      responses: answers(done, 'Changed'),
    }),
    async (c) => {
      const { instructorId } = c.req.valid('param');
      const { password, keeper } = c.req.valid('json');
      const hash = password === undefined ? undefined : await hashSecret(password, 'password');
      await db.transaction(async (tx) => {
        const keepers = await lockedKeepers(tx, c.var.who);
        if (keeper === false && keepers.every((k) => k === instructorId)) {
          throw new Refusal(409, 'keeper', 'Somebody has to be in charge of the lab.');
        }
        const changed = await tx
          .update(instructors)
          .set({
            ...(hash === undefined ? {} : { password: hash }),
            ...(keeper === undefined ? {} : { keeper }),
          })
          .where(eq(instructors.id, instructorId))
          .returning({ id: instructors.id });
        if (changed.length === 0) throw notThere('instructorId');
        if (hash !== undefined) await tx.delete(sessions).where(eq(sessions.instructorId, instructorId));
        const what = [
          ...(hash === undefined ? [] : ['password']),
          ...(keeper === undefined ? [] : [keeper ? 'in charge' : 'no longer in charge']),
        ];
        await note(tx, c.var.who, { did: 'instructor changed', detail: { instructor: instructorId, what } });
      });
      return c.json({ done: true as const }, 200);
    },
  );
}

function removeInstructor(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  const { db } = parts.store;
  app.openapi(
    createRoute({
      method: 'delete',
      path: '/api/instructors/{instructorId}',
      ...only('keeper', parts),
      request: { params: one },
      responses: answers(
        z.object({ done: z.literal(true), classes: z.number() }),
        'Removed; classes that nobody else teaches, so many, and own exercises have come to who asked',
      ),
    }),
    async (c) => {
      const { instructorId } = c.req.valid('param');
      const { who } = c.var;
      if (who.role !== 'instructor') throw notThere('instructorId');
      // So somebody in charge is always left.
      if (instructorId === who.id)
        throw new Refusal(409, 'instructorId', 'Nobody removes themselves: another who is in charge can.');
      const classes = await db.transaction(async (tx) => {
        await lockedKeepers(tx, who);
        const taught = await tx.select().from(teaches).where(eq(teaches.instructorId, instructorId));
        const others = tx
          .select({ classId: teaches.classId })
          .from(teaches)
          .where(ne(teaches.instructorId, instructorId));
        const alone =
          taught.length === 0
            ? []
            : await tx
                .update(teaches)
                .set({ instructorId: who.id })
                .where(
                  and(
                    eq(teaches.instructorId, instructorId),
                    inArray(
                      teaches.classId,
                      taught.map((t) => t.classId),
                    ),
                    notInArray(teaches.classId, others),
                  ),
                )
                .returning({ classId: teaches.classId });
        await tx.update(exercises).set({ instructorId: who.id }).where(eq(exercises.instructorId, instructorId));
        const gone = await tx
          .delete(instructors)
          .where(eq(instructors.id, instructorId))
          .returning({ id: instructors.id });
        if (gone.length === 0) throw notThere('instructorId');
        await note(tx, who, { did: 'instructor removed', detail: { instructor: instructorId } });
        for (const { classId } of alone)
          await note(tx, who, { did: 'class taken over', classId, detail: { from: instructorId } });
        return alone.length;
      });
      return c.json({ done: true as const, classes }, 200);
    },
  );
}

function changeOwnPassword(app: OpenAPIHono<LabEnv>, parts: Parts, guesses: GuessLimit): void {
  const { db } = parts.store;
  app.openapi(
    createRoute({
      method: 'post',
      path: '/api/me/password',
      ...only('instructor', parts),
      request: jsonBody(z.strictObject({ old: z.string().min(1).max(200), password: newPassword })),
      responses: answers(done, 'Changed; every other session of this instructor is over'),
    }),
    async (c) => {
      const { who } = c.var;
      if (who.role !== 'instructor') throw notThere('');
      const { old, password } = c.req.valid('json');
      await guesses.before(c, who.name);
      const [row] = await db.select().from(instructors).where(eq(instructors.id, who.id));
      if (!(await isSecret(old, row?.password ?? null, 'password'))) {
        await guesses.wrong(c, who.name);
        throw new Refusal(403, 'old', 'This is not the password until now.');
      }
      const hash = await hashSecret(password, 'password');
      await db.transaction(async (tx) => {
        await tx.update(instructors).set({ password: hash }).where(eq(instructors.id, who.id));
        await tx.delete(sessions).where(and(eq(sessions.instructorId, who.id), ne(sessions.csrf, who.csrf)));
        await note(tx, who, { did: 'own password changed' });
      });
      return c.json({ done: true as const }, 200);
    },
  );
}

/** Ids of all who are in charge, locked so that two who take it from each other come one after the other. @throws Refusal where who asks no longer is */
async function lockedKeepers(tx: Db, who: Who): Promise<string[]> {
  const rows = await tx
    .select({ id: instructors.id })
    .from(instructors)
    .where(eq(instructors.keeper, true))
    .orderBy(asc(instructors.id))
    .for('update');
  if (who.role !== 'instructor' || rows.every((r) => r.id !== who.id))
    throw new Refusal(403, '', 'This is for whoever is in charge of the lab.');
  return rows.map((r) => r.id);
}

import { createRoute, type OpenAPIHono, z } from '@hono/zod-openapi';
import { and, eq, lte } from 'drizzle-orm';
import { exerciseSchema, resultSchema } from '../../index.ts';
import { MOST_BYTES } from '../../node/index.ts';
import { type LabEnv, only } from '../access.ts';
import { ClassDesk } from '../class-desk.ts';
import { answers, done, id, jsonBody, sha256 } from '../fields.ts';
import { readJudge } from '../judge.ts';
import type { Parts } from '../parts.ts';
import { dealtTo } from '../piece.ts';
import { BEAT_S, sayWelding } from '../presence.ts';
import { notThere } from '../refusal.ts';
import type { Who } from '../sessions.ts';
import { submit } from '../submit.ts';
import { assignments, classes, judges, trainees } from '../tables.ts';
import { assignmentOut, assignmentSaid } from './assignments.ts';
import { handedSaid } from './attempts.ts';

const mineOut = z
  .object({
    id: z.string(),
    assignment: z.string(),
    /** SHA-256 of its file. */
    attempt: z.string(),
    number: z.number(),
    received: z.string(),
    late: z.boolean(),
    state: z.enum(['waiting', 'scored', 'could not be scored']),
    verdict: z.string().nullable(),
    result: resultSchema.nullable(),
    fault: z.string().nullable(),
  })
  .openapi('MyAttempt');

/** A trainee's own work; nobody else's can be asked for here. */
export function traineeRoutes(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  ownAssignments(app, parts);
  handIn(app, parts);
  sayWhoWelds(app, parts);
  ownAttempts(app, parts);
}

function ownAssignments(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  const { db } = parts.store;
  app.openapi(
    createRoute({
      method: 'get',
      path: '/api/my/assignments',
      ...only('trainee', parts),
      responses: answers(
        z.object({ assignments: z.array(assignmentOut.extend({ exerciseFile: exerciseSchema })) }),
        'Exercises of the class that have opened',
      ),
    }),
    async (c) => {
      const who = trainee(c.var.who);
      const [own] = await db.select({ plate: trainees.plate }).from(trainees).where(eq(trainees.id, who.id));
      const rows = await db
        .select({ assignment: assignments, content: judges.content })
        .from(assignments)
        .innerJoin(judges, eq(judges.digest, assignments.judge))
        .where(and(eq(assignments.classId, who.classId), lte(assignments.opens, new Date())))
        .orderBy(assignments.opens, assignments.id);
      const said = rows.map(({ assignment, content }) => ({
        ...assignmentSaid(assignment, content),
        exerciseFile: dealtTo(readJudge(content).exercise, { ...assignment, plate: own?.plate ?? null }),
      }));
      return c.json({ assignments: said }, 200);
    },
  );
}

function handIn(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  const { db } = parts.store;
  app.openapi(
    createRoute({
      method: 'put',
      path: '/api/my/assignments/{assignmentId}/attempts/{digest}',
      ...only('trainee', parts),
      description: `Hands an attempt in: the bytes of its file, at most ${MOST_BYTES}, under their SHA-256. Sent again, it is the same attempt.`,
      request: {
        params: z.object({ assignmentId: id, digest: sha256 }),
        body: { required: true, content: { 'application/octet-stream': { schema: z.string() } } },
      },
      responses: answers(
        z.object({ id: z.string(), number: z.number(), late: z.boolean(), known: z.boolean() }),
        'On the disk; it will be scored',
      ),
    }),
    async (c) => {
      const { assignmentId, digest } = c.req.valid('param');
      const bytes = new Uint8Array(await c.req.arrayBuffer());
      const who = trainee(c.var.who);
      const { judge, fresh, ...said } = await submit(db, parts.files, {
        who,
        assignmentId,
        digest,
        bytes,
        now: new Date(),
      });
      (fresh ? parts.metrics.accepted : parts.metrics.repeated).inc();
      // Should this fail, the attempt is safe and the next sweep queues it.
      await parts.queue
        .add([{ attempt: digest, judge }], true)
        .then(parts.queued, (cause) => parts.log.warn(cause, 'not queued'));
      return c.json({ ...said, known: !fresh }, 200);
    },
  );
}

function sayWhoWelds(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  const { db } = parts.store;
  app.openapi(
    createRoute({
      method: 'post',
      path: '/api/my/welding',
      ...only('trainee', parts),
      request: jsonBody(z.strictObject({ welding: z.boolean() })),
      responses: answers(done, `The instructor sees who welds; said again every ${BEAT_S} s while the arc burns`),
    }),
    async (c) => {
      await sayWelding(db, trainee(c.var.who), c.req.valid('json').welding, new Date());
      return c.json({ done: true as const }, 200);
    },
  );
}

function ownAttempts(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  const { db } = parts.store;
  app.openapi(
    createRoute({
      method: 'get',
      path: '/api/my/attempts',
      ...only('trainee', parts),
      responses: answers(z.object({ attempts: z.array(mineOut) }), 'Own attempts, the latest first'),
    }),
    async (c) => {
      const who = trainee(c.var.who);
      const [row] = await db.select().from(classes).where(eq(classes.id, who.classId));
      if (row === undefined) throw notThere('');
      const handed = await new ClassDesk(db, row, parts.versions).handed({ trainee: who.id, most: 500 });
      const attempts = handed.map((h) => {
        const { id, attempt, number, received, late, state, verdict, fault } = handedSaid(h);
        const result = h.score?.result ?? null;
        return { id, assignment: h.assignment.id, attempt, number, received, late, state, verdict, result, fault };
      });
      return c.json({ attempts }, 200);
    },
  );
}

function trainee(who: Who): Extract<Who, { role: 'trainee' }> {
  if (who.role !== 'trainee') throw notThere('');
  return who;
}

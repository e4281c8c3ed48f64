import { randomUUID } from 'node:crypto';
import { createRoute, type OpenAPIHono, z } from '@hono/zod-openapi';
import { asc, desc, eq } from 'drizzle-orm';
import { type LabEnv, only } from '../access.ts';
import { note } from '../audit.ts';
import { answers, className, done, id, jsonBody, personName } from '../fields.ts';
import { marksRuleSchema } from '../marks-rule.ts';
import type { Parts } from '../parts.ts';
import { newCode } from '../passwords.ts';
import { notThere, Refusal } from '../refusal.ts';
import { audit, classes, instructors, teaches } from '../tables.ts';

const classOut = z
  .object({ id: z.string(), name: z.string(), code: z.string(), pins: z.boolean(), marks: marksRuleSchema })
  .openapi('Class');
const inClass = z.object({ classId: id });

/** A class as the lab says it. */
const classSaid = ({ id, name, code, pins, marks }: typeof classes.$inferSelect) => ({ id, name, code, pins, marks });

/** Classes: what they are called, how they count, who teaches them. */
export function classRoutes(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  listClasses(app, parts);
  makeClass(app, parts);
  readClass(app, parts);
  changeClass(app, parts);
  readTeachers(app, parts);
  addTeacher(app, parts);
  readTrail(app, parts);
}

function listClasses(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  const { db } = parts.store;
  app.openapi(
    createRoute({
      method: 'get',
      path: '/api/classes',
      ...only('instructor', parts),
      responses: answers(z.object({ classes: z.array(classOut) }), 'Classes this instructor teaches'),
    }),
    async (c) => {
      const { who } = c.var;
      const rows =
        who.role !== 'instructor'
          ? []
          : await db
              .select({ class: classes })
              .from(teaches)
              .innerJoin(classes, eq(classes.id, teaches.classId))
              .where(eq(teaches.instructorId, who.id))
              .orderBy(asc(classes.name), asc(classes.id));
      return c.json({ classes: rows.map((r) => classSaid(r.class)) }, 200);
    },
  );
}

function makeClass(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  const { db } = parts.store;
  app.openapi(
    createRoute({
      method: 'post',
      path: '/api/classes',
      ...only('instructor', parts),
      request: jsonBody(z.strictObject({ name: className })),
      responses: answers(classOut, 'A new class, empty, with its code'),
    }),
    async (c) => {
      const { who } = c.var;
      if (who.role !== 'instructor') throw notThere('');
      const { name } = c.req.valid('json');
      const row = {
        id: randomUUID(),
        name,
        code: newCode(),
        marks: { rule: 'median of last', attempts: 3 } as const,
        pins: false,
        made: new Date(),
      };
      await db.transaction(async (tx) => {
        await tx.insert(classes).values(row);
        await tx.insert(teaches).values({ classId: row.id, instructorId: who.id });
        await note(tx, who, { did: 'class made', classId: row.id });
      });
      return c.json(classSaid(row), 200);
    },
  );
}

function readClass(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  app.openapi(
    createRoute({
      method: 'get',
      path: '/api/classes/{classId}',
      ...only('class', parts),
      request: { params: inClass },
      responses: answers(classOut, 'The class'),
    }),
    (c) => c.json(classSaid(c.var.desk.class), 200),
  );
}

function changeClass(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  const { db } = parts.store;
  app.openapi(
    createRoute({
      method: 'patch',
      path: '/api/classes/{classId}',
      ...only('class', parts),
      request: {
        params: inClass,
        ...jsonBody(
          z
            .strictObject({
              name: className.optional(),
              marks: marksRuleSchema.optional(),
              pins: z.boolean().optional(),
              /** A new code; who has joined stays in. */
              newCode: z.literal(true).optional(),
            })
            .refine((change) => Object.keys(change).length > 0, 'changes nothing'),
        ),
      },
      responses: answers(done, 'Changed'),
    }),
    async (c) => {
      const { newCode: another, ...change } = c.req.valid('json');
      const { desk, who } = c.var;
      await desk.change({ ...withoutUndefined(change), ...(another === true ? { code: newCode() } : {}) });
      await note(db, who, {
        did: 'class changed',
        classId: desk.id,
        detail: { what: Object.keys(c.req.valid('json')) },
      });
      return c.json({ done: true as const }, 200);
    },
  );
}

function readTeachers(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  const { db } = parts.store;
  app.openapi(
    createRoute({
      method: 'get',
      path: '/api/classes/{classId}/teachers',
      ...only('class', parts),
      request: { params: inClass },
      responses: answers(z.object({ teachers: z.array(z.string()) }), 'Names of those who teach the class'),
    }),
    async (c) => {
      const rows = await db
        .select({ name: instructors.name })
        .from(teaches)
        .innerJoin(instructors, eq(instructors.id, teaches.instructorId))
        .where(eq(teaches.classId, c.var.desk.id))
        .orderBy(asc(instructors.name));
      return c.json({ teachers: rows.map((r) => r.name) }, 200);
    },
  );
}

function addTeacher(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  const { db } = parts.store;
  app.openapi(
    createRoute({
      method: 'post',
      path: '/api/classes/{classId}/teachers',
      ...only('class', parts),
      request: {
        params: inClass,
        ...jsonBody(z.strictObject({ name: personName })),
      },
      responses: answers(done, 'That instructor teaches the class too'),
    }),
    async (c) => {
      const { name } = c.req.valid('json');
      const { desk, who } = c.var;
      const [row] = await db.select().from(instructors).where(eq(instructors.name, name));
      if (row === undefined) throw new Refusal(404, 'name', 'There is no instructor of this name.');
      await desk.addTeacher(row.id);
      await note(db, who, { did: 'teacher added', classId: desk.id, detail: { instructor: row.id } });
      return c.json({ done: true as const }, 200);
    },
  );
}

function readTrail(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  const { db } = parts.store;
  app.openapi(
    createRoute({
      method: 'get',
      path: '/api/classes/{classId}/audit',
      ...only('class', parts),
      request: { params: inClass },
      responses: answers(
        z.object({
          trail: z.array(
            z.object({ at: z.string(), role: z.string(), who: z.string(), did: z.string(), detail: z.unknown() }),
          ),
        }),
        'What was done to this class’s data, the latest first, at most 1000 entries',
      ),
    }),
    async (c) => {
      const rows = await db
        .select()
        .from(audit)
        .where(eq(audit.classId, c.var.desk.id))
        .orderBy(desc(audit.id))
        .limit(1000);
      const trail = rows.map(({ at, role, who, did, detail }) => ({ at: at.toISOString(), role, who, did, detail }));
      return c.json({ trail }, 200);
    },
  );
}

/** Optional fields that were left out are no fields at all. */
export function withoutUndefined<T extends object>(fields: T): { [K in keyof T]?: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]?: Exclude<T[K], undefined>;
  };
}

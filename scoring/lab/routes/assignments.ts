import { createRoute, type OpenAPIHono, z } from '@hono/zod-openapi';
import { type LabEnv, only } from '../access.ts';
import { note } from '../audit.ts';
import { answers, done, id, jsonBody, title, when } from '../fields.ts';
import { exerciseGiven, profileGiven } from '../given.ts';
import type { AssignmentRow } from '../handed.ts';
import { judgeOf, readJudge } from '../judge.ts';
import type { Parts } from '../parts.ts';
import { notThere, Refusal } from '../refusal.ts';
import { withoutUndefined } from './classes.ts';

const inClass = z.object({ classId: id });
const one = z.object({ classId: id, assignmentId: id });
const mostAttempts = z.number().int().min(1).max(1000).nullable();

export const assignmentOut = z
  .object({
    id: z.string(),
    title: z.string(),
    exercise: z.string(),
    opens: z.string(),
    closes: z.string().nullable(),
    mostAttempts: z.number().nullable(),
    judge: z.string(),
  })
  .openapi('Assignment');

const newAssignment = z.strictObject({
  /** A ready exercise by name, or one of the school's own as its file has it. */
  exercise: z.union([z.string().min(1).max(60), z.record(z.string(), z.unknown())]),
  /** The school's own acceptance profile; left out: the one the exercise names. */
  profile: z.record(z.string(), z.unknown()).optional(),
  /** Left out: the exercise's. */
  title: title.optional(),
  opens: when,
  /** Null: it stays open. What arrives later is kept and called late. */
  closes: when.nullable(),
  /** Null: any number. What comes beyond is kept and does not count. */
  mostAttempts,
});

/** Exercises handed out to a class. */
export function assignmentRoutes(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  readAssignments(app, parts);
  handOut(app, parts);
  changeAssignment(app, parts);
}

function readAssignments(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  app.openapi(
    createRoute({
      method: 'get',
      path: '/api/classes/{classId}/assignments',
      ...only('class', parts),
      request: { params: inClass },
      responses: answers(z.object({ assignments: z.array(assignmentOut) }), 'What is handed out, by opening time'),
    }),
    async (c) => {
      const { desk } = c.var;
      const rows = await desk.assignments();
      const assignments = await Promise.all(rows.map(async (r) => assignmentSaid(r, await desk.judgeContent(r))));
      return c.json({ assignments }, 200);
    },
  );
}

function handOut(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  const { db } = parts.store;
  app.openapi(
    createRoute({
      method: 'post',
      path: '/api/classes/{classId}/assignments',
      ...only('class', parts),
      request: { params: inClass, ...jsonBody(newAssignment) },
      responses: answers(assignmentOut, 'Handed out'),
    }),
    async (c) => {
      const asked = c.req.valid('json');
      const { desk, who } = c.var;
      const exercise = exerciseGiven(asked.exercise);
      const judge = judgeOf(exercise, profileGiven(asked.profile));
      inOrder(asked.opens, asked.closes);
      await parts.files.keepJudge(judge.content);
      const row = await desk.assign({
        title: asked.title ?? exercise.title,
        judge,
        opens: asked.opens,
        closes: asked.closes,
        mostAttempts: asked.mostAttempts,
      });
      await note(db, who, { did: 'exercise handed out', classId: desk.id, detail: { assignment: row.id } });
      return c.json(assignmentSaid(row, judge.content), 200);
    },
  );
}

function changeAssignment(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  const { db } = parts.store;
  app.openapi(
    createRoute({
      method: 'patch',
      path: '/api/classes/{classId}/assignments/{assignmentId}',
      ...only('class', parts),
      request: {
        params: one,
        ...jsonBody(
          z
            .strictObject({
              title: title.optional(),
              opens: when.optional(),
              closes: when.nullable().optional(),
              mostAttempts: mostAttempts.optional(),
            })
            .refine((change) => Object.keys(change).length > 0, 'changes nothing'),
        ),
      },
      responses: answers(done, 'Changed; attempts already in keep what they were when they came'),
    }),
    async (c) => {
      const { assignmentId } = c.req.valid('param');
      const change = withoutUndefined(c.req.valid('json'));
      const { desk, who } = c.var;
      const row = await desk.assignment(assignmentId);
      if (row === null) throw notThere('assignmentId');
      inOrder(change.opens ?? row.opens, change.closes === undefined ? row.closes : change.closes);
      await desk.changeAssignment(row.id, change);
      const detail = { assignment: row.id, what: Object.keys(change) };
      await note(db, who, { did: 'assignment changed', classId: desk.id, detail });
      return c.json({ done: true as const }, 200);
    },
  );
}

export function assignmentSaid(row: AssignmentRow, judgeContent: string): z.infer<typeof assignmentOut> {
  return {
    id: row.id,
    title: row.title,
    exercise: readJudge(judgeContent).exercise.name,
    opens: row.opens.toISOString(),
    closes: row.closes?.toISOString() ?? null,
    mostAttempts: row.mostAttempts,
    judge: row.judge,
  };
}

function inOrder(opens: Date, closes: Date | null): void {
  if (closes !== null && closes <= opens) throw new Refusal(400, 'closes', 'It closes before it opens.');
}

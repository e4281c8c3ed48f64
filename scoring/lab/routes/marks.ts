import { createRoute, type OpenAPIHono, z } from '@hono/zod-openapi';
import { type LabEnv, only } from '../access.ts';
import { note } from '../audit.ts';
import { answers, done, id, jsonBody, line } from '../fields.ts';
import type { Parts } from '../parts.ts';
import { notThere } from '../refusal.ts';

const one = z.object({ classId: id, assignmentId: id });
const version = line(40);
const summary = z.object({
  verdict: z.string().nullable(),
  score: z.number().nullable(),
  fault: z.string().nullable(),
});
const markOut = z
  .object({
    trainee: z.object({ id: z.string(), name: z.string(), sourcedId: z.string().nullable() }),
    attempts: z.number(),
    computed: z.object({
      mark: z.number().nullable(),
      from: z.array(z.number()),
      leftOut: z.array(z.object({ number: z.number(), why: z.string() })),
    }),
    set: z.number().nullable(),
    history: z.array(z.object({ mark: z.number().nullable(), reason: z.string(), by: z.string(), at: z.string() })),
  })
  .openapi('Mark');

/** Marks by the class's rule, marks set beside them, and what a newer engine would say. */
export function markRoutes(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  readMarks(app, parts);
  setMark(app, parts);
  readVersions(app, parts);
  readDifferences(app, parts);
}

function readMarks(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  app.openapi(
    createRoute({
      method: 'get',
      path: '/api/classes/{classId}/assignments/{assignmentId}/marks',
      ...only('class', parts),
      request: { params: one },
      responses: answers(z.object({ marks: z.array(markOut) }), 'A row for everybody on the roster, by name'),
    }),
    async (c) => {
      const { desk } = c.var;
      const assignment = await desk.assignment(c.req.valid('param').assignmentId);
      if (assignment === null) throw notThere('assignmentId');
      const rows = await desk.marks(assignment);
      const marks = rows.map((row) => ({
        ...row,
        history: row.history.map(({ mark, reason, by, at }) => ({ mark, reason, by, at: at.toISOString() })),
      }));
      return c.json({ marks }, 200);
    },
  );
}

function setMark(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  app.openapi(
    createRoute({
      method: 'post',
      path: '/api/classes/{classId}/assignments/{assignmentId}/marks/{traineeId}',
      ...only('class', parts),
      request: {
        params: one.extend({ traineeId: id }),
        ...jsonBody(
          z.strictObject({
            /** Null takes back the mark that was set. */
            mark: z.number().int().min(0).max(100).nullable(),
            reason: line(500),
          }),
        ),
      },
      responses: answers(done, 'Set beside the computed mark, which stays; so does every mark set before'),
    }),
    async (c) => {
      const { assignmentId, traineeId } = c.req.valid('param');
      const { mark, reason } = c.req.valid('json');
      const { desk, who } = c.var;
      if ((await desk.assignment(assignmentId)) === null) throw notThere('assignmentId');
      if ((await desk.trainee(traineeId)) === null) throw notThere('traineeId');
      const by = who.role === 'instructor' ? who.name : '';
      await desk.setMark({ assignmentId, traineeId, mark, reason, by });
      const detail = { assignment: assignmentId, trainee: traineeId, mark };
      await note(desk.db, who, { did: 'mark set', classId: desk.id, detail });
      return c.json({ done: true as const }, 200);
    },
  );
}

function readVersions(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  app.openapi(
    createRoute({
      method: 'get',
      path: '/api/classes/{classId}/versions',
      ...only('class', parts),
      request: { params: z.object({ classId: id }) },
      responses: answers(
        z.object({
          current: z.object({ engine: z.string(), scoring: z.string() }),
          versions: z.array(z.object({ engine: z.string(), scoring: z.string(), scores: z.number() })),
        }),
        'Versions of engine and scoring this class was scored with; every score ever made stays',
      ),
    }),
    async (c) => c.json({ current: parts.versions, versions: await c.var.desk.versions() }, 200),
  );
}

function readDifferences(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  app.openapi(
    createRoute({
      method: 'get',
      path: '/api/classes/{classId}/differences',
      ...only('class', parts),
      request: {
        params: z.object({ classId: id }),
        query: z.strictObject({ engine: version, scoring: version }),
      },
      responses: answers(
        z.object({
          compared: z.number(),
          differing: z.array(
            z.object({
              id: z.string(),
              trainee: z.string(),
              assignment: z.string(),
              number: z.number(),
              before: summary,
              after: summary,
            }),
          ),
        }),
        'Attempts that the version asked for and this program’s judge differently',
      ),
    }),
    async (c) => c.json(await c.var.desk.differences(c.req.valid('query'), parts.versions), 200),
  );
}

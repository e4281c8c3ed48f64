import { createRoute, type OpenAPIHono, z } from '@hono/zod-openapi';
import { type LabEnv, only } from '../access.ts';
import { note } from '../audit.ts';
import { answers, id, jsonBody, line } from '../fields.ts';
import { readOneRoster } from '../one-roster.ts';
import type { Parts } from '../parts.ts';
import { hashSecret, newPin } from '../passwords.ts';
import { notThere, Refusal } from '../refusal.ts';
import { readRoster } from '../roster.ts';

const MOST_TRAINEES = 2000;

const traineeOut = z
  .object({
    id: z.string(),
    name: z.string(),
    sourcedId: z.string().nullable(),
    plate: z.number().nullable(),
    hasPin: z.boolean(),
  })
  .openapi('Trainee');
const csvText = z.string().min(1).max(700_000);
const inClass = z.object({ classId: id });

/** Who is in a class. */
export function rosterRoutes(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  readNames(app, parts);
  addNames(app, parts);
  givePin(app, parts);
}

function readNames(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  app.openapi(
    createRoute({
      method: 'get',
      path: '/api/classes/{classId}/roster',
      ...only('class', parts),
      request: { params: inClass },
      responses: answers(z.object({ trainees: z.array(traineeOut) }), 'The roster, by name'),
    }),
    async (c) => {
      const rows = await c.var.desk.trainees();
      return c.json(
        {
          trainees: rows.map(({ id, name, sourcedId, plate, pin }) => {
            return { id, name, sourcedId, plate, hasPin: pin !== null };
          }),
        },
        200,
      );
    },
  );
}

function addNames(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  const { db } = parts.store;
  app.openapi(
    createRoute({
      method: 'post',
      path: '/api/classes/{classId}/roster',
      ...only('class', parts),
      request: {
        params: inClass,
        ...jsonBody(
          z.union([
            /** Text of a CSV file with a column `name`, or of one name a line. */
            z.strictObject({ csv: csvText }),
            /** Texts of users.csv and enrollments.csv of a OneRoster export. */
            z.strictObject({ users: csvText, enrollments: csvText, classSourcedId: line(120).optional() }),
          ]),
        ),
      },
      responses: answers(
        z.object({ added: z.number(), known: z.number() }),
        'Those not on the roster yet were added; nobody is taken off',
      ),
    }),
    async (c) => {
      const given = c.req.valid('json');
      const people =
        'csv' in given ? readRoster(given.csv) : readOneRoster(given.users, given.enrollments, given.classSourcedId);
      const { desk, who } = c.var;
      if ((await desk.trainees()).length + people.length > MOST_TRAINEES) {
        throw new Refusal(409, 'csv', `A class takes at most ${MOST_TRAINEES} trainees.`);
      }
      const added = await desk.addTrainees(people);
      await note(db, who, { did: 'roster added to', classId: desk.id, detail: { added } });
      return c.json({ added, known: people.length - added }, 200);
    },
  );
}

function givePin(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  const { db } = parts.store;
  app.openapi(
    createRoute({
      method: 'post',
      path: '/api/classes/{classId}/trainees/{traineeId}/pin',
      ...only('class', parts),
      request: { params: z.object({ classId: id, traineeId: id }) },
      responses: answers(z.object({ pin: z.string() }), 'A new PIN, shown this once'),
    }),
    async (c) => {
      const { traineeId } = c.req.valid('param');
      const { desk, who } = c.var;
      if ((await desk.trainee(traineeId)) === null) throw notThere('traineeId');
      const pin = newPin();
      await desk.setPin(traineeId, await hashSecret(pin, 'pin'));
      await note(db, who, { did: 'PIN given', classId: desk.id, detail: { trainee: traineeId } });
      return c.json({ pin }, 200);
    },
  );
}

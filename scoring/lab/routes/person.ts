import { createRoute, type OpenAPIHono, z } from '@hono/zod-openapi';
import { type LabEnv, only } from '../access.ts';
import { note } from '../audit.ts';
import { eraseTrainee } from '../erase.ts';
import { answers, fileAnswers, id } from '../fields.ts';
import type { Parts } from '../parts.ts';
import { notThere } from '../refusal.ts';
import { fileAnswer, handedSaid } from './attempts.ts';

const one = z.object({ classId: id, traineeId: id });

/** A person's data: all of it taken out, or away. */
export function personRoutes(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  exportTrainee(app, parts);
  eraseOne(app, parts);
}

function exportTrainee(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  app.openapi(
    createRoute({
      method: 'get',
      path: '/api/classes/{classId}/trainees/{traineeId}/export',
      ...only('class', parts),
      request: { params: one },
      responses: fileAnswers(
        'Everything the lab keeps of a trainee; the attempts’ files are fetched by themselves',
        'application/json',
      ),
    }),
    async (c) => {
      const { desk, who } = c.var;
      const row = await desk.trainee(c.req.valid('param').traineeId);
      if (row === null) throw notThere('traineeId');
      const handed = await desk.handed({ trainee: row.id });
      const attempts = handed.map((h) => ({ ...handedSaid(h), result: h.score?.result ?? null }));
      const set = (await Promise.all((await desk.assignments()).map((a) => desk.overrides(a.id)))).flat();
      const { pin, nameKey: _key, ...person } = row;
      const text = JSON.stringify(
        {
          trainee: { ...person, hasPin: pin !== null },
          class: { id: desk.id, name: desk.class.name },
          attempts,
          marksSet: set.filter((o) => o.traineeId === row.id),
        },
        null,
        2,
      );
      await note(desk.db, who, { did: 'trainee exported', classId: desk.id, detail: { trainee: row.id } });
      return fileAnswer(text, 'trainee.json', 'application/json');
    },
  );
}

function eraseOne(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  app.openapi(
    createRoute({
      method: 'delete',
      path: '/api/classes/{classId}/trainees/{traineeId}',
      ...only('class', parts),
      request: { params: one },
      responses: answers(
        z.object({ attempts: z.number() }),
        'Erased: the person, their attempts and scores. Backups made before still hold them',
      ),
    }),
    async (c) => {
      const { desk, who } = c.var;
      const row = await desk.trainee(c.req.valid('param').traineeId);
      if (row === null) throw notThere('traineeId');
      return c.json({ attempts: await eraseTrainee(desk, parts.files, row.id, who) }, 200);
    },
  );
}

import { setTimeout as sleep } from 'node:timers/promises';
import { createRoute, type OpenAPIHono, z } from '@hono/zod-openapi';
import { streamSSE } from 'hono/streaming';
import { type LabEnv, only } from '../access.ts';
import { id, refusals } from '../fields.ts';
import type { Parts } from '../parts.ts';
import { nowIn } from '../presence.ts';

/** How often a class is looked at, ms. Asked of the database, so that it holds with any number of services and workers. */
const LOOK_MS = 1500;
/** Then the page asks anew, and is asked anew who it is, ms. */
const LASTS_MS = 600_000;

/** What a class's page is told as it happens. */
export function liveRoutes(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  app.openapi(
    createRoute({
      method: 'get',
      path: '/api/classes/{classId}/live',
      ...only('class', parts),
      request: { params: z.object({ classId: id }) },
      responses: {
        200: {
          description:
            'Server-sent events, at once and whenever they change: `progress`, how many attempts are handed in and scored; `now`, who welds and whose attempts wait',
          content: { 'text/event-stream': { schema: z.string() } },
        },
        ...refusals,
      },
    }),
    (c) => {
      const { desk } = c.var;
      return streamSSE(
        c,
        async (stream) => {
          const until = performance.now() + LASTS_MS;
          let told = '';
          let toldNow = '';
          while (!stream.aborted && performance.now() < until) {
            const now = JSON.stringify(await desk.progress());
            if (now !== told) await stream.writeSSE({ event: 'progress', data: now });
            told = now;
            const people = JSON.stringify(await nowIn(desk, new Date()));
            if (people !== toldNow) await stream.writeSSE({ event: 'now', data: people });
            toldNow = people;
            await sleep(LOOK_MS);
          }
        },
        // The lab is being stopped, or its database does not answer: the page asks again by itself.
        async (cause) => parts.log.warn(cause, 'a live view broke off'),
      );
    },
  );
}

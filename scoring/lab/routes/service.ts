import { createRoute, type OpenAPIHono, z } from '@hono/zod-openapi';
import { sql } from 'drizzle-orm';
import { type LabEnv, only } from '../access.ts';
import { answers, refusals, sha256 } from '../fields.ts';
import type { Parts } from '../parts.ts';
import { notThere } from '../refusal.ts';
import { fileAnswer } from './attempts.ts';

/** For those who run the lab, and its scoring workers. */
export function serviceRoutes(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  app.openapi(
    createRoute({
      method: 'get',
      path: '/api/health',
      ...only('anyone', parts),
      responses: answers(z.object({ engine: z.string(), scoring: z.string() }), 'The process is there'),
    }),
    (c) => c.json(parts.versions, 200),
  );

  app.openapi(
    createRoute({
      method: 'get',
      path: '/api/ready',
      ...only('anyone', parts),
      responses: answers(z.object({ ready: z.literal(true) }), 'Database and queue answer'),
    }),
    async (c) => {
      await parts.store.db.execute(sql`select 1`);
      await parts.queue.waiting();
      return c.json({ ready: true as const }, 200);
    },
  );

  app.openapi(
    createRoute({
      method: 'get',
      path: '/api/metrics',
      ...only('worker', parts),
      responses: {
        200: { description: 'Counts for Prometheus', content: { 'text/plain': { schema: z.string() } } },
        ...refusals,
      },
    }),
    async (c) => {
      parts.metrics.waiting.set(await parts.queue.waiting());
      const { registry } = parts.metrics;
      return c.text(await registry.metrics(), 200, { 'Content-Type': registry.contentType });
    },
  );

  app.openapi(
    createRoute({
      method: 'get',
      path: '/api/worker/attempts/{digest}',
      ...only('worker', parts),
      request: { params: z.object({ digest: sha256 }) },
      responses: {
        200: {
          description: 'The bytes of an attempt’s file',
          content: { 'application/octet-stream': { schema: z.string() } },
        },
        ...refusals,
      },
    }),
    async (c) => {
      const bytes = await parts.files.readAttempt(c.req.valid('param').digest);
      if (bytes === null) throw notThere('digest');
      return fileAnswer(bytes, 'attempt.json');
    },
  );
}

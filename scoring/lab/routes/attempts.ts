import { createRoute, type OpenAPIHono, z } from '@hono/zod-openapi';
import { resultSchema } from '../../index.ts';
import { type LabEnv, only } from '../access.ts';
import { note } from '../audit.ts';
import type { ClassDesk } from '../class-desk.ts';
import { ClassEvidence } from '../class-evidence.ts';
import { answers, id, refusals, sha256 } from '../fields.ts';
import type { Handed } from '../handed.ts';
import type { Parts } from '../parts.ts';
import { notThere } from '../refusal.ts';

const evidenceOut = z.object({ code: z.string(), text: z.string() });
const handedOut = z
  .object({
    id: z.string(),
    trainee: z.object({ id: z.string(), name: z.string() }),
    assignment: z.object({ id: z.string(), title: z.string() }),
    number: z.number(),
    received: z.string(),
    late: z.boolean(),
    bytes: z.number(),
    attempt: z.string(),
    state: z.enum(['waiting', 'scored', 'could not be scored']),
    verdict: z.string().nullable(),
    score: z.number().nullable(),
    /** The first thing to change, in a sentence. */
    firstFix: z.string().nullable(),
    fault: z.string().nullable(),
  })
  .openapi('Handed');
const listedOut = handedOut
  .extend({
    /** What speaks for or against it, with what shows it. */
    evidence: z.array(evidenceOut),
    /** Among it, whether its motion is nearly another's; where many are handed in that is said when one is opened. */
    compared: z.boolean(),
  })
  .openapi('Listed');

export function handedSaid({ submission: s, trainee, assignment, score }: Handed): z.infer<typeof handedOut> {
  return {
    id: s.id,
    trainee,
    assignment: { id: assignment.id, title: assignment.title },
    number: s.number,
    received: s.received.toISOString(),
    late: s.late,
    bytes: s.bytes,
    attempt: s.attempt,
    state: score === null ? 'waiting' : score.result === null ? 'could not be scored' : 'scored',
    verdict: score?.result?.verdict ?? null,
    score: score?.result?.score ?? null,
    firstFix: score?.result?.advice[0]?.text ?? null,
    fault: score?.fault ?? null,
  };
}

const oneOut = z.object({ handed: handedOut, result: resultSchema.nullable(), evidence: z.array(evidenceOut) });

/** What a class handed in, for its instructors. */
export function attemptRoutes(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  app.openapi(
    createRoute({
      method: 'get',
      path: '/api/classes/{classId}/attempts',
      ...only('class', parts),
      request: {
        params: z.object({ classId: id }),
        query: z.strictObject({
          trainee: id.optional(),
          assignment: id.optional(),
          most: z.coerce.number().int().min(1).max(5000).default(500),
        }),
      },
      responses: answers(
        z.object({ attempts: z.array(listedOut) }),
        'Attempts with what speaks for or against each, the latest first',
      ),
    }),
    async (c) => {
      const { trainee, assignment, most } = c.req.valid('query');
      const filter = { most, ...(trainee && { trainee }), ...(assignment && { assignment }) };
      const handed = await c.var.desk.handed(filter);
      const evidence = await ClassEvidence.about(c.var.desk, handed);
      const attempts: z.infer<typeof listedOut>[] = [];
      for (const h of handed) {
        const compared = evidence.isCompared(h);
        attempts.push({ ...handedSaid(h), evidence: await evidence.of(h, compared), compared });
      }
      return c.json({ attempts }, 200);
    },
  );

  app.openapi(
    createRoute({
      method: 'get',
      path: '/api/classes/{classId}/attempts/{submissionId}',
      ...only('class', parts),
      request: { params: z.object({ classId: id, submissionId: sha256 }) },
      responses: answers(oneOut, 'An attempt with its result and whatever speaks for or against it'),
    }),
    async (c) => {
      const { desk } = c.var;
      const handed = await theOne(desk, c.req.valid('param').submissionId);
      const evidence = await desk.evidence(handed);
      return c.json({ handed: handedSaid(handed), result: handed.score?.result ?? null, evidence }, 200);
    },
  );

  app.openapi(
    createRoute({
      method: 'get',
      path: '/api/classes/{classId}/attempts/{submissionId}/file',
      ...only('class', parts),
      request: { params: z.object({ classId: id, submissionId: sha256 }) },
      responses: {
        200: {
          description: 'The attempt’s file, byte for byte as it came',
          content: { 'application/octet-stream': { schema: z.string() } },
        },
        ...refusals,
      },
    }),
    async (c) => {
      const { desk, who } = c.var;
      const { submission } = await theOne(desk, c.req.valid('param').submissionId);
      const bytes = await parts.files.readAttempt(submission.attempt);
      if (bytes === null) throw notThere('submissionId');
      await note(desk.db, who, { did: 'attempt fetched', classId: desk.id, detail: { submission: submission.id } });
      return fileAnswer(bytes, `${submission.attempt.slice(0, 12)}.json`);
    },
  );
}

async function theOne(desk: ClassDesk, submission: string): Promise<Handed> {
  const [handed] = await desk.handed({ submission });
  if (handed === undefined) throw notThere('submissionId');
  return handed;
}

/** Bytes to be saved and not shown: nothing that came from outside is ever opened as a page of the lab's. */
export function fileAnswer(bytes: Uint8Array | string, name: string, type = 'application/octet-stream') {
  return new Response(bytes as Uint8Array<ArrayBuffer> | string, {
    headers: { 'Content-Type': type, 'Content-Disposition': `attachment; filename="${name}"` },
  });
}

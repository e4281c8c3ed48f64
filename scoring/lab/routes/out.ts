import { createRoute, type OpenAPIHono, z } from '@hono/zod-openapi';
import { stringify } from 'csv-stringify/sync';
import { classSheet, faultName, rowsCsv, rowsJsonl, type Scored } from '../../node/index.ts';
import { type LabEnv, only } from '../access.ts';
import type { ClassDesk } from '../class-desk.ts';
import { answers, fileAnswers, id } from '../fields.ts';
import type { Parts } from '../parts.ts';
import { notThere } from '../refusal.ts';
import { tooOld } from '../retention.ts';
import { scoredFiles } from '../scored-files.ts';
import { fileAnswer } from './attempts.ts';

const inClass = z.object({ classId: id });

/** Everything in a lab was handed in for something handed out, a school's own exercises too. */
const askedBy = (scored: readonly Scored[]): Set<string> => new Set(scored.flatMap((s) => s.exercise ?? []));

/** Everything handed in by a class, with its scores. */
const handedScores = async (desk: ClassDesk) => scoredFiles(desk, await desk.handed());

/** What leaves the lab of a class: tables, papers, results for other systems. */
export function outRoutes(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  classTable(app, parts);
  resultsCsv(app, parts);
  resultsLines(app, parts);
  classPaper(app, parts);
  keptHowLong(app, parts);
  oneRosterResults(app, parts);
}

function classTable(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  app.openapi(
    createRoute({
      method: 'get',
      path: '/api/classes/{classId}/table',
      ...only('class', parts),
      request: { params: inClass },
      responses: answers(
        z.object({
          rows: z.array(
            z.object({
              trainee: z.string(),
              exercise: z.string().nullable(),
              device: z.string(),
              attempts: z.number(),
              within: z.number(),
              withoutVerdict: z.number(),
              median: z.number().nullable(),
              spread: z.object({ from: z.number(), to: z.number() }).nullable(),
              commonFault: z.string().nullable(),
              /** The same in words. */
              commonFaultSays: z.string().nullable(),
            }),
          ),
          commonFault: z.object({ code: z.string(), trainees: z.number(), attempts: z.number() }).nullable(),
          seeFirst: z.array(
            z.object({
              trainee: z.string(),
              fault: z.string(),
              faultCode: z.string(),
              says: z.string(),
              times: z.number(),
              of: z.number(),
              y_mm: z.number().nullable(),
              line: z.string().nullable(),
            }),
          ),
          notCounted: z.array(z.object({ file: z.string(), why: z.array(z.string()) })),
          waiting: z.array(z.string()),
          notes: z.array(z.string()),
        }),
        'The class sheet as data, by the code that makes it from a folder',
      ),
    }),
    async (c) => {
      const scores = await handedScores(c.var.desk);
      const sheet = classSheet(scores, askedBy(scores.scored));
      return c.json(
        {
          rows: sheet.rows.map(
            ({ attempts, trainee, exercise, device, within, withoutVerdict, median, spread, commonFault }) => ({
              trainee,
              exercise,
              device,
              attempts: attempts.length,
              within,
              withoutVerdict,
              median,
              spread,
              commonFault,
              commonFaultSays: commonFault === null ? null : faultName(commonFault),
            }),
          ),
          commonFault: sheet.commonFault,
          seeFirst: sheet.firstThree.map(({ trainee, entry, fault, says, times, of, y_mm, line }) => ({
            trainee,
            fault,
            faultCode: entry.fault!.code,
            says,
            times,
            of,
            y_mm,
            line,
          })),
          notCounted: sheet.notCounted.map((e) => ({ file: e.file, why: e.notCounted })),
          waiting: sheet.bad.map((b) => b.reason),
          notes: sheet.notes,
        },
        200,
      );
    },
  );
}

function resultsCsv(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  app.openapi(
    createRoute({
      method: 'get',
      path: '/api/classes/{classId}/results.csv',
      ...only('class', parts),
      request: { params: inClass },
      responses: fileAnswers('A row an attempt, the columns of `toehold score --out`', 'text/csv'),
    }),
    async (c) => fileAnswer(rowsCsv((await handedScores(c.var.desk)).scored), 'results.csv', 'text/csv; charset=utf-8'),
  );
}

function resultsLines(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  app.openapi(
    createRoute({
      method: 'get',
      path: '/api/classes/{classId}/results.jsonl',
      ...only('class', parts),
      request: { params: inClass },
      responses: fileAnswers('The same rows, one JSON object a line', 'application/jsonl'),
    }),
    async (c) => fileAnswer(rowsJsonl((await handedScores(c.var.desk)).scored), 'results.jsonl', 'application/jsonl'),
  );
}

function classPaper(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  app.openapi(
    createRoute({
      method: 'get',
      path: '/api/classes/{classId}/class.pdf',
      ...only('class', parts),
      request: { params: inClass },
      responses: fileAnswers(
        'The class sheet on A4, byte for byte what `toehold sheet --out class.pdf` makes of the same files',
        'application/pdf',
      ),
    }),
    async (c) => {
      const { desk } = c.var;
      const scores = await handedScores(desk);
      const sheet = classSheet(scores, askedBy(scores.scored));
      const recordings: Record<string, Uint8Array> = {};
      for (const { entry } of sheet.firstThree) {
        const bytes = await parts.files.readAttempt(entry.scored.sha256);
        if (bytes !== null) recordings[entry.file] = bytes;
      }
      const pdf = await parts.papers.classPdf({ ...scores, asked: [...askedBy(scores.scored)], recordings });
      return fileAnswer(pdf, 'class.pdf', 'application/pdf');
    },
  );
}

function keptHowLong(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  app.openapi(
    createRoute({
      method: 'get',
      path: '/api/classes/{classId}/retention',
      ...only('class', parts),
      request: { params: inClass },
      responses: answers(
        z.object({
          keepDays: z.number().nullable(),
          before: z.string().nullable(),
          trainees: z.array(z.string()),
          attempts: z.number(),
        }),
        'How long the school keeps attempts, and what of this class goes next night; null: for ever',
      ),
    }),
    async (c) => {
      const { desk } = c.var;
      const { keepDays } = parts.settings;
      if (keepDays === null) return c.json({ keepDays, before: null, trainees: [], attempts: 0 }, 200);
      const old = await tooOld(desk.db, keepDays, new Date(), desk.id);
      const names = new Map((await desk.trainees()).map((t) => [t.id, t.name]));
      return c.json(
        {
          keepDays,
          before: old.before.toISOString(),
          trainees: old.trainees.map((t) => names.get(t.id) ?? '').sort(),
          attempts: old.attempts.length,
        },
        200,
      );
    },
  );
}

function oneRosterResults(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  app.openapi(
    createRoute({
      method: 'get',
      path: '/api/classes/{classId}/assignments/{assignmentId}/one-roster/results.csv',
      ...only('class', parts),
      request: { params: inClass.extend({ assignmentId: id }) },
      responses: fileAnswers(
        'OneRoster results.csv: the mark set by hand where there is one, else the computed one',
        'text/csv',
      ),
    }),
    async (c) => {
      const { desk } = c.var;
      const assignment = await desk.assignment(c.req.valid('param').assignmentId);
      if (assignment === null) throw notThere('assignmentId');
      const now = new Date().toISOString();
      const rows = (await desk.marks(assignment)).flatMap((row) => {
        const score = row.set ?? row.computed.mark;
        // Without an id of the school's own system there is nobody there whom the row could mean.
        if (row.trainee.sourcedId === null || score === null) return [];
        return [
          {
            sourcedId: `${assignment.id}:${row.trainee.id}`,
            status: 'active',
            dateLastModified: now,
            lineItemSourcedId: assignment.id,
            studentSourcedId: row.trainee.sourcedId,
            scoreStatus: row.set === null ? 'partially graded' : 'fully graded',
            score,
            scoreDate: now.slice(0, 10),
            comment: row.set === null ? '' : row.history.at(-1)!.reason,
          },
        ];
      });
      const columns = [
        ...['sourcedId', 'status', 'dateLastModified', 'lineItemSourcedId', 'studentSourcedId'],
        ...['scoreStatus', 'score', 'scoreDate', 'comment'],
      ];
      return fileAnswer(
        stringify(rows, { header: true, columns, escape_formulas: true }),
        'results.csv',
        'text/csv; charset=utf-8',
      );
    },
  );
}

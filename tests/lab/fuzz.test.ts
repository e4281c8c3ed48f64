import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { shortAttempt } from './support/attempts.ts';
import {
  anotherInstructor,
  firstInstructor,
  joined,
  newClass,
  newLab,
  Person,
  SETTINGS,
  type TestLab,
} from './support/school.ts';
import { stopServer } from './support/stores.ts';

/** What of JSON Schema the document uses. */
interface Schema {
  $ref?: string;
  type?: string | string[];
  enum?: unknown[];
  const?: unknown;
  properties?: Record<string, Schema>;
  required?: string[];
  items?: Schema;
  anyOf?: Schema[];
  oneOf?: Schema[];
  format?: string;
}
interface Operation {
  method: string;
  path: string;
  access: string;
  parameters: { name: string; in: string; schema: Schema }[];
  body: Schema | null;
}

const SEED = 20260314;
const RUNS = 25;
/** Strings that have broken servers: NUL, half a surrogate, turned-round text, formulas, markup, SQL, paths, other kinds of digit. */
const HOSTILE = [
  '\u0000',
  'a\u0000b',
  '\ud800',
  '\u202eevil',
  '=1+1',
  '<script>alert(1)</script>',
  "'; drop table classes; --",
  '../../etc/passwd',
  '%00',
  'x'.repeat(5000),
  '٣',
  '\r\nSet-Cookie: a=b',
  '__proto__',
  '{}',
  '1e999',
];

let t: TestLab;
const people: Record<string, Person> = {};
let operations: Operation[];
let components: Record<string, Schema>;
let known: Record<string, string>;

beforeAll(async () => {
  t = await newLab({ threads: 0, settings: { ...SETTINGS, requestsAMinute: 100_000 } });
  const maud = await firstInstructor(t.lab);
  const tern = await newClass(maud, 'Tern Dock', ['Ines Calder']);
  const ines = await joined(t.lab, tern.code, 'Ines Calder');
  const handed = await ines.hand(tern.assignmentId, shortAttempt(1));
  await anotherInstructor(t.lab, maud, 'Osric Penhale');
  const { instructors } = await maud.must('GET', '/api/instructors');
  const { trainees } = await maud.must('GET', `/api/classes/${tern.classId}/roster`);
  known = {
    classId: tern.classId,
    assignmentId: tern.assignmentId,
    traineeId: String(trainees[0]!.id),
    submissionId: String(handed.body.id),
    instructorId: String(instructors.find((i) => i.name !== 'Maud Tarrant')!.id),
  };
  people.instructor = maud;
  people.keeper = maud;
  people.class = maud;
  people.trainee = ines;
  people.anyone = new Person(t.lab);
  people.worker = new Person(t.lab);
  const document = (await maud.must('GET', '/api/openapi.json')) as unknown as {
    paths: Record<string, Record<string, unknown>>;
    components: { schemas: Record<string, Schema> };
  };
  components = document.components.schemas;
  operations = Object.entries(document.paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, given]) => {
      const o = given as {
        'x-access': string;
        parameters?: Operation['parameters'];
        requestBody?: { content: Record<string, { schema: Schema }> };
      };
      const body = o.requestBody?.content['application/json']?.schema ?? null;
      return { method: method.toUpperCase(), path, access: o['x-access'], parameters: o.parameters ?? [], body };
    }),
  );
}, 180_000);
afterAll(async () => {
  await t.end();
  await stopServer();
});

const anything = fc.oneof(fc.jsonValue({ maxDepth: 2 }), fc.constantFrom<unknown>(...HOSTILE, -1, 1e21, null, [], {}));

/** Mostly what the schema asks for, and now and then something else. */
function like(schema: Schema, depth = 0): fc.Arbitrary<unknown> {
  const right = rightFor(schema, depth);
  return fc.oneof({ arbitrary: right, weight: 4 }, { arbitrary: anything, weight: 1 });
}

function rightFor(given: Schema, depth: number): fc.Arbitrary<unknown> {
  const schema = given.$ref === undefined ? given : components[given.$ref.split('/').at(-1)!]!;
  if (depth > 4) return anything;
  if (schema.const !== undefined) return fc.constant(schema.const);
  if (schema.enum !== undefined) return fc.constantFrom(...schema.enum);
  const either = schema.anyOf ?? schema.oneOf;
  if (either !== undefined) return fc.oneof(...either.map((s) => like(s, depth + 1)));
  const type = Array.isArray(schema.type) ? schema.type[0] : schema.type;
  switch (type) {
    case 'object':
      return fc.record(
        Object.fromEntries(Object.entries(schema.properties ?? {}).map(([k, s]) => [k, like(s, depth + 1)])),
        { requiredKeys: [] },
      );
    case 'array':
      return fc.array(schema.items === undefined ? anything : like(schema.items, depth + 1), { maxLength: 4 });
    case 'integer':
    case 'number':
      return fc.oneof(fc.integer(), fc.double());
    case 'boolean':
      return fc.boolean();
    case 'null':
      return fc.constant(null);
    default:
      return schema.format === 'date-time'
        ? fc.date({ noInvalidDate: true }).map((d) => d.toISOString())
        : fc.oneof(fc.string({ unit: 'binary', maxLength: 40 }), fc.constantFrom(...HOSTILE));
  }
}

describe('requests made up from the lab’s own document', () => {
  it('are answered, each fault by the name of its field, and never end the lab', async () => {
    expect(operations.length).toBeGreaterThan(20);
    const seen = new Map<number, number>();
    for (const o of operations) {
      // These would take the ground from under the others.
      if (o.path === '/api/leave' || o.path === '/api/setup' || o.method === 'DELETE') continue;
      const request = fc.record({
        ids: fc.record(
          Object.fromEntries(
            o.parameters
              .filter((p) => p.in === 'path')
              .map((p) => [
                p.name,
                fc.oneof(
                  { arbitrary: fc.constant(known[p.name] ?? 'a'.repeat(64)), weight: 4 },
                  { arbitrary: fc.constantFrom(...HOSTILE.filter((h) => h !== '\ud800')), weight: 1 },
                ),
              ]),
          ),
        ),
        query: fc.record(
          Object.fromEntries(o.parameters.filter((p) => p.in === 'query').map((p) => [p.name, like(p.schema)])),
          { requiredKeys: [] },
        ),
        body: o.body === null ? fc.constant(undefined) : like(o.body),
      });
      await fc.assert(
        fc.asyncProperty(request, async ({ ids, query, body }) => {
          const path = o.path.replaceAll(/\{(\w+)\}/g, (_, name: string) => encodeURIComponent(String(ids[name])));
          const search = new URLSearchParams(Object.entries(query).map(([k, v]) => [k, String(v)])).toString();
          const sent =
            o.method === 'GET' ? undefined : (body ?? (o.method === 'PUT' ? new Uint8Array([123, 0, 255]) : undefined));
          const answer = await people[o.access]!.ask(o.method, search === '' ? path : `${path}?${search}`, sent);
          seen.set(answer.status, (seen.get(answer.status) ?? 0) + 1);
          expect(answer.status, answer.text).toBeLessThan(500);
          if (answer.status !== 400) return;
          const problems = answer.body.problems as unknown as { field: string; message: string }[];
          expect(problems.length).toBeGreaterThan(0);
          for (const { field, message } of problems) {
            expect(field, answer.text).not.toBe('');
            expect(message, answer.text).not.toBe('');
          }
        }),
        { seed: SEED, numRuns: RUNS },
      );
    }
    expect(seen.get(200) ?? 0).toBeGreaterThan(20);
    expect(seen.get(400) ?? 0).toBeGreaterThan(50);
    expect((await people.anyone!.ask('GET', '/api/ready')).status).toBe(200);
  });

  it('of broken JSON, of another content type, and of odd paths too', async () => {
    const maud = people.instructor!;
    const raw = async (body: string, type: string) => {
      const answer = await t.lab.app.request('http://lab.test/api/classes', {
        method: 'POST',
        headers: {
          host: 'lab.test',
          origin: 'http://lab.test',
          cookie: maud.cookie,
          'x-csrf': maud.csrf,
          'content-type': type,
        },
        body,
      });
      return { status: answer.status, body: (await answer.json()) as { problems: { field: string }[] } };
    };
    expect(await raw('{"name":', 'application/json')).toMatchObject({
      status: 400,
      body: { problems: [{ field: 'body' }] },
    });
    expect(await raw('', 'application/json')).toMatchObject({ status: 400 });
    expect((await raw('name=x', 'application/x-www-form-urlencoded')).status).toBe(415);
    for (const path of [
      '/%00',
      '/api/%',
      '/api/%ff',
      '/api/classes/%2e%2e/x',
      '/..%2f..%2fetc/passwd',
      `/api/${'a/'.repeat(500)}`,
    ]) {
      const answer = await maud.ask('GET', path);
      expect(answer.status, path).toBeGreaterThanOrEqual(400);
      expect(answer.status, path).toBeLessThan(500);
    }
  });
});

import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { digestOf } from '../../scoring/lab/digests.ts';
import * as tables from '../../scoring/lab/tables.ts';
import { bytesOf, shortAttempt, shortExercise } from './support/attempts.ts';
import {
  anotherInstructor,
  firstInstructor,
  joined,
  newClass,
  newLab,
  Person,
  type TestClass,
  type TestLab,
  WORKER_TOKEN,
} from './support/school.ts';
import { stopServer } from './support/stores.ts';

interface Operation {
  method: string;
  path: string;
  access: string;
}

let t: TestLab;
let operations: Operation[];
let keeper: Person;
let gull: TestClass;
let rightIds: Record<string, string>;
/** Words that only the other class, or the one who teaches it, holds. */
const SECRETS = ['Gannet Hall, evenings', 'Pia Lindqvist', 'Sunniva Roe', 'Gannet lap'];
/** Routes that anybody may ask, with nothing of a class in their answers. */
const people: Record<string, Person> = {};

beforeAll(async () => {
  t = await newLab({ threads: 0 });
  keeper = await firstInstructor(t.lab, 'Hob Treen');
  const maud = await anotherInstructor(t.lab, keeper, 'Maud Tarrant');
  const osric = await anotherInstructor(t.lab, keeper, 'Osric Penhale');
  const tern = await newClass(maud, 'Tern Dock, mornings', ['Ines Calder']);
  // The other school has an own exercise, so that nothing of it is in the first.
  gull = await newClass(osric, SECRETS[0]!, SECRETS.slice(1, 3), { ...shortExercise(), title: 'Gannet tee' });
  const pia = await joined(t.lab, gull.code, 'Pia Lindqvist');
  const handed = await pia.hand(gull.assignmentId, shortAttempt(1));
  const { trainees } = await osric.must('GET', `/api/classes/${gull.classId}/roster`);
  const own = await osric.must('POST', '/api/exercises', { exercise: { ...shortExercise(), title: SECRETS[3] } });
  const { instructors } = await keeper.must('GET', '/api/instructors');
  rightIds = {
    classId: gull.classId,
    assignmentId: gull.assignmentId,
    traineeId: String(trainees[0]!.id),
    submissionId: String(handed.body.id),
    digest: digestOf(bytesOf(shortAttempt(1))),
    exerciseId: String(own.id),
    instructorId: String(instructors.find((i) => i.name === 'Osric Penhale')!.id),
  };
  const worker = new Person(t.lab);
  people.nobody = new Person(t.lab);
  people['an instructor of another class'] = maud;
  people['a trainee of another class'] = await joined(t.lab, tern.code, 'Ines Calder');
  people['a trainee of the same class'] = await joined(t.lab, gull.code, 'Sunniva Roe');
  people['a worker'] = worker;
  const ask = worker.ask.bind(worker);
  worker.ask = (method, path, body) => ask(method, path, body, { authorization: `Bearer ${WORKER_TOKEN}` });

  const document = await people.nobody.must('GET', '/api/openapi.json');
  operations = Object.entries(
    document.paths as unknown as Record<string, Record<string, { 'x-access': string }>>,
  ).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, o]) => ({ method: method.toUpperCase(), path, access: o['x-access'] })),
  );
}, 180_000);
afterAll(async () => {
  await t.end();
  await stopServer();
});

/** Everything the other class owns, as it stands. Sessions and the audit trail move with every request and are looked at by themselves. */
async function belongings(): Promise<string> {
  const { db } = t.lab.parts.store;
  const rows = await Promise.all(
    [
      tables.classes,
      tables.teaches,
      tables.trainees,
      tables.instructors,
      tables.exercises,
      tables.assignments,
      tables.submissions,
      tables.overrides,
    ].map((table) => db.select().from(table as typeof tables.classes)),
  );
  return JSON.stringify(rows);
}

/** A path with every id of the other class in its place. */
function filled(path: string, ids: Record<string, string>): string {
  return path.replaceAll(/\{(\w+)\}/g, (_, name: string) => {
    const id = ids[name];
    if (id === undefined) throw new Error(`no id for {${name}} of ${path}`);
    return id;
  });
}

/** Bodies that would do what the route does, by route: a refusal must come of who asks and not of what is asked. */
function bodyFor({ method, path }: Operation): unknown {
  if (method === 'GET' || method === 'DELETE') return undefined;
  if (path.endsWith('/attempts/{digest}')) return bytesOf(shortAttempt(1));
  const bodies: Record<string, unknown> = {
    'PATCH /api/classes/{classId}': { name: 'taken over' },
    'POST /api/classes/{classId}/roster': { csv: 'name\nIntruder' },
    'POST /api/classes/{classId}/teachers': { name: 'Maud Tarrant' },
    'POST /api/instructors': { name: 'Intruder', password: 'gorse on the headland' },
    'PATCH /api/instructors/{instructorId}': { password: 'gorse on the headland', keeper: true },
    'POST /api/exercises': { exercise: shortExercise() },
    'POST /api/classes/{classId}/assignments': {
      exercise: shortExercise(),
      opens: '2026-01-01T00:00:00Z',
      closes: null,
      mostAttempts: null,
    },
    'PATCH /api/classes/{classId}/assignments/{assignmentId}': { title: 'taken over' },
    'POST /api/classes/{classId}/assignments/{assignmentId}/marks/{traineeId}': { mark: 100, reason: 'taken over' },
  };
  return bodies[`${method} ${path}`] ?? {};
}

describe('walls between classes', () => {
  it('every route says for whom it is', () => {
    expect(operations.length).toBeGreaterThan(20);
    for (const o of operations)
      expect(['anyone', 'instructor', 'keeper', 'class', 'trainee', 'worker'], o.path).toContain(o.access);
  });

  it('no route gives anybody else anything of a class, or changes it', async () => {
    const before = await belongings();
    let tried = 0;
    for (const o of operations.filter((o) => o.access !== 'anyone')) {
      for (const [name, person] of Object.entries(people)) {
        // Somebody of the same class hands in what is theirs; the next test looks at what they see of others.
        if (name === 'a trainee of the same class' && o.method === 'PUT') continue;
        const answer = await person.ask(o.method, filled(o.path, rightIds), bodyFor(o));
        const what = `${o.method} ${o.path} as ${name}: ${answer.status}`;
        const role = o.access === 'class' ? 'instructor' : o.access;
        if (!name.includes(role)) expect([401, 403], what).toContain(answer.status);
        // A worker fetches any attempt: that is what it is for. Nobody tells it who welded it.
        else if (o.path.includes('{') && role !== 'worker' && name !== 'a trainee of the same class') {
          expect(answer.status, what).toBe(404);
        } else expect(answer.status, what).toBeLessThan(500);
        for (const secret of [...SECRETS, gull.code]) expect(answer.text, what).not.toContain(secret);
        tried++;
      }
    }
    expect(tried).toBeGreaterThan(60);
    // A class of the intruder's own may have come of it; nothing of the others may have moved.
    const after = JSON.parse(await belongings()) as { id?: string }[][];
    for (const [i, rows] of (JSON.parse(before) as { id?: string }[][]).entries()) {
      for (const row of rows) expect(after[i]).toContainEqual(row);
    }
    expect(after[2]).toHaveLength((JSON.parse(before) as unknown[][])[2]!.length);
  });

  it('an id of another class inside an own class finds nothing', async () => {
    const maud = people['an instructor of another class']!;
    const { classes } = await maud.must('GET', '/api/classes');
    const mine = { ...rightIds, classId: String(classes[0]!.id) };
    for (const o of operations.filter((o) => o.access === 'class' && /\{(?!classId)/.test(o.path))) {
      const answer = await maud.ask(o.method, filled(o.path, mine), bodyFor(o));
      expect(answer.status, `${o.method} ${o.path}: ${answer.text}`).toBe(404);
    }
    const filters = `trainee=${rightIds.traineeId}&assignment=${rightIds.assignmentId}`;
    expect((await maud.must('GET', `/api/classes/${mine.classId}/attempts?${filters}`)).attempts).toEqual([]);
    const ines = people['a trainee of another class']!;
    expect((await ines.hand(gull.assignmentId, shortAttempt(2))).status).toBe(404);
  });

  it('a trainee of the same class sees own attempts only', async () => {
    const sunniva = people['a trainee of the same class']!;
    expect((await sunniva.must('GET', '/api/my/attempts')).attempts).toEqual([]);
  });
});

describe('the lock on the door', () => {
  it('refuses a change that does not carry the word of the page, or comes from another site', async () => {
    const maud = people['an instructor of another class']!;
    const word = maud.csrf;
    maud.csrf = '';
    expect((await maud.ask('POST', '/api/classes', { name: 'Forged' })).status).toBe(403);
    maud.csrf = word;
    const form = { origin: 'http://elsewhere.test', 'content-type': 'text/plain' };
    expect((await maud.ask('POST', '/api/classes', { name: 'Forged' }, form)).status).toBe(403);
    expect((await maud.ask('POST', '/api/classes', { name: 'Own' })).status).toBe(200);
  });

  it('keeps the session out of reach of scripts and other sites', async () => {
    const person = new Person(t.lab);
    const answer = await person.ask('POST', '/api/join', { code: gull.code, name: 'Sunniva Roe' });
    const cookie = answer.headers.get('set-cookie')!;
    expect(cookie).toMatch(/^lab=[\w-]{40,}; /);
    for (const flag of ['HttpOnly', 'SameSite=Strict', 'Path=/']) expect(cookie).toContain(flag);
    const { db } = t.lab.parts.store;
    const token = cookie.slice(4, cookie.indexOf(';'));
    expect(JSON.stringify(await db.select().from(tables.sessions))).not.toContain(token);
    await person.must('POST', '/api/leave');
    person.cookie = `lab=${token}`;
    expect((await person.ask('GET', '/api/my/attempts')).status).toBe(401);
  });

  it('allows no inline script and no outside address, and lets nothing be framed or guessed', async () => {
    const { headers } = await people.nobody!.ask('GET', '/api/health');
    const policy = headers.get('content-security-policy')!;
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("script-src 'self' 'wasm-unsafe-eval'");
    expect(policy).not.toMatch(/unsafe-inline|https?:|\*/);
    expect(headers.get('x-content-type-options')).toBe('nosniff');
    expect(headers.get('x-frame-options')).toBe('DENY');
    expect(headers.get('cache-control')).toBe('no-store');
  });

  it('stops guessing after a while and says how long', async () => {
    const person = new Person(t.lab);
    const statuses: number[] = [];
    for (let i = 0; i < 12; i++) {
      statuses.push((await person.ask('POST', '/api/login', { name: 'Osric Penhale', password: `guess ${i}` })).status);
    }
    expect(statuses.slice(0, 10)).toEqual(Array(10).fill(401));
    const last = await person.ask('POST', '/api/login', { name: 'Osric Penhale', password: 'guess' });
    expect(last.status).toBe(429);
    expect(Number(last.headers.get('retry-after'))).toBeGreaterThan(0);
    // Others are not kept out by it.
    expect((await person.ask('POST', '/api/join', { code: gull.code, name: 'Sunniva Roe' })).status).toBe(200);
  });

  it('takes no more than it said it would', async () => {
    const sunniva = people['a trainee of the same class']!;
    const large = await sunniva.hand(gull.assignmentId, new Uint8Array(16_000_001));
    expect(large.status).toBe(413);
    const maud = people['an instructor of another class']!;
    expect((await maud.ask('POST', '/api/classes', { name: 'x'.repeat(2_000_000) })).status).toBe(413);
  });
});

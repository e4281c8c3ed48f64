import { readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readRecording, scoreAttempt } from '../../scoring/index.ts';
import { digestOf } from '../../scoring/lab/digests.ts';
import { openLab } from '../../scoring/lab/lab.ts';
import { scores, submissions } from '../../scoring/lab/tables.ts';
import { bytesOf, shortAttempt, shortExercise } from './support/attempts.ts';
import {
  firstInstructor,
  joined,
  newClass,
  newLab,
  PASSWORD,
  Person,
  SETUP_CODE,
  type TestClass,
  type TestLab,
} from './support/school.ts';
import { KIND, stopServer } from './support/stores.ts';

// Tern Dock, its instructors and trainees are invented.
afterAll(stopServer);

describe(`a school on the ${KIND} store`, () => {
  let t: TestLab;
  let maud: Person;
  let tern: TestClass;
  let ines: Person;
  let tomas: Person;

  beforeAll(async () => {
    t = await newLab();
    maud = await firstInstructor(t.lab);
    tern = await newClass(maud, 'Tern Dock, mornings', ['Ines Calder', 'Tomás Okafor', 'Wren Hollis']);
    ines = await joined(t.lab, tern.code, '  ines  CALDER ');
    tomas = await joined(t.lab, tern.code.toLowerCase(), 'Tomás Okafor');
  }, 180_000);
  afterAll(() => t.end());

  it('makes the first instructor once, by the code alone', async () => {
    const stranger = new Person(t.lab);
    const setup = { code: SETUP_CODE, name: 'Somebody', password: PASSWORD };
    expect((await stranger.ask('POST', '/api/setup', setup)).status).toBe(409);
    expect((await stranger.ask('POST', '/api/setup', { ...setup, code: 'GUESSED' })).status).toBe(403);
    expect((await stranger.ask('POST', '/api/login', { name: 'Maud Tarrant', password: 'a wrong one' })).status).toBe(
      401,
    );
    expect((await stranger.ask('GET', '/api/classes')).status).toBe(401);
  });

  it('shows a trainee what has opened, with the exercise to weld', async () => {
    const { assignments } = await ines.must('GET', '/api/my/assignments');
    expect(assignments).toHaveLength(1);
    expect(assignments[0]).toMatchObject({ id: tern.assignmentId, exerciseFile: shortExercise() });
  });

  it('takes an attempt in, once however often it is sent, and scores it by welding it again', async () => {
    const recording = shortAttempt(1);
    const first = await ines.hand(tern.assignmentId, recording);
    expect(first).toMatchObject({ status: 200, body: { number: 1, late: false, known: false } });
    const again = await Promise.all([1, 2, 3].map(() => ines.hand(tern.assignmentId, recording)));
    for (const a of again)
      expect(a.body).toEqual(expect.objectContaining({ id: first.body.id, number: 1, known: true }));

    const digest = digestOf(bytesOf(recording));
    expect(readdirSync(join(t.folder, 'attempts', digest.slice(0, 2)))).toEqual([`${digest}.json`]);
    await expect
      .poll(async () => (await ines.must('GET', '/api/my/attempts')).attempts[0]!.state, { timeout: 60_000 })
      .toBe('scored');
    const { attempts } = await ines.must('GET', '/api/my/attempts');
    const own = scoreAttempt(readRecording(JSON.stringify(recording)), { exercise: shortExercise() });
    expect(attempts).toHaveLength(1);
    expect(attempts[0]).toMatchObject({ verdict: own.verdict, result: { stateHash: own.stateHash } });
    expect(await t.lab.parts.store.db.select().from(scores)).toHaveLength(1);
  });

  it('names a file handed in by two, a robot that calls itself a hand, and a file changed after welding', async () => {
    const copy = shortAttempt(1);
    expect((await tomas.hand(tern.assignmentId, { ...copy, seed: 2 })).status).toBe(200);
    const robot = { ...shortAttempt(2), origin: { kind: 'robot' as const } };
    expect((await tomas.hand(tern.assignmentId, robot)).status).toBe(200);
    const changed = { ...shortAttempt(3), stateHash: '0123456789abcdef' };
    expect((await tomas.hand(tern.assignmentId, changed)).status).toBe(200);
    const all = `/api/classes/${tern.classId}/attempts`;
    await expect
      .poll(async () => (await maud.must('GET', all)).attempts.filter((a) => String(a.state) === 'waiting').length, {
        timeout: 60_000,
      })
      .toBe(0);
    const said = async (number: number) => {
      const { attempts } = await maud.must('GET', all);
      const one = attempts.find((a) => String(a.trainee!.name) === 'Tomás Okafor' && Number(a.number) === number)!;
      const { evidence } = await maud.must('GET', `${all}/${one.id}`);
      return evidence.map((e) => `${e.code}: ${e.text}`).join('\n');
    };
    expect(await said(1)).toContain('twin: The same hand, pose for pose, as Ines Calder (attempt 1).');
    expect(await said(2)).toContain('origin-device-mismatch');
    expect(await said(3)).toContain('recording-edited');
  });

  it('gives the file back as it came', async () => {
    const { attempts } = await maud.must('GET', `/api/classes/${tern.classId}/attempts`);
    const mine = attempts.find((a) => String(a.trainee!.name) === 'Ines Calder')!;
    const file = await maud.ask('GET', `/api/classes/${tern.classId}/attempts/${mine.id}/file`);
    expect(file.text).toBe(JSON.stringify(shortAttempt(1)));
    expect(file.headers.get('content-disposition')).toMatch(/^attachment/);
  });

  it('refuses what is no attempt by name of the field, what is damaged, and what is not open', async () => {
    const bad = await ines.hand(tern.assignmentId, bytesOf({ ...shortAttempt(4), poses: { u: ['x'] } }));
    expect(bad).toMatchObject({ status: 400, body: { problems: [{ field: 'poses.u[0]' }] } });
    const bytes = bytesOf(shortAttempt(4));
    const path = `/api/my/assignments/${tern.assignmentId}/attempts/${'0'.repeat(64)}`;
    expect(await ines.ask('PUT', path, bytes)).toMatchObject({
      status: 400,
      body: { problems: [{ field: 'digest' }] },
    });
    const soon = await maud.must('POST', `/api/classes/${tern.classId}/assignments`, {
      exercise: shortExercise(),
      opens: new Date(Date.now() + 3_600_000).toISOString(),
      closes: null,
      mostAttempts: 1,
    });
    expect((await ines.hand(String(soon.id), shortAttempt(4))).status).toBe(409);
    expect((await ines.must('GET', '/api/my/assignments')).assignments).toHaveLength(1);
    const unknown = await maud.ask('POST', `/api/classes/${tern.classId}/assignments`, {
      exercise: 'no-such-exercise',
      opens: new Date().toISOString(),
      closes: null,
      mostAttempts: 1,
    });
    expect(unknown).toMatchObject({ status: 400, body: { problems: [{ field: 'exercise' }] } });
  });

  it('keeps what comes late or beyond the number allowed, and says so', async () => {
    const closed = await maud.must('POST', `/api/classes/${tern.classId}/assignments`, {
      exercise: shortExercise(),
      opens: new Date(Date.now() - 120_000).toISOString(),
      closes: new Date(Date.now() - 60_000).toISOString(),
      mostAttempts: 1,
    });
    for (const n of [5, 6]) expect((await ines.hand(String(closed.id), shortAttempt(n))).body.late).toBe(true);
    const all = `/api/classes/${tern.classId}/attempts`;
    const { attempts } = await maud.must('GET', `${all}?assignment=${closed.id}`);
    const second = attempts.find((a) => Number(a.number) === 2)!;
    const { evidence } = await maud.must('GET', `${all}/${second.id}`);
    expect(evidence.map((e) => String(e.code))).toEqual(expect.arrayContaining(['late', 'beyond-attempts']));
  });

  it('asks for a PIN where marks count, and takes only the right one', async () => {
    await maud.must('PATCH', `/api/classes/${tern.classId}`, { pins: true });
    const { trainees } = await maud.must('GET', `/api/classes/${tern.classId}/roster`);
    const wren = trainees.find((p) => String(p.name) === 'Wren Hollis')!;
    const { pin } = await maud.must('POST', `/api/classes/${tern.classId}/trainees/${wren.id}/pin`);
    const join = { code: tern.code, name: 'Wren Hollis' };
    const at = new Person(t.lab);
    expect((await at.ask('POST', '/api/join', join)).status).toBe(401);
    expect(
      (await at.ask('POST', '/api/join', { ...join, pin: '000000' === String(pin) ? '111111' : '000000' })).status,
    ).toBe(401);
    expect((await at.ask('POST', '/api/join', { ...join, pin })).status).toBe(200);
    await maud.must('PATCH', `/api/classes/${tern.classId}`, { pins: false });
  });

  it('keeps an audit trail', async () => {
    const { trail } = await maud.must('GET', `/api/classes/${tern.classId}/audit`);
    const did = new Set(trail!.map((e) => String(e.did)));
    for (const deed of [
      'class made',
      'roster added to',
      'exercise handed out',
      'attempt handed in',
      'attempt fetched',
      'PIN given',
    ]) {
      expect(did).toContain(deed);
    }
  });

  it('comes back whole from its files alone, and scores again what it lost', async () => {
    const { db } = t.lab.parts.store;
    const before = await db.select().from(submissions).orderBy(submissions.id);
    await t.lab.stop();
    const empty = await newLab();
    await empty.lab.stop();
    // The files stay; the database is another one, and empty.
    if (KIND === 'embedded') rmSync(join(t.folder, 'database'), { recursive: true });
    const options = { ...t.options, databaseUrl: empty.options.databaseUrl };
    const lab = await openLab(options);
    t = {
      ...t,
      options,
      lab,
      end: async () => {
        await lab.stop();
        rmSync(t.folder, { recursive: true, force: true });
      },
    };
    const after = await lab.parts.store.db.select().from(submissions).orderBy(submissions.id);
    expect(after).toEqual(before);
    await lab.worker!.sweep(new Date(Date.now() + 1000));
    await expect
      .poll(async () => (await lab.parts.store.db.select().from(scores)).length, { timeout: 60_000 })
      .toBe(new Set(before.map((s) => s.attempt)).size);
    rmSync(empty.folder, { recursive: true });
    // The class is there again under its code; its trainees join as before.
    await joined(lab, tern.code, 'Ines Calder');
  });
});

import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { shortAttempt, shortExercise } from './support/attempts.ts';
import {
  anotherInstructor,
  firstInstructor,
  joined,
  newClass,
  newLab,
  PASSWORD,
  Person,
  type TestLab,
} from './support/school.ts';
import { stopServer } from './support/stores.ts';

const OTHER = 'a kittiwake on the mole';

let t: TestLab;
/** First in the lab, and so in charge of it. */
let hob: Person;
let maud: Person;
beforeAll(async () => {
  t = await newLab({ threads: 0 });
  hob = await firstInstructor(t.lab, 'Hob Treen');
  maud = await anotherInstructor(t.lab, hob, 'Maud Tarrant');
}, 120_000);
afterAll(async () => {
  await t.end();
  await stopServer();
});

async function logIn(name: string, password: string): Promise<Person> {
  const person = new Person(t.lab);
  await person.must('POST', '/api/login', { name, password });
  return person;
}
async function idOf(name: string): Promise<string> {
  const { instructors } = await hob.must('GET', '/api/instructors');
  return String(instructors.find((i) => i.name === name)?.id);
}

describe('who may come in as an instructor', () => {
  it('is the keeper’s to say, who is the first instructor', async () => {
    expect(await hob.must('GET', '/api/me')).toMatchObject({ role: 'instructor', keeper: true });
    expect(await maud.must('GET', '/api/me')).toMatchObject({ role: 'instructor', keeper: false });
    const { instructors } = await hob.must('GET', '/api/instructors');
    expect(instructors).toMatchObject([
      { name: 'Hob Treen', keeper: true, classes: 0 },
      { name: 'Maud Tarrant', keeper: false, classes: 0 },
    ]);
    expect(JSON.stringify(instructors)).not.toContain('scrypt');
    expect((await maud.ask('GET', '/api/instructors')).status).toBe(403);
    expect((await maud.ask('POST', '/api/instructors', { name: 'Intruder', password: OTHER })).status).toBe(403);
    const again = await hob.ask('POST', '/api/instructors', { name: 'Maud Tarrant', password: OTHER });
    expect(again).toMatchObject({ status: 409, body: { problems: [{ field: 'name' }] } });
  });

  it('a new password ends every session that began with the old one', async () => {
    const elsewhere = await logIn('Maud Tarrant', PASSWORD);
    await hob.must('PATCH', `/api/instructors/${await idOf('Maud Tarrant')}`, { password: OTHER });
    for (const person of [maud, elsewhere]) expect((await person.ask('GET', '/api/classes')).status).toBe(401);
    const old = await new Person(t.lab).ask('POST', '/api/login', { name: 'Maud Tarrant', password: PASSWORD });
    expect(old.status).toBe(401);
    maud = await logIn('Maud Tarrant', OTHER);
    // Her own again, which she says by the one she was given; who changes it stays logged in, elsewhere she is out.
    const other = await logIn('Maud Tarrant', OTHER);
    const wrong = await maud.ask('POST', '/api/me/password', { old: 'gulls all the way', password: PASSWORD });
    expect(wrong).toMatchObject({ status: 403, body: { problems: [{ field: 'old' }] } });
    await maud.must('POST', '/api/me/password', { old: OTHER, password: PASSWORD });
    expect((await maud.ask('GET', '/api/classes')).status).toBe(200);
    expect((await other.ask('GET', '/api/classes')).status).toBe(401);
  });

  it('somebody is always left in charge', async () => {
    const [first, second] = [await idOf('Hob Treen'), await idOf('Maud Tarrant')];
    const alone = await hob.ask('PATCH', `/api/instructors/${first}`, { keeper: false });
    expect(alone).toMatchObject({ status: 409, body: { problems: [{ field: 'keeper' }] } });
    expect((await hob.ask('DELETE', `/api/instructors/${first}`)).status).toBe(409);
    // Two who take it from each other at the same moment: one is too late.
    await hob.must('PATCH', `/api/instructors/${second}`, { keeper: true });
    const both = await Promise.all([
      hob.ask('PATCH', `/api/instructors/${second}`, { keeper: false }),
      maud.ask('PATCH', `/api/instructors/${first}`, { keeper: false }),
    ]);
    expect(both.map((a) => a.status).sort()).toEqual([200, 403]);
    const kept = both[0].status === 200 ? hob : maud;
    const { instructors } = await kept.must('GET', '/api/instructors');
    expect(instructors.filter((i) => i.keeper)).toHaveLength(1);
    await kept.must('PATCH', `/api/instructors/${first}`, { keeper: true });
    if (kept === maud) await hob.must('PATCH', `/api/instructors/${second}`, { keeper: false });
  });

  it('removing one loses no class, no exercise and no attempt', async () => {
    const osric = await anotherInstructor(t.lab, hob, 'Osric Penhale');
    const alone = await newClass(osric, 'Gannet Hall', ['Pia Lindqvist']);
    const shared = await newClass(osric, 'Tern Dock', []);
    await osric.must('POST', `/api/classes/${shared.classId}/teachers`, { name: 'Maud Tarrant' });
    expect((await osric.must('GET', `/api/classes/${shared.classId}/teachers`)).teachers).toEqual([
      'Maud Tarrant',
      'Osric Penhale',
    ]);
    await osric.must('POST', '/api/exercises', { exercise: { ...shortExercise(), title: 'Gannet tee' } });
    const pia = await joined(t.lab, alone.code, 'Pia Lindqvist');
    expect((await pia.hand(alone.assignmentId, shortAttempt(1))).status).toBe(200);
    const gone = await hob.must('DELETE', `/api/instructors/${await idOf('Osric Penhale')}`);
    expect(gone).toEqual({ done: true, classes: 1 });
    expect((await osric.ask('GET', '/api/classes')).status).toBe(401);
    expect((await hob.must('GET', '/api/classes')).classes.map((c) => c.name)).toEqual(['Gannet Hall']);
    expect((await maud.must('GET', '/api/classes')).classes.map((c) => c.name)).toEqual(['Tern Dock']);
    expect((await hob.must('GET', `/api/classes/${alone.classId}/attempts`)).attempts).toHaveLength(1);
    expect((await hob.must('GET', '/api/exercises')).exercises.map((e) => e.title)).toEqual(['Gannet tee']);
    const { trail } = await hob.must('GET', `/api/classes/${alone.classId}/audit`);
    expect(trail[0]).toMatchObject({ did: 'class taken over' });
  });
});

describe('own exercises', () => {
  it('are kept, handed out and taken away; what was handed out stays', async () => {
    const exercise = { ...shortExercise(), title: 'Our own tee' };
    const { id } = await maud.must('POST', '/api/exercises', { exercise });
    const { exercises } = await maud.must('GET', '/api/exercises');
    expect(exercises).toMatchObject([{ id, title: 'Our own tee', exercise: { name: exercise.name } }]);
    // Another's are another's.
    expect((await hob.must('GET', '/api/exercises')).exercises.map((e) => e.title)).not.toContain('Our own tee');
    expect((await hob.ask('DELETE', `/api/exercises/${id}`)).status).toBe(404);
    const klass = await maud.must('POST', '/api/classes', { name: 'Gull Yard' });
    const assignment = { opens: new Date().toISOString(), closes: null, mostAttempts: null };
    const given = { exercise: exercises[0]!.exercise, ...assignment };
    await maud.must('POST', `/api/classes/${klass.id}/assignments`, given);
    await maud.must('DELETE', `/api/exercises/${id}`);
    expect((await maud.must('GET', '/api/exercises')).exercises).toEqual([]);
    const out = await maud.must('GET', `/api/classes/${klass.id}/assignments`);
    expect(out.assignments).toMatchObject([{ title: 'Our own tee' }]);
  });

  it('that could not be welded or judged are refused by the field', async () => {
    const exercise = shortExercise();
    const thick = { ...exercise, joint: { ...exercise.joint, plateA_mm: 400 } };
    const tries: [unknown, string][] = [
      [thick, 'exercise.joint.plateA_mm'],
      [{ ...exercise, profile: 'of-nobody' }, 'exercise.profile'],
      [{ ...exercise, format: 'something-else' }, 'exercise'],
      [{}, 'exercise'],
    ];
    for (const [bad, field] of tries) {
      const answer = await maud.ask('POST', '/api/exercises', { exercise: bad });
      expect(answer.status, answer.text).toBe(400);
      expect(String(answer.body.problems[0]!.field)).toMatch(new RegExp(`^${field}`));
      expect(String(answer.body.problems[0]!.message)).not.toBe('');
    }
    // Nor is it handed out past the shelf.
    const klass = await maud.must('POST', '/api/classes', { name: 'Gull Yard, evenings' });
    const given = { exercise: thick, opens: new Date().toISOString(), closes: null, mostAttempts: null };
    expect((await maud.ask('POST', `/api/classes/${klass.id}/assignments`, given)).status).toBe(400);
  });
});

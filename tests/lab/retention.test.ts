import { eq } from 'drizzle-orm';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ClassDesk } from '../../scoring/lab/class-desk.ts';
import { nowIn, sayWelding } from '../../scoring/lab/presence.ts';
import { rebuild } from '../../scoring/lab/rebuild.ts';
import { eraseTooOld, tooOld } from '../../scoring/lab/retention.ts';
import { submissions, trainees } from '../../scoring/lab/tables.ts';
import { shortAttempt } from './support/attempts.ts';
import {
  firstInstructor,
  joined,
  newClass,
  newLab,
  type Person,
  SETTINGS,
  type TestClass,
  type TestLab,
} from './support/school.ts';
import { stopServer } from './support/stores.ts';

const DAY_MS = 86_400_000;

// Tern Dock and its people are invented.
describe('who welds, and what is kept how long', () => {
  let t: TestLab;
  let maud: Person;
  let tern: TestClass;
  const named = async () =>
    (await t.lab.parts.store.db.select().from(trainees).orderBy(trainees.name)).map((p) => p.name);

  beforeAll(async () => {
    t = await newLab({ threads: 0, settings: { ...SETTINGS, keepDays: 100 } });
    maud = await firstInstructor(t.lab);
    tern = await newClass(maud, 'Tern Dock', ['Ines Calder', 'Wren Hollis', 'Tomás Okafor']);
  }, 120_000);
  afterAll(async () => {
    await t.end();
    await stopServer();
  });

  it('a bench says that its arc burns; one that falls silent is taken for stopped; who waits is told, oldest first', async () => {
    const ines = await joined(t.lab, tern.code, 'Ines Calder');
    await ines.must('POST', '/api/my/welding', { welding: true });
    const live = await maud.ask('GET', `/api/classes/${tern.classId}/live`);
    expect(live.text).toContain('event: progress');
    const { db } = t.lab.parts.store;
    const desk = new ClassDesk(db, { id: tern.classId } as ClassDesk['class'], t.lab.parts.versions);
    const at = (s: number) => nowIn(desk, new Date(Date.now() + 1000 * s));
    expect((await at(0)).welding.map((p) => [p.name, p.plate])).toEqual([['Ines Calder', 1]]);
    expect((await at(30)).welding).toEqual([]);
    await sayWelding(db, { id: (await at(0)).welding[0]!.id, classId: tern.classId }, false, new Date());
    expect((await at(0)).welding).toEqual([]);
    for (const n of [1, 2]) await ines.hand(tern.assignmentId, shortAttempt(n));
    expect((await at(0)).waiting).toMatchObject([{ name: 'Ines Calder', attempts: 2 }]);
  });

  it('what is older than the school’s rule is told first and changed by nothing, then erased with its files, the trail kept', async () => {
    const { db } = t.lab.parts.store;
    const wren = await joined(t.lab, tern.code, 'Wren Hollis');
    // The same file handed in by another stays for that other.
    await wren.hand(tern.assignmentId, shortAttempt(1));
    await wren.hand(tern.assignmentId, shortAttempt(3));
    const people = new Map((await db.select().from(trainees)).map((p) => [p.name, p.id]));
    const old = new Date(Date.now() - 200 * DAY_MS);
    await db.update(trainees).set({ made: old });
    await db
      .update(submissions)
      .set({ received: old })
      .where(eq(submissions.traineeId, people.get('Wren Hollis')!));
    await db.update(submissions).set({ received: old }).where(eq(submissions.number, 1));
    const told = await maud.must('GET', `/api/classes/${tern.classId}/retention`);
    expect(told).toMatchObject({ keepDays: 100, trainees: ['Tomás Okafor', 'Wren Hollis'].sort(), attempts: 1 });
    const found = await tooOld(db, 100, new Date());
    expect(await named()).toHaveLength(3);
    expect(await eraseTooOld(db, t.lab.parts.files, found)).toEqual({ trainees: 2, attempts: 3 });
    expect(await named()).toEqual(['Ines Calder']);
    const left = await db.select().from(submissions);
    expect(left.map((s) => s.number)).toEqual([2]);
    expect(await t.lab.parts.files.attemptDigests()).toEqual([left[0]!.attempt]);
    expect(await t.lab.parts.files.receiptIds()).toEqual([left[0]!.id]);
    // Nothing of it comes back from the files.
    expect(await rebuild(db, t.lab.parts.files)).toMatchObject({ receipts: 1, restored: 0 });
    const { trail } = await maud.must('GET', `/api/classes/${tern.classId}/audit`);
    const did = trail.map((e) => String(e.did));
    expect(did.filter((d) => d === 'too old: trainee erased')).toHaveLength(2);
    expect(did.filter((d) => d === 'too old: attempt erased')).toHaveLength(1);
    expect(JSON.stringify(trail)).not.toContain('Wren');
    expect(await tooOld(db, 100, new Date())).toMatchObject({ trainees: [], attempts: [] });
  });

  it('is off unless the school says otherwise', async () => {
    t.lab.parts.settings.keepDays = null;
    expect(await maud.must('GET', `/api/classes/${tern.classId}/retention`)).toMatchObject({
      keepDays: null,
      attempts: 0,
    });
  });
});

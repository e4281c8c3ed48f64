import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { digestOf } from '../../scoring/lab/digests.ts';
import { VERSIONS } from '../../scoring/lab/judge.ts';
import { markOf } from '../../scoring/lab/marks.ts';
import { readOneRoster } from '../../scoring/lab/one-roster.ts';
import { rebuild } from '../../scoring/lab/rebuild.ts';
import { readRoster } from '../../scoring/lab/roster.ts';
import { scores } from '../../scoring/lab/tables.ts';
import { bytesOf, shortAttempt } from './support/attempts.ts';
import {
  firstInstructor,
  joined,
  newClass,
  newLab,
  type Person,
  type TestClass,
  type TestLab,
} from './support/school.ts';
import { stopServer } from './support/stores.ts';

const attempt = (number: number, score: number | null, code?: string) => ({
  number,
  score,
  evidence: code === undefined ? [] : [{ code, text: `because of ${code}` }],
});

describe('the mark', () => {
  const some = [
    attempt(1, 40),
    attempt(2, 90),
    attempt(3, null),
    attempt(4, 60),
    attempt(5, 70),
    attempt(6, 100, 'twin'),
  ];

  it('is the best, the last, or the median of the last, of what counts', () => {
    expect(markOf({ rule: 'best' }, some)).toMatchObject({ mark: 90, from: [2] });
    expect(markOf({ rule: 'last' }, some)).toMatchObject({ mark: 70, from: [5] });
    expect(markOf({ rule: 'median of last', attempts: 3 }, some)).toMatchObject({ mark: 70, from: [2, 4, 5] });
    expect(markOf({ rule: 'median of last', attempts: 2 }, some)).toMatchObject({ mark: 65, from: [4, 5] });
    expect(markOf({ rule: 'best' }, [])).toEqual({ mark: null, from: [], leftOut: [] });
  });

  it('names what it leaves out', () => {
    const { leftOut } = markOf({ rule: 'best' }, some);
    expect(leftOut).toEqual([
      { number: 3, why: 'It has no verdict, or is not scored yet.' },
      { number: 6, why: 'because of twin' },
    ]);
  });
});

describe('a roster', () => {
  it('is read from a column of names or from names alone', () => {
    expect(readRoster(`${'\ufeffname;x\n'.replace(';', ',')}"Calder, Ines",1\n\nWren Hollis,2`)).toEqual([
      { name: 'Calder, Ines', sourcedId: null },
      { name: 'Wren Hollis', sourcedId: null },
    ]);
    expect(readRoster('Ines Calder\r\nТомаш Ока\r\n').map((p) => p.name)).toEqual(['Ines Calder', 'Томаш Ока']);
    expect(readRoster('sourcedId,Name\n17,Ines Calder')).toEqual([{ name: 'Ines Calder', sourcedId: '17' }]);
  });

  it('is refused by line', () => {
    expect(() => readRoster('name\nInes\nines ')).toThrow(/ines twice/);
    expect(() => readRoster('name\nInes\n\u202eevil')).toThrow(/csv line 3/);
    expect(() => readRoster('first,last\nInes,Calder')).toThrow(/a column called name/);
    expect(() => readRoster('name\n"open')).toThrow(/roster: csv/);
  });

  const users =
    'sourcedId,status,enabledUser,username,givenName,familyName\nu1,,true,ic,Ines,Calder\nu2,tobedeleted,true,x,Gone,Person\nt1,,true,mt,Maud,Tarrant\n';
  const enrollments =
    'sourcedId,status,classSourcedId,schoolSourcedId,userSourcedId,role\ne1,,c1,s,u1,student\ne2,,c1,s,u2,student\ne3,,c1,s,t1,teacher\ne4,,c2,s,u1,student\n';
  it('comes from a OneRoster export: the students of one class who are still there', () => {
    expect(readOneRoster(users, enrollments, 'c1')).toEqual([{ name: 'Ines Calder', sourcedId: 'u1' }]);
    expect(() => readOneRoster(users, enrollments)).toThrow(/classSourcedId: found nothing, allowed: .*c1, c2/);
    expect(() => readOneRoster('sourcedId\nu1', enrollments, 'c1')).toThrow(/users.csv: .*givenName, familyName/);
  });
});

describe('a class with scores', () => {
  let t: TestLab;
  let maud: Person;
  let tern: TestClass;
  let ines: Person;
  let base: string;
  let traineeId: string;

  beforeAll(async () => {
    t = await newLab();
    maud = await firstInstructor(t.lab);
    tern = await newClass(maud, 'Tern Dock', []);
    base = `/api/classes/${tern.classId}`;
    await maud.must('POST', `${base}/roster`, { csv: 'id,name\n=17,Ines Calder\n18,Wren Hollis' });
    ines = await joined(t.lab, tern.code, 'Ines Calder');
    for (const n of [1, 2]) await ines.hand(tern.assignmentId, shortAttempt(n));
    const wren = await joined(t.lab, tern.code, 'Wren Hollis');
    await wren.hand(tern.assignmentId, shortAttempt(2));
    await vi.waitFor(
      async () => {
        const { attempts } = await maud.must('GET', `${base}/attempts`);
        expect(attempts.map((a) => String(a.state))).toEqual(['scored', 'scored', 'scored']);
      },
      { timeout: 90_000, interval: 300 },
    );
    const { trainees } = await maud.must('GET', `${base}/roster`);
    traineeId = String(trainees.find((p) => String(p.name) === 'Ines Calder')!.id);
  }, 150_000);
  afterAll(async () => {
    await t.end();
    await stopServer();
  });

  it('gives marks and keeps every one that was set beside, with its reason', async () => {
    const path = `${base}/assignments/${tern.assignmentId}/marks`;
    const first = (await maud.must('GET', path)).marks.find((m) => String(m.trainee!.id) === traineeId)!;
    expect(first).toMatchObject({ attempts: 2, set: null, history: [] });
    expect(first.computed.leftOut.map((l) => l.why).join()).toContain('The same hand, pose for pose, as Wren Hollis');
    await maud.must('POST', `${path}/${traineeId}`, { mark: 55, reason: 'Seen at the bench' });
    await maud.must('POST', `${path}/${traineeId}`, { mark: 61, reason: 'Cut measured again' });
    const then = (await maud.must('GET', path)).marks.find((m) => String(m.trainee!.id) === traineeId)!;
    expect(then).toMatchObject({ computed: first.computed, set: 61 });
    expect(then.history.map((h) => [h.mark, String(h.reason), String(h.by)])).toEqual([
      [55, 'Seen at the bench', 'Maud Tarrant'],
      [61, 'Cut measured again', 'Maud Tarrant'],
    ]);
    const csv = (await maud.ask('GET', `${base}/assignments/${tern.assignmentId}/one-roster/results.csv`)).text;
    const rows: Record<string, string>[] = parse(csv, { columns: true });
    expect(rows).toHaveLength(1);
    // A formula in an id does not reach a spreadsheet as one.
    expect(rows[0]).toMatchObject({
      studentSourcedId: "'=17",
      score: '61',
      scoreStatus: 'fully graded',
      comment: 'Cut measured again',
    });
  });

  it('gives the table and the rows of a folder of the same attempts', async () => {
    const table = await maud.must('GET', `${base}/table`);
    const why = table.notCounted.map((n) => n.why.join());
    expect(why.join()).toContain('the same motion as');
    expect(why.join()).not.toContain('practice');
    const rows: Record<string, string>[] = parse((await maud.ask('GET', `${base}/results.csv`)).text, {
      columns: true,
      bom: true,
    });
    expect(rows).toHaveLength(3);
    expect(rows.map((r) => r.sha256)).toContain(digestOf(bytesOf(shortAttempt(1))));
    const lines = (await maud.ask('GET', `${base}/results.jsonl`)).text.trim().split('\n');
    expect(lines.map((l) => (JSON.parse(l) as { trainee: string }).trainee).sort()).toEqual(
      rows.map((r) => r.trainee).sort(),
    );
  });

  it('lists what another version judged differently', async () => {
    const { db } = t.lab.parts.store;
    const rows = await db.select().from(scores);
    const old = { engine: '0.0.1', scoring: '0.0.1' };
    await db.insert(scores).values(
      rows.map((r, i) => ({
        ...r,
        ...old,
        result: i === 0 ? { ...(r.result as object), verdict: 'within', score: 99 } : r.result,
      })),
    );
    const { versions } = await maud.must('GET', `${base}/versions`);
    expect(versions).toMatchObject([
      { ...old, scores: 3 },
      { ...VERSIONS, scores: 3 },
    ]);
    const said = await maud.must('GET', `${base}/differences?engine=0.0.1&scoring=0.0.1`);
    const changed = rows[0]!.attempt === digestOf(bytesOf(shortAttempt(2))) ? 2 : 1;
    expect(said).toMatchObject({ compared: 3 });
    expect(said.differing).toHaveLength(changed);
    expect(said.differing[0]).toMatchObject({ before: { verdict: 'within', score: 99 } });
  });

  it('exports and erases a trainee, and nothing brings them back; what another handed in too stays', async () => {
    const out = await maud.ask('GET', `${base}/trainees/${traineeId}/export`);
    expect(out.body).toMatchObject({ trainee: { name: 'Ines Calder', sourcedId: '=17' } });
    expect(out.body.attempts).toHaveLength(2);
    expect(out.body.marksSet).toHaveLength(2);
    expect(await maud.must('DELETE', `${base}/trainees/${traineeId}`)).toEqual({ attempts: 2 });
    expect((await ines.ask('GET', '/api/my/attempts')).status).toBe(401);
    const { files, store } = t.lab.parts;
    const own = digestOf(bytesOf(shortAttempt(1)));
    const shared = digestOf(bytesOf(shortAttempt(2)));
    expect(existsSync(join(t.folder, 'attempts', own.slice(0, 2), `${own}.json`))).toBe(false);
    expect(await files.readAttempt(shared)).not.toBeNull();
    expect(await rebuild(store.db, files)).toMatchObject({ receipts: 1, restored: 0 });
    expect((await store.db.select().from(scores)).map((s) => s.attempt)).not.toContain(own);
    expect((await maud.must('GET', `${base}/attempts`)).attempts).toHaveLength(1);
  });
});

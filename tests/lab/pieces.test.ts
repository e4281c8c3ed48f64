import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { dealPiece, type Exercise, pieceSeed } from '../../scoring/index.ts';
import { readJudge } from '../../scoring/lab/judge.ts';
import { rebuild } from '../../scoring/lab/rebuild.ts';
import { judges, scores, submissions } from '../../scoring/lab/tables.ts';
import { exerciseDigest } from '../../scoring/node/index.ts';
import { bytesOf, shortAttempt, shortExercise } from './support/attempts.ts';
import {
  anotherInstructor,
  firstInstructor,
  joined,
  newClass,
  newLab,
  type Person,
  type TestClass,
  type TestLab,
} from './support/school.ts';
import { stopServer } from './support/stores.ts';

/** The short tee with a gap that differs from one trainee to the next. */
const varied: Exercise = {
  ...shortExercise(),
  name: 'short-varied',
  vary: { gap_mm: { from: 0, to: 2 }, startTemp_C: null, cuts_mm: 0 },
};

// Tern Dock and its people are invented.
describe('a piece of one’s own', () => {
  let t: TestLab;
  let maud: Person;
  let tern: TestClass;
  let ines: Person;
  let wren: Person;
  const own = async (who: Person): Promise<Exercise> =>
    (await who.must('GET', '/api/my/assignments')).assignments[0]!.exerciseFile as unknown as Exercise;
  const on = (exercise: Exercise, n: number) => bytesOf({ ...shortAttempt(n), exercise });
  const listed = async (number: number) => {
    const { attempts } = await maud.must('GET', `/api/classes/${tern.classId}/attempts`);
    const one = attempts.find((a) => String(a.trainee!.name) === 'Wren Hollis' && Number(a.number) === number)!;
    return one.evidence.map((e) => `${e.code}: ${e.text}`);
  };

  beforeAll(async () => {
    t = await newLab({ threads: 0 });
    maud = await firstInstructor(t.lab);
    tern = await newClass(maud, 'Tern Dock', ['Ines Calder', 'Wren Hollis'], varied);
    ines = await joined(t.lab, tern.code, 'Ines Calder');
    wren = await joined(t.lab, tern.code, 'Wren Hollis');
  }, 120_000);
  afterAll(async () => {
    await t.end();
    await stopServer();
  });

  it('is dealt by the lab, another to each, and without the word it is dealt by', async () => {
    const [a, b] = [await own(ines), await own(wren)];
    expect([a.piece?.number, b.piece?.number]).toEqual([1, 2]);
    expect(a.piece?.seed).not.toBe(b.piece?.seed);
    expect(exerciseDigest(a)).toBe(exerciseDigest(varied));
    expect(JSON.stringify(await wren.must('GET', '/api/my/assignments'))).not.toMatch(/startWord/);
  });

  it('is what the attempt is judged by, whatever the file carries; the list names whoever welded another’s, or none', async () => {
    const [theirs, mine] = [await own(ines), await own(wren)];
    for (const exercise of [mine, theirs, varied, dealPiece(varied, 'a word of my own', 2)])
      expect((await wren.hand(tern.assignmentId, on(exercise, 1))).status).toBe(200);
    expect(await listed(1)).toEqual([]);
    expect(await listed(2)).toEqual([
      "other-piece: It was welded on plate 1, which is Ines Calder's; the lab deals plate 2 to this trainee.",
    ]);
    expect(await listed(3)).toEqual([expect.stringContaining('no-piece: It was welded on no plate')]);
    expect(await listed(4)).toEqual([expect.stringContaining('as another start word or nobody deals it')]);
    const rows = await t.lab.parts.store.db.select().from(submissions);
    const kept = await t.lab.parts.store.db.select().from(judges);
    for (const { judge } of rows)
      expect(readJudge(kept.find((k) => k.digest === judge)!.content).exercise.piece).toEqual(mine.piece);
    // Kept and left out of the mark, each with its sentence.
    const { marks } = await maud.must('GET', `/api/classes/${tern.classId}/assignments/${tern.assignmentId}/marks`);
    const row = marks.find((m) => String(m.trainee!.name) === 'Wren Hollis')!;
    expect(row.computed!.leftOut!.map((l) => Number(l.number))).toEqual([1, 2, 3, 4]);
  });

  it('one attempt too many is kept and named in the list', async () => {
    await maud.must('PATCH', `/api/classes/${tern.classId}/assignments/${tern.assignmentId}`, { mostAttempts: 3 });
    expect(await listed(4)).toContain('beyond-attempts: It is attempt 4, and 3 count.');
    expect((await listed(3)).join()).not.toContain('beyond');
  });

  it('comes back from the files: plate, word, and what each attempt is judged by', async () => {
    const { db } = t.lab.parts.store;
    const before = await db.select().from(submissions).orderBy(submissions.id);
    const dealt = await own(wren);
    await db.delete(submissions);
    expect(await rebuild(db, t.lab.parts.files)).toMatchObject({ restored: 4, spoilt: [] });
    expect(await db.select().from(submissions).orderBy(submissions.id)).toEqual(before);
    expect((await own(wren)).piece).toEqual(dealt.piece);
    expect(dealt.piece?.seed).toMatch(/^[0-9a-f]{16}$/);
    expect(pieceSeed(exerciseDigest(varied)!, 'a word of my own', 2)).not.toBe(dealt.piece?.seed);
  });

  it('a hand of another class of the same instructor is named with the class; of another’s it is not told whose', async () => {
    const { db } = t.lab.parts.store;
    const gull = await newClass(maud, 'Gull Hall', ['Pia Lindqvist']);
    const pia = await joined(t.lab, gull.code, 'Pia Lindqvist');
    await pia.hand(gull.assignmentId, shortAttempt(1));
    // Scored as a worker would, with the hand alone: what it came to is not asked here.
    for (const { attempt, judge } of await db.select().from(submissions))
      await db.insert(scores).values({
        ...{ attempt, judge, ...t.lab.parts.versions, result: null, hand: 'a'.repeat(64), motion: null },
        ...{ fault: 'not scored here', scored: new Date(), took_ms: 1, worker: 'w' },
      });
    expect(await listed(1)).toEqual([
      expect.stringMatching(/twin: .*Pia Lindqvist \(attempt 1 at Short tee in Gull Hall\)/),
    ]);
    const { attempts: all } = await maud.must('GET', `/api/classes/${tern.classId}/attempts`);
    expect(all.map((a) => String(a.state))).toEqual(Array(4).fill('could not be scored'));
    const osric = await anotherInstructor(t.lab, maud, 'Osric Penhale');
    await maud.must('POST', `/api/classes/${gull.classId}/teachers`, { name: 'Osric Penhale' });
    const { attempts } = await osric.must('GET', `/api/classes/${gull.classId}/attempts`);
    const text = JSON.stringify(attempts[0]!.evidence);
    expect(text).toContain('an attempt in a class of another instructor');
    expect(text).not.toContain('Wren');
  });
});

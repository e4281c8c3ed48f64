import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { defaultWeave, handOfAmount, type Pose, weaveHand } from '../../engine/index.ts';
import { ClassDesk } from '../../scoring/lab/class-desk.ts';
import { digestOf, submissionId } from '../../scoring/lab/digests.ts';
import { judgeOf, VERSIONS } from '../../scoring/lab/judge.ts';
import type { Store } from '../../scoring/lab/store.ts';
import * as tables from '../../scoring/lab/tables.ts';
import { motionPath, pathText } from '../../scoring/verdict/motion-path.ts';
import { shortExercise } from './support/attempts.ts';
import { openEmpty, stopServer } from './support/stores.ts';

const hand = (seed: number): Pose[] => [...weaveHand({ ...defaultWeave(), length_mm: 60 }, handOfAmount(seed, 0.3))];

/** Who hands in what, in this order; the names are invented. */
const HANDED: readonly [string, string, Pose[]][] = [
  ['ines', 'own', hand(1)],
  ['tomas', 'mirrored', hand(1).map((p) => ({ ...p, u_mm: -p.u_mm }))],
  ['wren', 'own', hand(2)],
  ['wren', 'moved', hand(2).map((p) => ({ ...p, y_mm: p.y_mm + 2 }))],
  ['odile', 'spliced', [...hand(3).slice(0, 700), ...hand(4).slice(700, 1900), ...hand(3).slice(1900)]],
  ['piet', 'own', hand(4)],
  ['maro', 'stretched', hand(5).flatMap((p, n) => (n % 10 === 0 ? [p, p] : [p]))],
  ['lio', 'own', hand(5)],
  ['sanne', 'own', hand(6)],
];

describe('marks of a class in which motions were handed on', () => {
  let store: Store;
  let desk: ClassDesk;
  let assignment: typeof tables.assignments.$inferSelect;

  beforeAll(async () => {
    store = await openEmpty();
    const { db } = store;
    const made = new Date(0);
    const judge = judgeOf(shortExercise());
    const klass = { id: 'c', name: 'Tern Dock', code: 'TERN', marks: { rule: 'best' } as const, pins: false, made };
    await db.insert(tables.classes).values(klass);
    await db.insert(tables.judges).values(judge);
    assignment = {
      startWord: null,
      id: 'a',
      classId: 'c',
      judge: judge.digest,
      title: 'Tee',
      opens: made,
      closes: null,
      mostAttempts: null,
      made,
    };
    await db.insert(tables.assignments).values(assignment);
    const names = [...new Set(HANDED.map(([who]) => who))];
    await db
      .insert(tables.trainees)
      .values(names.map((id) => ({ id, classId: 'c', name: id, nameKey: id, sourcedId: null, made })));
    for (const [n, [who, what, poses]] of HANDED.entries()) {
      const attempt = digestOf(`${who} ${what}`);
      const number = HANDED.slice(0, n + 1).filter(([other]) => other === who).length;
      const row = {
        classId: 'c',
        assignmentId: 'a',
        traineeId: who,
        attempt,
        judge: judge.digest,
        bytes: 1,
        received: new Date(n),
        number,
        late: false,
      };
      await db.insert(tables.submissions).values({ id: submissionId(attempt, 'a', who), ...row });
      const motion = pathText(
        motionPath({
          u: poses.map((p) => Math.round(100 * p.u_mm)),
          y: poses.map((p) => Math.round(100 * p.y_mm)),
          trigger: poses.map((p) => (p.trigger ? 1 : 0)),
        }),
      );
      const score = {
        attempt,
        judge: judge.digest,
        ...VERSIONS,
        result: null,
        hand: digestOf(motion),
        motion,
        fault: null,
      };
      await db.insert(tables.scores).values({ ...score, scored: made, took_ms: 1, worker: 'w' });
    }
    desk = new ClassDesk(db, klass, VERSIONS);
  }, 60_000);
  afterAll(async () => {
    await store.close();
    await stopServer();
  });

  it('leave out both where nobody can tell whose it is, the copy alone where it is one’s own, and nobody else', async () => {
    const marks = await desk.marks(assignment);
    const why = Object.fromEntries(
      marks.map(({ trainee, computed }) => [trainee.name, computed.leftOut.map((l) => [l.number, l.why])]),
    );
    const nothing = 'It has no verdict, or is not scored yet.';
    expect(why.sanne).toEqual([[1, nothing]]);
    expect(why.ines).toEqual([
      [1, expect.stringMatching(/^Nearly the same motion as tomas \(attempt 1\) \(.*mirrored/)],
    ]);
    expect(why.tomas).toEqual([[1, expect.stringMatching(/as ines \(attempt 1\)/)]]);
    expect(why.wren).toEqual([
      [1, nothing],
      [2, expect.stringMatching(/as wren \(attempt 1\) \(0 mm apart over \d+ s, moved 0 across and -?2 up\)/)],
    ]);
    expect(why.odile).toEqual([[1, expect.stringMatching(/as piet \(attempt 1\) \(.*a stretch of it/)]]);
    expect(why.piet).toEqual([[1, expect.stringMatching(/as odile/)]]);
    expect(why.maro).toEqual([
      [1, expect.stringMatching(/as lio \(attempt 1\) \(long and short swings in the same order/)],
    ]);
    expect(why.lio).toEqual([[1, expect.stringMatching(/as maro/)]]);
  });

  it('say the same of one attempt by itself', async () => {
    const [tomas] = await desk.handed({ trainee: 'tomas' });
    expect((await desk.evidence(tomas!)).map((e) => e.code)).toEqual(['near-twin']);
    const [sanne] = await desk.handed({ trainee: 'sanne' });
    expect(await desk.evidence(sanne!)).toEqual([]);
  });
});

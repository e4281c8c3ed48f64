import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readRecording, scoreAttempt } from '../../scoring/index.ts';
import { digestOf } from '../../scoring/lab/digests.ts';
import { judgeOf, VERSIONS } from '../../scoring/lab/judge.ts';
import { openQueue, type ScoreQueue, type TakenJob } from '../../scoring/lab/queue.ts';
import { openScorer, type Scorer } from '../../scoring/lab/scorer.ts';
import { Scores } from '../../scoring/lab/scores.ts';
import type { Store } from '../../scoring/lab/store.ts';
import { judges, scores as scoresTable } from '../../scoring/lab/tables.ts';
import { Worker } from '../../scoring/lab/worker.ts';
import { bytesOf, shortAttempt, shortExercise } from './support/attempts.ts';
import { KIND, openEmpty, stopServer } from './support/stores.ts';

const judge = judgeOf(shortExercise());
const good = bytesOf(shortAttempt(1));
const files = new Map([[digestOf(good), good]]);
const bad = new TextEncoder().encode('{"format":"toehold-recording","version":1}');
files.set(digestOf(bad), bad);

let scorer: Scorer;
beforeAll(() => {
  scorer = openScorer(1, 60);
});
afterAll(async () => {
  await scorer.stop();
  await stopServer();
});

describe(`scoring from the queue on the ${KIND} store`, () => {
  let store: Store;
  let queue: ScoreQueue;
  let scores: Scores;
  beforeAll(async () => {
    store = await openEmpty();
    await store.db.insert(judges).values(judge);
    queue = await openQueue(store, VERSIONS, (e) => {
      throw e;
    });
    scores = new Scores(store.db, VERSIONS);
  });
  afterAll(async () => {
    await queue.stop();
    await store.close();
  });

  function worker(name: string, ears: Partial<ConstructorParameters<typeof Worker>[0]['ears']>): Worker {
    return new Worker({
      name,
      queue,
      scores,
      scorer,
      readAttempt: async (digest) => files.get(digest) ?? null,
      ears: { scored: () => undefined, fault: () => undefined, ...ears },
    });
  }

  it('queues a waiting job once', async () => {
    const job = { attempt: 'x'.repeat(64), judge: judge.digest };
    await queue.add([job, job], true);
    await queue.add([job], false);
    expect(await queue.waiting()).toBe(1);
    const [taken] = await queue.take(5);
    expect(taken).toMatchObject(job);
    await queue.done(taken!.id);
    expect(await queue.take(5)).toEqual([]);
  });

  it('welds and judges by itself, writes a score once, and says of a file that cannot be read why', async () => {
    const done: [TakenJob, boolean][] = [];
    const one = worker('one', { scored: (job, _took, written) => done.push([job, written]) });
    one.start();
    await queue.add(
      [...files.keys()].map((attempt) => ({ attempt, judge: judge.digest })),
      true,
    );
    await expect.poll(() => done.length, { timeout: 60_000 }).toBe(2);
    await one.stop();
    expect(done.map(([, written]) => written)).toEqual([true, true]);
    const rows = await store.db.select().from(scoresTable);
    const own = scoreAttempt(readRecording(new TextDecoder().decode(good)), { exercise: shortExercise() });
    const row = rows.find((r) => r.attempt === digestOf(good))!;
    expect(row).toMatchObject({ ...VERSIONS, judge: judge.digest, fault: null, worker: 'one' });
    expect(row.result).toMatchObject({ verdict: own.verdict, stateHash: own.stateHash, notes: own.notes });
    expect(rows.find((r) => r.attempt === digestOf(bad))).toMatchObject({
      result: null,
      fault: expect.stringMatching(/poses/),
    });

    const again = await scores.write({
      attempt: digestOf(good),
      judge: judge.digest,
      outcome: { result: null, hand: null, motion: null, fault: 'another opinion' },
      took_ms: 1,
      worker: 'two',
    });
    expect(again).toBe(false);
    expect(await store.db.select().from(scoresTable)).toEqual(rows);
  });

  it('gives a job whose file is missing back to the queue', async () => {
    const said: string[] = [];
    const two = worker('two', { fault: (_job, why) => said.push(why) });
    two.start();
    await queue.add([{ attempt: 'f'.repeat(64), judge: judge.digest }], true);
    await expect
      .poll(() => said, { timeout: 30_000 })
      .toContain(`the file of attempt ${'f'.repeat(64)} is missing or spoilt`);
    await two.stop();
    expect(await queue.waiting()).toBe(1);
  });
});

import { createServer, type IncomingMessage, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readJudge } from '../../scoring/lab/judge.ts';
import { Scores } from '../../scoring/lab/scores.ts';
import { type Said, statementId, statementOf } from '../../scoring/lab/statement.ts';
import { Statements } from '../../scoring/lab/statements.ts';
import { judges, scores, statements, submissions } from '../../scoring/lab/tables.ts';
import { scoreBytes } from '../../scoring/node/index.ts';
import { bytesOf, shortAttempt } from './support/attempts.ts';
import { firstInstructor, joined, newClass, newLab, type TestLab } from './support/school.ts';
import { stopServer } from './support/stores.ts';
import { problemsByOthers, statementSchema } from './support/xapi.ts';

/** A record store of the test's own, over http, that answers as it is told. */
interface Store {
  url: string;
  /** Answers to come; when they are used up, what a store does: 204, and 409 for an id it has with other words. */
  answers: number[];
  kept: Map<string, string>;
  heard: IncomingMessage[];
  server: Server;
}

async function openStore(): Promise<Store> {
  const store: Store = { url: '', answers: [], kept: new Map(), heard: [], server: createServer() };
  store.server.on('request', (request: IncomingMessage, answer) => {
    const pieces: Buffer[] = [];
    request.on('data', (piece: Buffer) => pieces.push(piece));
    request.on('end', () => {
      store.heard.push(request);
      const id = new URL(request.url ?? '', 'http://store').searchParams.get('statementId') ?? '';
      const text = Buffer.concat(pieces).toString();
      const told = store.answers.shift();
      const known = store.kept.get(id);
      const status = told ?? (known === undefined || known === text ? 204 : 409);
      if (status === 204) store.kept.set(id, text);
      answer.writeHead(status).end();
    });
  });
  await new Promise<void>((resolve) => store.server.listen(0, '127.0.0.1', resolve));
  store.url = `http://127.0.0.1:${(store.server.address() as AddressInfo).port}/xapi`;
  return store;
}

const HOME = 'https://lab.school.internal/';

describe('statements for a record store', () => {
  let t: TestLab;
  let store: Store;
  let told: Statements;
  let said: Said;

  beforeAll(async () => {
    store = await openStore();
    // Nothing is told by the lab itself here; every step is taken by hand.
    t = await newLab({ threads: 0 });
    const maud = await firstInstructor(t.lab);
    const tern = await newClass(maud, 'Tern Dock', ['Ines Calder', 'Wren Hollis']);
    const ines = await joined(t.lab, tern.code, 'Ines Calder');
    await ines.hand(tern.assignmentId, shortAttempt(1));
    await (await joined(t.lab, tern.code, 'Wren Hollis')).hand(tern.assignmentId, shortAttempt(1));
    told = new Statements(
      t.lab.parts.store.db,
      { url: store.url, login: 'lab:secret', home: HOME },
      t.lab.parts.versions,
    );
    const [judge] = await t.lab.parts.store.db.select().from(judges);
    const { result } = scoreBytes(bytesOf(shortAttempt(1)), 'a', readJudge(judge!.content));
    said = {
      ...{ submissionId: 'a'.repeat(64), trainee: 'someone', number: 1, late: false, received: new Date(0) },
      ...{ assignment: { id: 'tee', title: 'Tee' }, result, versions: t.lab.parts.versions },
    };
  }, 120_000);
  afterAll(async () => {
    store.server.close();
    await t.end();
    await stopServer();
  });

  const rows = () => t.lab.parts.store.db.select().from(statements).orderBy(statements.id);

  it('are what the specification asks for, whatever the verdict, and say no name', () => {
    for (const verdict of ['within', 'outside', 'too close to call', 'no verdict'] as const)
      for (const score of [null, 0, 61, 100]) {
        const made = statementOf({ ...said, result: { ...said.result, verdict, score } }, HOME);
        expect(statementSchema.safeParse(JSON.parse(JSON.stringify(made))).error).toBeUndefined();
        expect(problemsByOthers(JSON.parse(JSON.stringify(made)))).toEqual([]);
        expect((made.result as { success?: boolean }).success).toBe(
          verdict === 'within' ? true : verdict === 'outside' ? false : undefined,
        );
      }
    const good = statementOf(said, HOME);
    for (const bad of [
      { ...good, id: 'x' },
      { ...good, actor: { ...(good.actor as object), mbox: 'mailto:a@b' } },
      { ...good, result: { score: { scaled: 61 } } },
      { ...good, authority: null },
      { ...good, result: { score: { raw: 101, min: 0, max: 100 } } },
      { ...good, result: { duration: '12 s' } },
      { ...good, verb: { id: 'scored' } },
      { ...good, context: { extensions: { number: 1 } } },
      { ...good, timestamp: 'yesterday' },
      { ...good, version: '2.0.0' },
    ]) {
      expect(statementSchema.safeParse(bad).success, JSON.stringify(bad)).toBe(false);
      expect(problemsByOthers(bad), JSON.stringify(bad)).not.toEqual([]);
    }
  });

  it('have an id that is the same when written again, and another for another version', () => {
    const versions = { ...said.versions, scoring: '9.9.9' };
    expect(statementId(said)).toBe(statementId({ ...said, late: true } as Said));
    expect(statementId(said)).not.toBe(statementId({ ...said, versions }));
  });

  it('are there with the score or not at all, one for each who handed it in', async () => {
    const { db } = t.lab.parts.store;
    const [row] = await db.select().from(submissions);
    const score = {
      ...{ attempt: row!.attempt, judge: row!.judge, took_ms: 1, worker: 'w' },
      outcome: { result: said.result, hand: 'b'.repeat(64), motion: '', fault: null } as const,
    };
    const failing = new Statements(db, { url: '', login: null, home: HOME }, t.lab.parts.versions);
    failing.write = async (tx, job) => {
      await Statements.prototype.write.call(told, tx, job);
      throw new Error('the process dies before it commits');
    };
    await expect(new Scores(db, t.lab.parts.versions, failing).write(score)).rejects.toThrow('dies');
    expect(await rows()).toEqual([]);
    expect(await db.select().from(scores)).toEqual([]);
    expect(await new Scores(db, t.lab.parts.versions, told).write(score)).toBe(true);
    expect(await new Scores(db, t.lab.parts.versions, told).write(score)).toBe(false);
    expect(await rows()).toHaveLength(2);
    for (const { id, statement } of await rows()) {
      expect(statementSchema.parse(JSON.parse(statement)).id).toBe(id);
      expect(problemsByOthers(JSON.parse(statement))).toEqual([]);
      expect(statement).not.toMatch(/Ines|Wren|Tern/);
    }
    // Off: nothing is written.
    await db.delete(statements);
    await new Scores(db, t.lab.parts.versions).tellAgain(score);
    expect(await rows()).toEqual([]);
    await new Scores(db, t.lab.parts.versions, told).tellAgain(score);
    expect(await rows()).toHaveLength(2);
  });

  it('stay through an outage and a fault of the store, are marked when it has them, and not sent again', async () => {
    const [one] = await told.waiting(1);
    store.answers = [500, 503];
    await expect(told.send(one!)).rejects.toThrow('500');
    await expect(told.send(one!)).rejects.toThrow('503');
    const away = new Statements(
      t.lab.parts.store.db,
      { url: 'http://127.0.0.1:9/xapi', login: null, home: HOME },
      t.lab.parts.versions,
    );
    await expect(away.send(one!)).rejects.toThrow();
    expect(await told.waiting(9)).toHaveLength(2);
    await told.send(one!);
    expect(await told.waiting(9)).toHaveLength(1);
    const heard = store.heard.length;
    await told.send(one!);
    expect(store.heard.length).toBe(heard);
    const { method, headers, url } = store.heard.at(-1)!;
    expect({ method, url }).toEqual({ method: 'PUT', url: `/xapi/statements?statementId=${one}` });
    expect(headers['x-experience-api-version']).toBe('1.0.3');
    expect(headers.authorization).toBe(`Basic ${Buffer.from('lab:secret').toString('base64')}`);
  });

  it('sent before a kill and marked after it are one statement; a conflict ends the sending; a refusal for good is kept with its reason', async () => {
    const { db } = t.lab.parts.store;
    const [two] = await told.waiting(1);
    // The kill between send and mark: the store has it, the row does not know.
    await told.send(two!);
    await db.update(statements).set({ sent: null });
    for (const id of await told.waiting(9)) await told.send(id);
    expect(store.kept.size).toBe(2);
    await db.update(statements).set({ sent: null });
    store.answers = [409, 400];
    for (const id of await told.waiting(9)) await told.send(id);
    expect(await told.waiting(9)).toEqual([]);
    expect((await rows()).map((r) => [r.sent !== null, r.refused]).sort()).toEqual([
      [false, 'the record store answered 400'],
      [true, null],
    ]);
  });

  it('go by themselves through the queue, in the end', async () => {
    const { db } = t.lab.parts.store;
    await db.update(statements).set({ sent: null, refused: null });
    store.kept.clear();
    store.answers = [503];
    await t.lab.parts.queue.post(
      (id) => told.send(id),
      () => told.waiting(9),
    );
    await expect.poll(() => store.kept.size, { timeout: 30_000 }).toBe(2);
    await expect.poll(async () => (await told.waiting(9)).length, { timeout: 10_000 }).toBe(0);
  }, 60_000);
});

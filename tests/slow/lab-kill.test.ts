import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { digestOf } from '../../scoring/lab/digests.ts';
import { bytesOf, shortAttempt, shortExercise } from '../lab/support/attempts.ts';
import { Caller } from '../lab/support/caller.ts';
import { freePort, startPostgres } from '../lab/support/postgres.ts';
import { PASSWORD, WORKER_TOKEN } from '../lab/support/school.ts';
import { KINDS, newServerDatabase, stopServer } from '../lab/support/stores.ts';

/** A lab as a process of its own, killed without warning. */
interface Running {
  process: ChildProcess;
  said: () => string;
}

const folders: string[] = [];
const started: ChildProcess[] = [];
afterAll(async () => {
  // A test that failed half-way leaves its lab running.
  for (const child of started) child.kill('SIGKILL');
  for (const f of folders) rmSync(f, { recursive: true, force: true });
  await stopServer();
});

async function start(args: string[], env: Record<string, string>, until: RegExp): Promise<Running> {
  const child = spawn(process.execPath, ['--import', 'tsx', 'scoring/lab/main.ts', ...args], {
    env: { ...process.env, ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  started.push(child);
  let said = '';
  for (const stream of [child.stdout, child.stderr]) {
    stream.on('data', (chunk: Buffer) => {
      said += chunk.toString();
    });
  }
  await expect.poll(() => (child.exitCode === null ? said : `ended: ${said}`), { timeout: 120_000 }).toMatch(until);
  return { process: child, said: () => said };
}

async function end(r: Running, signal: NodeJS.Signals): Promise<number | null> {
  const gone = new Promise<number | null>((resolve) => r.process.once('exit', resolve));
  r.process.kill(signal);
  return gone;
}

/** A class with one exercise handed out, and the first of its trainees come in. */
async function classOf(
  base: string,
  lab: Running,
  names: readonly string[],
): Promise<{ assignment: string; ines: Caller }> {
  const code = /Code for the first instructor: (\w+)/.exec(lab.said())![1];
  const maud = new Caller(base);
  await maud.ask('POST', '/api/setup', { code, name: 'Maud Tarrant', password: PASSWORD });
  const klass = await maud.ask('POST', '/api/classes', { name: 'Tern Dock' });
  await maud.ask('POST', `/api/classes/${klass.id}/roster`, { csv: names.join('\n') });
  const { id } = await maud.ask('POST', `/api/classes/${klass.id}/assignments`, {
    exercise: shortExercise(),
    opens: new Date(Date.now() - 1000).toISOString(),
    closes: null,
    mostAttempts: null,
  });
  const ines = new Caller(base);
  await ines.ask('POST', '/api/join', { code: klass.code, name: names[0] });
  return { assignment: id, ines };
}

/** Attempts to be handed in, and which of them were acknowledged. */
function handingIn(
  ines: Caller,
  assignment: string,
): { sent: Uint8Array[]; acknowledged: Set<string>; handIn: (bytes: Uint8Array) => Promise<void> } {
  const acknowledged = new Set<string>();
  const sent = Array.from({ length: 18 }, (_, n) => bytesOf({ ...shortAttempt(n % 3), seed: n }));
  const handIn = async (bytes: Uint8Array): Promise<void> => {
    const digest = digestOf(bytes);
    await ines.ask('PUT', `/api/my/assignments/${assignment}/attempts/${digest}`, bytes);
    acknowledged.add(digest);
  };
  return { sent, acknowledged, handIn };
}

/** Hands them in a share at a time; so long after each share's start something is killed, and it is started again when every upload has been answered or has failed. */
async function underUploads(
  sent: readonly Uint8Array[],
  handIn: (bytes: Uint8Array) => Promise<void>,
  delays_ms: readonly number[],
  kill: () => Promise<unknown>,
  again: () => Promise<void>,
): Promise<void> {
  const share = sent.length / delays_ms.length;
  for (const [n, delay_ms] of delays_ms.entries()) {
    const uploads = sent.slice(n * share, (n + 1) * share).map((bytes) => handIn(bytes).catch(() => undefined));
    await new Promise((resolve) => setTimeout(resolve, delay_ms));
    await kill();
    await Promise.all(uploads);
    await again();
  }
}

/** Own attempts as a trainee is told of them. */
interface Mine {
  number: number;
  state: string;
}
async function mineOf(trainee: Caller): Promise<Mine[]> {
  return (await trainee.ask('GET', '/api/my/attempts')).attempts;
}

describe.each(KINDS)('a lab on the %s store, killed in the middle of a class', (kind) => {
  it('has every attempt it acknowledged, each scored once, and stops in order when asked to', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'toehold-lab-'));
    folders.push(folder);
    const port = String(await freePort());
    const base = `http://127.0.0.1:${port}`;
    const env = {
      LAB_WORKER_TOKEN: WORKER_TOKEN,
      LAB_REQUESTS: '10000',
      ...(kind === 'server' ? { DATABASE_URL: await newServerDatabase() } : {}),
    };
    const serve = (): Promise<Running> =>
      start(['--data', folder, '--host', '127.0.0.1', '--port', port, '--threads', '1'], env, /Stop with Ctrl\+C/);

    let lab = await serve();
    const { assignment, ines } = await classOf(base, lab, ['Ines Calder', 'Wren Hollis']);

    // Three times: hand in until the lab dies under the uploads, then start it again.
    const { sent, acknowledged, handIn } = handingIn(ines, assignment);
    await underUploads(
      sent,
      handIn,
      [150, 600, 1500],
      () => end(lab, 'SIGKILL'),
      async () => {
        lab = await serve();
      },
    );
    const known = await ines.ask('GET', '/api/my/attempts');
    const before = (known.attempts as { id: string }[]).length;
    expect(before).toBeGreaterThanOrEqual(acknowledged.size);

    // The outbox of the page sends again whatever was not acknowledged; nothing is there twice.
    for (const bytes of sent) await handIn(bytes);
    const mine = () => mineOf(ines);
    expect(await mine()).toHaveLength(sent.length);
    expect((await mine()).map((a) => a.number).sort((a, b) => a - b)).toEqual(sent.map((_, i) => i + 1));
    await expect
      .poll(async () => (await mine()).filter((a) => a.state === 'scored').length, { timeout: 180_000, interval: 500 })
      .toBe(sent.length);
    const receipts = readdirSync(join(folder, 'receipts')).flatMap((s) => readdirSync(join(folder, 'receipts', s)));
    expect(receipts.filter((name) => name.endsWith('.json'))).toHaveLength(sent.length);
    // Half-written files of the killed are cleared by whoever next holds the folder alone.
    if (kind === 'embedded') expect(receipts).toHaveLength(sent.length);
    expect(await end(lab, 'SIGTERM')).toBe(0);
  }, 600_000);
});

describe('a lab whose PostgreSQL server is killed in the middle of a class', () => {
  it('stays up, has every attempt it acknowledged, and scores each once when the server is back', async () => {
    const server = await startPostgres();
    try {
      const folder = mkdtempSync(join(tmpdir(), 'toehold-lab-'));
      folders.push(folder);
      const port = String(await freePort());
      const base = `http://127.0.0.1:${port}`;
      const env = { LAB_WORKER_TOKEN: WORKER_TOKEN, LAB_REQUESTS: '10000', DATABASE_URL: server.newDatabase() };
      const lab = await start(
        ['--data', folder, '--host', '127.0.0.1', '--port', port, '--threads', '1'],
        env,
        /Stop with Ctrl\+C/,
      );
      const { assignment, ines } = await classOf(base, lab, ['Ines Calder']);
      const { sent, acknowledged, handIn } = handingIn(ines, assignment);
      await underUploads(
        sent,
        handIn,
        [30, 400, 1500],
        async () => server.kill(),
        async () => {
          expect(lab.process.exitCode, lab.said().slice(-2000)).toBeNull();
          await server.startAgain();
        },
      );
      expect(acknowledged.size).toBeGreaterThan(0);
      const mine = () => mineOf(ines);
      const digests = new Set(sent.map(digestOf));
      await expect.poll(async () => (await mine().catch(() => [])).length, { timeout: 60_000 }).toBeGreaterThan(0);
      expect((await mine()).length).toBeGreaterThanOrEqual(acknowledged.size);

      for (const bytes of sent) await handIn(bytes);
      expect(acknowledged).toEqual(digests);
      await expect
        .poll(async () => (await mine()).filter((a) => a.state === 'scored').length, {
          timeout: 240_000,
          interval: 500,
        })
        .toBe(sent.length);
      expect((await mine()).map((a) => a.number).sort((a, b) => a - b)).toEqual(sent.map((_, i) => i + 1));
      expect(await end(lab, 'SIGTERM')).toBe(0);
    } finally {
      server.stop();
    }
  }, 600_000);
});

describe('a worker on another machine', () => {
  it('scores what a lab without threads takes in, fetching attempts over the network, and stops in order', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'toehold-lab-'));
    const elsewhere = mkdtempSync(join(tmpdir(), 'toehold-worker-'));
    folders.push(folder, elsewhere);
    const port = String(await freePort());
    const base = `http://127.0.0.1:${port}`;
    const env = { LAB_WORKER_TOKEN: WORKER_TOKEN, LAB_URL: base, DATABASE_URL: await newServerDatabase() };
    const lab = await start(
      ['--data', folder, '--host', '127.0.0.1', '--port', port, '--threads', '0'],
      env,
      /Stop with Ctrl\+C/,
    );
    const worker = await start(['worker', '--data', elsewhere, '--threads', '1'], env, /worker started/);
    const { assignment, ines } = await classOf(base, lab, ['Ines Calder']);
    const bytes = bytesOf(shortAttempt(1));
    await ines.ask('PUT', `/api/my/assignments/${assignment}/attempts/${digestOf(bytes)}`, bytes);
    await expect.poll(async () => (await mineOf(ines))[0]!.state, { timeout: 120_000, interval: 300 }).toBe('scored');
    expect(await end(worker, 'SIGTERM')).toBe(0);
    expect(await end(lab, 'SIGTERM')).toBe(0);
  }, 300_000);
});

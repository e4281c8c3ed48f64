import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { digestOf } from '../../../scoring/lab/digests.ts';
import { bytesOf, shortAttempt, shortExercise } from '../../lab/support/attempts.ts';
import { Caller } from '../../lab/support/caller.ts';
import { freePort } from '../../lab/support/postgres.ts';
import { type LabProcess, startLab } from './lab-process.ts';

export interface Bell {
  trainees: number;
  /** Each trainee's upload begins at an even moment of this many seconds. */
  within_s: number;
  databaseUrl: string | null;
  /** School days after the two bells, in each of which everybody hands in once while one thread scores: a week in so many times `within_s`. */
  days: number;
}

export interface Rung {
  accepted: number;
  acceptedPerSecond: number;
  /** Of one upload, ms. */
  p50_ms: number;
  p95_ms: number;
  p99_ms: number;
  /** From the start of the threads or workers until everything is scored, s: their own start counts, a few seconds. */
  drained_s: { one: number; two: number };
  /** Of the service before the first upload, after the last, and after a second class of the same size, MB. */
  memory_MB: { before: number | null; after: number | null; again: number | null };
  /** Of the service at the end of each day of the week, MB; none where no week was played. */
  week_MB: (number | null)[];
  lost: number;
  /** Attempts that the class has more than once. */
  double: number;
  bytes: number;
}

const PASSWORD = 'gorse on the headland';

/** Two classes' worth of uploads, taken in by a lab without scoring threads and then scored: the first by one thread, the second by two. */
export async function ring({ trainees, within_s, databaseUrl, days }: Bell): Promise<Rung> {
  const folder = mkdtempSync(join(tmpdir(), 'toehold-load-'));
  const port = String(await freePort());
  const base = `http://127.0.0.1:${port}`;
  const env: Record<string, string> = {
    LAB_REQUESTS: '100000',
    LAB_WORKER_TOKEN: 'a-token-of-at-least-twenty-characters',
    LAB_URL: base,
    ...(databaseUrl === null ? {} : { DATABASE_URL: databaseUrl }),
  };
  let lab: LabProcess | null = null;
  let workers: LabProcess[] = [];
  const start = async (threads: number): Promise<LabProcess> => {
    await lab?.stop();
    lab = await startLab(['--data', folder, '--host', '127.0.0.1', '--port', port, '--threads', String(threads)], env);
    return lab;
  };
  try {
    let service = await start(0);
    const maud = new Caller(base);
    const code = /Code for the first instructor: (\w+)/.exec(service.said())![1];
    await maud.ask('POST', '/api/setup', { code, name: 'Maud Tarrant', password: PASSWORD });
    const klass = await maud.ask('POST', '/api/classes', { name: 'Tern Dock' });
    const names = Array.from({ length: trainees }, (_, n) => `Trainee ${n + 1}`);
    await maud.ask('POST', `/api/classes/${klass.id}/roster`, { csv: names.join('\n') });
    const opens = new Date(Date.now() - 1000).toISOString();
    const handedOut = { exercise: shortExercise(), opens, closes: null, mostAttempts: null };
    const assignment = await maud.ask('POST', `/api/classes/${klass.id}/assignments`, handedOut);
    const people: Caller[] = [];
    for (const name of names) {
      const person = new Caller(base);
      await person.ask('POST', '/api/join', { code: klass.code, name });
      people.push(person);
    }
    const before = service.memory_MB();
    const taken: { digest: string; took_ms: number }[] = [];
    let bytes = 0;
    const bell = async (round: number): Promise<number> => {
      const began = performance.now();
      await Promise.all(
        people.map(async (person, n) => {
          const content = bytesOf({ ...shortAttempt(0), seed: round * trainees + n });
          bytes = content.length;
          const digest = digestOf(content);
          await sleep((1000 * within_s * n) / trainees);
          const sent = performance.now();
          await person.ask('PUT', `/api/my/assignments/${assignment.id}/attempts/${digest}`, content);
          taken.push({ digest, took_ms: performance.now() - sent });
        }),
      );
      return (performance.now() - began) / 1000;
    };
    const progress = async (): Promise<{ handed: number; scored: number }> =>
      JSON.parse(/data: (.*)/.exec(await maud.first(`/api/classes/${klass.id}/live`))![1]!);
    const empty = async (): Promise<void> => {
      for (;;) {
        const { handed, scored } = await progress();
        if (handed === scored) return;
        await sleep(200);
      }
    };
    /** By so many threads of the one process that the embedded database takes; on a server by so many workers beside the service. */
    const drained = async (hands: number): Promise<number> => {
      await start(databaseUrl === null ? hands : 0);
      const began = performance.now();
      if (databaseUrl !== null) {
        const beside = ['worker', '--data', join(folder, 'none'), '--threads', '1'];
        const begun = Array.from({ length: hands }, () =>
          startLab(beside, { ...env, LAB_LOG: 'info' }, /worker started/),
        );
        workers = await Promise.all(begun);
      }
      await empty();
      const took = (performance.now() - began) / 1000;
      await Promise.all(workers.map((w) => w.stop()));
      workers = [];
      return took;
    };
    const first_s = await bell(0);
    const after = service.memory_MB();
    const one = await drained(1);
    service = await start(0);
    await bell(1);
    const again = service.memory_MB();
    const two = await drained(2);
    const week_MB: (number | null)[] = [];
    if (days > 0) service = await start(1);
    for (let day = 0; day < days; day++) {
      await bell(2 + day);
      await empty();
      week_MB.push(service.memory_MB());
    }
    const mine = await Promise.all(people.map((p) => p.ask('GET', '/api/my/attempts')));
    const there = mine.flatMap((m) => (m.attempts as { attempt: string }[]).map((x) => x.attempt));
    const times = taken.map((t) => t.took_ms).sort((a, b) => a - b);
    const at = (share: number): number => times[Math.min(times.length - 1, Math.floor(share * times.length))]!;
    return {
      accepted: taken.length,
      acceptedPerSecond: trainees / first_s,
      ...{ p50_ms: at(0.5), p95_ms: at(0.95), p99_ms: at(0.99) },
      drained_s: { one, two },
      memory_MB: { before, after, again },
      week_MB,
      lost: taken.filter(({ digest }) => !there.includes(digest)).length,
      double: there.length - new Set(there).size,
      bytes,
    };
  } finally {
    await Promise.all(workers.map((w) => w.stop()));
    await (lab as LabProcess | null)?.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}

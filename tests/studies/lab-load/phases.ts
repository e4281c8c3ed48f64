import { setTimeout as sleep } from 'node:timers/promises';
import pg from 'pg';
import { type Count, countIn } from './count.ts';
import { type AtWork, type Ground, type Place, startAt } from './ground.ts';
import { type Hands, handsOver } from './hands.ts';
import type { LabProcess } from './lab-process.ts';
import { School, scoredBy } from './school.ts';
import { type Latency, latencyOf, type Watched, watch } from './watch.ts';

/** What is handed in, in short. */
type Attempt = Pick<Hands, 'bytes' | 'arc_s'>;
/** Length of the runs, mm: as short as a queue needs to be measured, and as long as a run of an exercise often is. */
export const SHORT_MM = 3;
export const LONG_MM = 30;

/** Everybody hands in within so many seconds while an instructor's page is open at every class; nothing is scored meanwhile. */
export interface Bell {
  attempt: Attempt;
  trainees: number;
  classes: number;
  within_s: number;
  perSecond: number;
  failed: number;
  latency: Latency;
  watched: Watched;
  count: Count;
}

export async function bell(ground: Ground, trainees: number, within_s: number): Promise<Bell> {
  const hands = handsOver(SHORT_MM);
  const place = ground.fresh();
  const at = await startAt(place, 0);
  try {
    const school = await School.gather(at, trainees, hands);
    const hush = school.listen();
    const watched = watch(at.service);
    const uploads = await school.handIn(within_s);
    const seen = watched();
    await hush();
    await at.service.stop();
    return {
      attempt: inShort(hands),
      ...{ trainees, classes: school.classes.length, within_s, failed: uploads.failed },
      perSecond: uploads.acknowledged.length / uploads.took_s,
      latency: latencyOf(uploads.times_ms),
      watched: seen,
      count: await countIn(place, uploads.acknowledged),
    };
  } finally {
    await at.service.stop();
  }
}

/** One way of emptying a queue. */
export interface Drained {
  /** From the start of threads or workers until everything is scored, s. */
  whole_s: number;
  /** Between the first twentieth of the scores and the last, so that nobody's start counts. */
  perSecond: number;
  watched: Watched;
  count: Count;
}

/** Everybody hands in at once; then the same queue is emptied by one and, from a copy of the same data, by two. */
export interface Drain {
  attempt: Attempt;
  trainees: number;
  /** Uploads acknowledged a second when all come at once. */
  atOnce: { perSecond: number; failed: number; latency: Latency };
  one: Drained | null;
  two: Drained | null;
}

export async function drain(
  ground: Ground,
  trainees: number,
  length_mm: number,
  keep: (row: Drain) => void,
): Promise<void> {
  const hands = handsOver(length_mm);
  const full = ground.fresh();
  const at = await startAt(full, 0);
  let row: Drain;
  let acknowledged: string[];
  try {
    const school = await School.gather(at, trainees, hands);
    const uploads = await school.handIn(0);
    ({ acknowledged } = uploads);
    const perSecond = acknowledged.length / uploads.took_s;
    const atOnce = { perSecond, failed: uploads.failed, latency: latencyOf(uploads.times_ms) };
    row = { attempt: inShort(hands), trainees, atOnce, one: null, two: null };
  } finally {
    await at.service.stop();
  }
  const copy = ground.copyOf(full);
  row = { ...row, one: await emptied(full, acknowledged, 1) };
  keep(row);
  keep({ ...row, two: await emptied(copy, acknowledged, 2) });
}

/** By so many threads of the one process that the embedded database takes; on a server by so many workers beside the service. */
async function emptied(place: Place, acknowledged: readonly string[], hands: number): Promise<Drained> {
  const began = performance.now();
  const at = await startAt(place, place.databaseUrl === null ? hands : 0);
  const workers: LabProcess[] = [];
  const watched = watch(at.service);
  try {
    if (place.databaseUrl !== null)
      workers.push(...(await Promise.all(Array.from({ length: hands }, () => at.worker()))));
    await untilScored(place, at, acknowledged.length);
    const whole_s = (performance.now() - began) / 1000;
    const seen = watched();
    for (const w of [...workers, at.service]) await w.stop();
    const count = await countIn(place, acknowledged);
    return { whole_s, perSecond: steady(count.written_ms), watched: seen, count };
  } finally {
    for (const w of [...workers, at.service]) await w.stop();
  }
}

async function untilScored({ databaseUrl }: Place, at: AtWork, all: number): Promise<void> {
  const client = databaseUrl === null ? null : new pg.Client({ connectionString: databaseUrl });
  await client?.connect();
  const scored = async (): Promise<number> => {
    if (client === null) return scoredBy(at);
    const { rows } = await client.query<{ n: string }>('select count(*) as n from scores');
    return Number(rows[0]?.n);
  };
  while ((await scored()) < all) await sleep(1000);
  await client?.end();
}

function steady(written_ms: readonly number[]): number {
  const from = Math.floor(written_ms.length / 20);
  return (written_ms.length - 1 - from) / ((written_ms.at(-1)! - written_ms[from]!) / 1000);
}

/** School days one after the other, in each of which everybody hands in so many times while one thread of the service scores and a page is open at every class. */
export interface Week {
  attempt: Attempt;
  trainees: number;
  days: number;
  attemptsADay: number;
  within_s: number;
  failed: number;
  latency: Latency;
  /** After the last upload of each day until its queue is empty, s. */
  emptyAfter_s: number[];
  /** Of the service when each day is over, MB; none where the system does not tell. */
  memory_MB: number[];
  watched: Watched;
  count: Count;
}

export async function week(
  ground: Ground,
  w: { trainees: number; days: number; attemptsADay: number; within_s: number },
  keep: (row: Week) => void,
): Promise<void> {
  const hands = handsOver(SHORT_MM);
  const place = ground.fresh();
  const at = await startAt(place, 1);
  const acknowledged: string[] = [];
  const times_ms: number[] = [];
  const emptyAfter_s: number[] = [];
  const memory_MB: number[] = [];
  let failed = 0;
  try {
    const school = await School.gather(at, w.trainees, hands);
    const hush = school.listen();
    const watched = watch(at.service);
    for (let day = 0; day < w.days; day++) {
      for (let round = 0; round < w.attemptsADay; round++) {
        const uploads = await school.handIn(w.within_s);
        acknowledged.push(...uploads.acknowledged);
        times_ms.push(...uploads.times_ms);
        failed += uploads.failed;
      }
      const over = performance.now();
      await untilScored({ ...place, databaseUrl: null }, at, acknowledged.length);
      emptyAfter_s.push((performance.now() - over) / 1000);
      const memory = at.service.memory_MB();
      if (memory !== null) memory_MB.push(memory);
    }
    const seen = watched();
    await hush();
    await at.service.stop();
    const count = await countIn(place, acknowledged);
    keep({
      attempt: inShort(hands),
      ...w,
      failed,
      latency: latencyOf(times_ms),
      emptyAfter_s,
      memory_MB,
      watched: seen,
      count,
    });
  } finally {
    await at.service.stop();
  }
}

function inShort({ bytes, arc_s }: Hands): Attempt {
  return { bytes, arc_s };
}

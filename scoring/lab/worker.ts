import { setTimeout as sleep } from 'node:timers/promises';
import { isLastTry, type ScoreQueue, type TakenJob } from './queue.ts';
import type { Scorer } from './scorer.ts';
import type { Scores } from './scores.ts';

/** How often an idle worker looks for jobs. */
const LOOK_MS = 500;
/** How often it looks for what is handed in, not scored and not queued: a service may have died between the two. */
const SWEEP_MS = 60_000;
/** Left alone by the sweep until this old: its job is probably just waiting or being done. */
const SWEEP_AGE_MS = 300_000;
const SWEEP_MOST = 5000;

/** What a worker tells as it goes. */
export interface WorkerEars {
  scored(job: TakenJob, took_ms: number, written: boolean): void;
  fault(job: TakenJob | null, why: string): void;
}

/** What a worker works with. */
export interface WorkerParts {
  name: string;
  queue: ScoreQueue;
  scores: Scores;
  scorer: Scorer;
  /** An attempt's bytes; null where there is none. */
  readAttempt(digest: string): Promise<Uint8Array | null>;
  ears: WorkerEars;
  /** How often an idle worker looks for jobs; left out: twice a second. */
  look_ms?: number;
}

/** Takes jobs from the queue and scores them, as many at once as it has threads, until it is stopped. */
export class Worker {
  readonly #parts: WorkerParts;
  readonly #busy = new Set<Promise<void>>();
  readonly #stopping = new AbortController();
  #nudge = new AbortController();
  #loops: Promise<unknown> = Promise.resolve();

  constructor(parts: WorkerParts) {
    this.#parts = parts;
  }

  start(): void {
    this.#loops = Promise.all([this.#work(), this.#sweepNowAndThen()]);
  }

  /** Something was just queued: look now and not at the next turn. */
  wake(): void {
    this.#nudge.abort();
  }

  /** Takes no more jobs and waits for those begun. */
  async stop(): Promise<void> {
    this.#stopping.abort();
    this.wake();
    await this.#loops;
    await Promise.all(this.#busy);
  }

  /** Queues everything handed in before a moment and not scored. */
  async sweep(before: Date): Promise<number> {
    const jobs = await this.#parts.scores.missing(before, SWEEP_MOST);
    if (jobs.length > 0) {
      await this.#parts.queue.add(jobs, false);
      this.wake();
    }
    return jobs.length;
  }

  get #over(): boolean {
    return this.#stopping.signal.aborted;
  }

  async #work(): Promise<void> {
    const { queue, scorer, ears, look_ms = LOOK_MS } = this.#parts;
    while (!this.#over) {
      this.#nudge = new AbortController();
      let taken: TakenJob[] = [];
      try {
        const free = scorer.threads - this.#busy.size;
        if (free > 0) taken = await queue.take(free);
      } catch (cause) {
        ears.fault(null, whyOf(cause));
      }
      for (const job of taken) {
        const doing = this.#do(job).finally(() => {
          this.#busy.delete(doing);
          this.wake();
        });
        this.#busy.add(doing);
      }
      if (taken.length === 0) await this.#rest(look_ms, this.#nudge.signal);
    }
  }

  async #sweepNowAndThen(): Promise<void> {
    while (!this.#over) {
      await this.#rest(SWEEP_MS, this.#stopping.signal);
      if (this.#over) return;
      await this.sweep(new Date(Date.now() - SWEEP_AGE_MS)).catch((cause) =>
        this.#parts.ears.fault(null, whyOf(cause)),
      );
    }
  }

  /** Whatever goes wrong is told and costs only this job. */
  async #do(job: TakenJob): Promise<void> {
    const { queue, ears } = this.#parts;
    try {
      await this.#score(job);
      await queue.done(job.id);
    } catch (cause) {
      ears.fault(job, whyOf(cause));
      // Should this fail too, the job expires and is given to somebody else.
      await queue.broke(job.id, whyOf(cause)).catch((again) => ears.fault(job, whyOf(again)));
    }
  }

  async #score(job: TakenJob): Promise<void> {
    const { scores, scorer, readAttempt, ears, name } = this.#parts;
    if (await scores.has(job)) {
      await scores.tellAgain(job);
      return;
    }
    const began = performance.now();
    const outcome = await this.#outcome(job, scorer, readAttempt);
    const took_ms = performance.now() - began;
    const written = await scores.write({ attempt: job.attempt, judge: job.judge, outcome, took_ms, worker: name });
    ears.scored(job, took_ms, written);
  }

  async #outcome(job: TakenJob, scorer: Scorer, readAttempt: WorkerParts['readAttempt']) {
    const [bytes, judge] = await Promise.all([readAttempt(job.attempt), this.#parts.scores.judgeContent(job.judge)]);
    if (bytes === null) throw new Error(`the file of attempt ${job.attempt} is missing or spoilt`);
    if (judge === null) throw new Error(`judge ${job.judge} is missing`);
    try {
      return await scorer.score({ attempt: job.attempt, bytes, judge });
    } catch (cause) {
      // A thread that breaks off at the same attempt again and again: said in place of a score, so that nobody waits for ever.
      if (!isLastTry(job) || this.#over) throw cause;
      return { result: null, hand: null, motion: null, fault: `Scoring broke off (${whyOf(cause)}).` } as const;
    }
  }

  async #rest(ms: number, woken: AbortSignal): Promise<void> {
    await sleep(ms, undefined, { signal: woken }).catch(() => undefined);
  }
}

export function whyOf(cause: unknown): string {
  return cause instanceof Error ? cause.message : String(cause);
}

import type { ScoreJob, ScoreQueue, TakenJob } from '../../../scoring/lab/queue.ts';
import type { Process, World } from './world.ts';

/**
 * The queue at its worst, as far as its promise goes: a job that is waiting is not added again, every job is handed out at least once, one whose worker died or
 * whose end was not heard is handed out again, and now and then one is handed out twice at once.
 */
export class SimulatedQueue {
  #waiting = new Map<string, ScoreJob>();
  #taken = new Map<string, ScoreJob>();
  #next = 0;
  /** Called when there is something to take. */
  woken: () => void = () => undefined;

  of(process: Process, world: World): ScoreQueue {
    const gate = <T>(what: string, run: () => T): Promise<T> => world.gate(process, `queue ${what}`, async () => run());
    return {
      add: (jobs) =>
        gate('add', () => {
          for (const job of jobs) this.#waiting.set(`${job.attempt}:${job.judge}`, job);
          this.woken();
        }),
      take: (most) =>
        gate('take', () =>
          [...this.#waiting].slice(0, most).map(([key, job]): TakenJob => {
            const id = String(this.#next++);
            // Every third stays where it was: another worker takes it too.
            if (this.#next % 3 !== 0) this.#waiting.delete(key);
            this.#taken.set(id, job);
            return { id, ...job, retries: 0 };
          }),
        ),
      done: (id) =>
        gate('done', () => {
          this.#taken.delete(id);
        }),
      broke: (id) =>
        gate('broke', () => {
          this.#again(id);
        }),
      waiting: () => gate('waiting', () => this.#waiting.size),
      stop: async () => undefined,
    };
  }

  /** Everything taken and never ended has expired. */
  expire(): void {
    for (const id of [...this.#taken.keys()]) this.#again(id);
  }

  #again(id: string): void {
    const job = this.#taken.get(id);
    if (job === undefined) return;
    this.#taken.delete(id);
    this.#waiting.set(`${job.attempt}:${job.judge}`, job);
    this.woken();
  }
}

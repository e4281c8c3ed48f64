import { digestOf } from '../../../scoring/lab/digests.ts';
import { bytesOf } from '../../lab/support/attempts.ts';
import { Caller } from '../../lab/support/caller.ts';
import { type AtWork, WORKER_TOKEN } from './ground.ts';
import type { Hands } from './hands.ts';

/** Trainees of one class. */
const CLASS = 25;

/** An attempt on its way. */
interface Parcel {
  content: Uint8Array;
  digest: string;
}

/** What came of a number of uploads. */
export interface Uploads {
  acknowledged: string[];
  times_ms: number[];
  /** Answered otherwise, or not at all. */
  failed: number;
  took_s: number;
}

/** A school whose trainees have joined. */
export class School {
  #made = 0;
  private constructor(
    private readonly instructor: Caller,
    readonly classes: readonly string[],
    private readonly people: readonly { caller: Caller; assignment: string }[],
    private readonly hands: Hands,
  ) {}

  /** Classes of 25 with the exercise handed out, everybody joined. */
  static async gather({ base, service }: AtWork, trainees: number, hands: Hands): Promise<School> {
    const instructor = new Caller(base);
    const code = /Code for the first instructor: (\w+)/.exec(service.said())![1];
    await instructor.ask('POST', '/api/setup', { code, name: 'Maud Tarrant', password: 'gorse on the headland' });
    const classes: string[] = [];
    const people: { caller: Caller; assignment: string }[] = [];
    for (let first = 0; first < trainees; first += CLASS) {
      const klass = await instructor.ask('POST', '/api/classes', { name: `Tern Dock ${first / CLASS + 1}` });
      classes.push(klass.id);
      const names = Array.from({ length: Math.min(CLASS, trainees - first) }, (_, n) => `Trainee ${first + n + 1}`);
      await instructor.ask('POST', `/api/classes/${klass.id}/roster`, { csv: names.join('\n') });
      const opens = new Date(Date.now() - 1000).toISOString();
      const handedOut = { exercise: hands.exercise, opens, closes: null, mostAttempts: null };
      const assignment = await instructor.ask('POST', `/api/classes/${klass.id}/assignments`, handedOut);
      for (const name of names) {
        const caller = new Caller(base);
        await caller.ask('POST', '/api/join', { code: klass.code, name });
        people.push({ caller, assignment: assignment.id });
      }
    }
    return new School(instructor, classes, people, hands);
  }

  /** Everybody hands one in, each beginning at an even moment of so many seconds; 0: all at once. */
  async handIn(within_s: number): Promise<Uploads> {
    const parcels = this.people.map(() => this.#parcel());
    const uploads: Uploads = { acknowledged: [], times_ms: [], failed: 0, took_s: 0 };
    const began = performance.now();
    await Promise.all(
      this.people.map(async ({ caller, assignment }, n) => {
        const { content, digest } = parcels[n]!;
        await new Promise((resolve) => setTimeout(resolve, (1000 * within_s * n) / this.people.length));
        const sent = performance.now();
        try {
          await caller.ask('PUT', `/api/my/assignments/${assignment}/attempts/${digest}`, content);
          uploads.times_ms.push(performance.now() - sent);
          uploads.acknowledged.push(digest);
        } catch {
          uploads.failed++;
        }
      }),
    );
    uploads.took_s = (performance.now() - began) / 1000;
    return uploads;
  }

  /** An instructor's page open at every class; what is returned closes them. */
  listen(): () => Promise<void> {
    const stop = new AbortController();
    const open = this.classes.map((id) =>
      this.instructor.follow(`/api/classes/${id}/live`, stop.signal).catch(() => undefined),
    );
    return async () => {
      stop.abort();
      await Promise.all(open);
    };
  }

  /** One of the hands with a seed of its own, so that no two files are the same. */
  #parcel(): Parcel {
    const seed = this.#made++;
    const { attempts } = this.hands;
    const content = bytesOf({ ...attempts[seed % attempts.length], seed });
    return { content, digest: digestOf(content) };
  }
}

/** How many attempts a lab's own threads have scored since it started. */
export async function scoredBy({ base }: AtWork): Promise<number> {
  const answer = await fetch(`${base}/api/metrics`, { headers: { authorization: `Bearer ${WORKER_TOKEN}` } });
  const counts = (await answer.text()).matchAll(/^lab_attempts_scored_total\{[^}]*\} (\d+)$/gm);
  return [...counts].reduce((sum, [, n]) => sum + Number(n), 0);
}

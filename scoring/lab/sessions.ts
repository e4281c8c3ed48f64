import { randomBytes } from 'node:crypto';
import { and, eq, gt, lt } from 'drizzle-orm';
import { digestOf } from './digests.ts';
import type { Db } from './store.ts';
import { classes, instructors, sessions, trainees } from './tables.ts';

/** Who a request comes from. */
export type Who =
  | { role: 'nobody' }
  | { role: 'worker' }
  | { role: 'instructor'; id: string; name: string; keeper: boolean; csrf: string }
  | { role: 'trainee'; id: string; name: string; classId: string; className: string; csrf: string };

/** A working day: laptops are shared. */
export const SESSION_S = 12 * 3600;

/** Sessions by a random token; only its digest is kept. */
export class Sessions {
  readonly #db: Db;

  constructor(db: Db) {
    this.#db = db;
  }

  /** The token for the cookie. Sessions that have ended are cleared away. */
  async begin(who: { instructorId: string } | { traineeId: string }): Promise<{ token: string; csrf: string }> {
    await this.#db.delete(sessions).where(lt(sessions.ends, new Date()));
    const token = randomBytes(32).toString('base64url');
    const csrf = randomBytes(24).toString('base64url');
    const ends = new Date(Date.now() + SESSION_S * 1000);
    await this.#db.insert(sessions).values({ token: digestOf(token), csrf, ends, ...who });
    return { token, csrf };
  }

  async who(token: string): Promise<Who> {
    const [row] = await this.#db
      .select({ csrf: sessions.csrf, instructor: instructors, trainee: trainees, className: classes.name })
      .from(sessions)
      .leftJoin(instructors, eq(instructors.id, sessions.instructorId))
      .leftJoin(trainees, eq(trainees.id, sessions.traineeId))
      .leftJoin(classes, eq(classes.id, trainees.classId))
      .where(and(eq(sessions.token, digestOf(token)), gt(sessions.ends, new Date())));
    if (row?.instructor) {
      const { id, name, keeper } = row.instructor;
      return { role: 'instructor', id, name, keeper, csrf: row.csrf };
    }
    if (row?.trainee) {
      const { id, name, classId } = row.trainee;
      return { role: 'trainee', id, name, classId, className: row.className ?? '', csrf: row.csrf };
    }
    return { role: 'nobody' };
  }

  async end(token: string): Promise<void> {
    await this.#db.delete(sessions).where(eq(sessions.token, digestOf(token)));
  }
}

import { timingSafeEqual } from 'node:crypto';
import { and, eq } from 'drizzle-orm';
import type { Context, MiddlewareHandler } from 'hono';
import { getCookie } from 'hono/cookie';
import { ClassDesk } from './class-desk.ts';
import { digestOf } from './digests.ts';
import { id } from './fields.ts';
import type { Parts } from './parts.ts';
import { notThere, Refusal } from './refusal.ts';
import type { Who } from './sessions.ts';
import { classes, teaches } from './tables.ts';

/** What middlewares leave for the routes. */
export interface LabEnv {
  Variables: {
    who: Who;
    /** On routes for instructors of one class: that class and nothing else. */
    desk: ClassDesk;
  };
}

/** Who a route is for. `keeper` is an instructor in charge of the lab, `class` one who teaches the class in the path. */
export type Access = 'anyone' | 'instructor' | 'keeper' | 'class' | 'trainee' | 'worker';

/** Name of the cookie; over https one that a page of another host cannot set. */
export function cookieName(secure: boolean): string {
  return secure ? '__Host-lab' : 'lab';
}

export function isSecure(c: Context, { settings }: Parts): boolean {
  return settings.https || (settings.behindProxy && c.req.header('x-forwarded-proto') === 'https');
}

/** Says who a request comes from; what changes something must carry the word that only the lab's own page knows. */
export function identify(parts: Parts): MiddlewareHandler<LabEnv> {
  return async (c, next) => {
    const who = await whoIs(c, parts);
    const changes = c.req.method !== 'GET' && c.req.method !== 'HEAD';
    if (changes && 'csrf' in who && !sameText(c.req.header('x-csrf') ?? '', who.csrf)) {
      throw new Refusal(403, 'x-csrf', 'This request did not come from the lab’s own page. Load the page again.');
    }
    c.set('who', who);
    await next();
  };
}

async function whoIs(c: Context, parts: Parts): Promise<Who> {
  const bearer = /^Bearer (.+)$/.exec(c.req.header('authorization') ?? '')?.[1];
  if (bearer !== undefined) {
    const { workerToken } = parts.settings;
    return workerToken !== null && sameText(bearer, workerToken) ? { role: 'worker' } : { role: 'nobody' };
  }
  const token = getCookie(c, cookieName(isSecure(c, parts)));
  return token === undefined ? { role: 'nobody' } : parts.sessions.who(token);
}

function sameText(a: string, b: string): boolean {
  return timingSafeEqual(Buffer.from(digestOf(a)), Buffer.from(digestOf(b)));
}

/**
 * The lock on a route's door, run before anything of the request is read. Spread into the route: `x-access` makes the document say for
 * whom each route is, and the tests try every route as everybody else.
 */
export function only(access: Access, parts: Parts) {
  const middleware: MiddlewareHandler<LabEnv>[] = [
    async (c, next) => {
      await admit(access, c, parts);
      await next();
    },
  ];
  return { middleware, 'x-access': access };
}

async function admit(access: Access, c: Context<LabEnv>, parts: Parts): Promise<void> {
  if (access === 'anyone') return;
  const who = c.var.who;
  if (who.role === 'nobody') throw new Refusal(401, '', 'Log in first.');
  const role = access === 'class' || access === 'keeper' ? 'instructor' : access;
  if (who.role !== role) throw new Refusal(403, '', `This is for ${ROLES[role]}.`);
  if (access === 'keeper' && !(who.role === 'instructor' && who.keeper))
    throw new Refusal(403, '', 'This is for whoever is in charge of the lab.');
  if (access !== 'class' || who.role !== 'instructor') return;
  const classId = c.req.param('classId') ?? '';
  // Asked before the route checks its parameters: a text that is no id cannot even be asked for.
  if (!id.safeParse(classId).success) throw notThere('classId');
  const [row] = await parts.store.db
    .select({ class: classes })
    .from(teaches)
    .innerJoin(classes, eq(classes.id, teaches.classId))
    .where(and(eq(teaches.classId, classId), eq(teaches.instructorId, who.id)));
  if (row === undefined) throw notThere('classId');
  c.set('desk', new ClassDesk(parts.store.db, row.class, parts.versions, who.id));
}

const ROLES = { instructor: 'instructors', trainee: 'trainees', worker: 'scoring workers' } as const;

import { randomUUID } from 'node:crypto';
import { createRoute, type OpenAPIHono, z } from '@hono/zod-openapi';
import { and, count, eq } from 'drizzle-orm';
import type { Context } from 'hono';
import { deleteCookie, getCookie, setCookie } from 'hono/cookie';
import { cookieName, isSecure, type LabEnv, only } from '../access.ts';
import { note } from '../audit.ts';
import { answers, done, jsonBody, line, newPassword, personName } from '../fields.ts';
import type { GuessLimit } from '../limits.ts';
import { nameKey } from '../names.ts';
import type { Parts } from '../parts.ts';
import { hashSecret, isSecret } from '../passwords.ts';
import { Refusal } from '../refusal.ts';
import { SESSION_S } from '../sessions.ts';
import type { Db } from '../store.ts';
import { classes, instructors, trainees } from '../tables.ts';

const me = z
  .object({
    role: z.enum(['nobody', 'instructor', 'trainee']),
    name: z.string().nullable(),
    /** Of the person; what waits in a shared browser to be sent is told apart by it. */
    id: z.string().nullable(),
    /** Name of a trainee's class. */
    class: z.string().nullable(),
    /** To be sent back as `x-csrf` with everything that changes something. */
    csrf: z.string().nullable(),
    /** An instructor in charge of the lab. */
    keeper: z.boolean(),
    /** No instructor yet: the first is made with the code printed where the lab was started. */
    setup: z.boolean(),
  })
  .openapi('Me');

/** Begins a session and puts its token where no script can read it. */
async function enter(parts: Parts, c: Context, who: { instructorId: string } | { traineeId: string }): Promise<string> {
  const { token, csrf } = await parts.sessions.begin(who);
  const secure = isSecure(c, parts);
  setCookie(c, cookieName(secure), token, {
    httpOnly: true,
    sameSite: 'Strict',
    secure,
    path: '/',
    maxAge: SESSION_S,
  });
  return csrf;
}

const noInstructor = async (db: Db): Promise<boolean> => {
  const [row] = await db.select({ n: count() }).from(instructors);
  return row?.n === 0;
};

/** Who is there: the first instructor, who is in charge of the lab; logging in, joining by code, leaving. */
export function accountRoutes(app: OpenAPIHono<LabEnv>, parts: Parts, guesses: GuessLimit): void {
  whoAsks(app, parts);
  firstInstructor(app, parts, guesses);
  logIn(app, parts, guesses);
  joinClass(app, parts, guesses);
  leave(app, parts);
}

function whoAsks(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  app.openapi(
    createRoute({ method: 'get', path: '/api/me', ...only('anyone', parts), responses: answers(me, 'Who is asking') }),
    async (c) => {
      const { who } = c.var;
      if (who.role === 'instructor' || who.role === 'trainee') {
        const { role, name, id, csrf } = who;
        const keeper = who.role === 'instructor' && who.keeper;
        return c.json(
          { role, name, id, class: who.role === 'trainee' ? who.className : null, csrf, keeper, setup: false },
          200,
        );
      }
      return c.json(
        {
          role: 'nobody' as const,
          name: null,
          id: null,
          class: null,
          csrf: null,
          keeper: false,
          setup: await noInstructor(parts.store.db),
        },
        200,
      );
    },
  );
}

function firstInstructor(app: OpenAPIHono<LabEnv>, parts: Parts, guesses: GuessLimit): void {
  const { db } = parts.store;
  app.openapi(
    createRoute({
      method: 'post',
      path: '/api/setup',
      ...only('anyone', parts),
      request: jsonBody(z.strictObject({ code: line(40), name: personName, password: newPassword })),
      responses: answers(me, 'The first instructor, logged in'),
    }),
    async (c) => {
      const { code, name, password: secret } = c.req.valid('json');
      await guesses.before(c, 'setup');
      if (code !== parts.settings.setupCode) {
        await guesses.wrong(c, 'setup');
        throw new Refusal(403, 'code', 'This is not the code printed where the lab was started.');
      }
      const hash = await hashSecret(secret, 'password');
      const id = randomUUID();
      await db.transaction(async (tx) => {
        const [row] = await tx.select({ n: count() }).from(instructors);
        if (row?.n !== 0) throw new Refusal(409, 'name', 'There is an instructor already, who can add others.');
        await tx.insert(instructors).values({ id, name, password: hash, keeper: true, made: new Date() });
        await note(tx, c.var.who, { did: 'first instructor made', detail: { instructor: id } });
      });
      const csrf = await enter(parts, c, { instructorId: id });
      return c.json({ role: 'instructor' as const, name, id, class: null, csrf, keeper: true, setup: false }, 200);
    },
  );
}

function logIn(app: OpenAPIHono<LabEnv>, parts: Parts, guesses: GuessLimit): void {
  const { db } = parts.store;
  app.openapi(
    createRoute({
      method: 'post',
      path: '/api/login',
      ...only('anyone', parts),
      request: jsonBody(z.strictObject({ name: personName, password: z.string().min(1).max(200) })),
      responses: answers(me, 'An instructor, logged in'),
    }),
    async (c) => {
      const { name, password: secret } = c.req.valid('json');
      await guesses.before(c, name);
      const [row] = await db.select().from(instructors).where(eq(instructors.name, name));
      if (!(await isSecret(secret, row?.password ?? null, 'password')) || row === undefined) {
        await guesses.wrong(c, name);
        await note(db, c.var.who, { did: 'login refused' });
        throw new Refusal(401, 'password', 'Name and password do not belong together.');
      }
      const csrf = await enter(parts, c, { instructorId: row.id });
      const { id, keeper } = row;
      await note(db, { role: 'instructor', id, name, keeper, csrf: '' }, { did: 'logged in' });
      return c.json({ role: 'instructor' as const, name: row.name, id, class: null, csrf, keeper, setup: false }, 200);
    },
  );
}

function joinClass(app: OpenAPIHono<LabEnv>, parts: Parts, guesses: GuessLimit): void {
  const { db } = parts.store;
  app.openapi(
    createRoute({
      method: 'post',
      path: '/api/join',
      ...only('anyone', parts),
      request: jsonBody(
        z.strictObject({
          code: line(20),
          name: personName,
          /** Only where the class asks for one. */
          pin: z
            .string()
            .regex(/^\d{6}$/, 'is not six digits')
            .optional(),
        }),
      ),
      responses: answers(me, 'A trainee, in the class'),
    }),
    async (c) => {
      const { code, name, pin } = c.req.valid('json');
      await guesses.before(c, null);
      const [row] = await db
        .select({ class: classes, trainee: trainees })
        .from(classes)
        .innerJoin(trainees, eq(trainees.classId, classes.id))
        .where(and(eq(classes.code, code.toUpperCase()), eq(trainees.nameKey, nameKey(name))));
      // One answer for a wrong code and a wrong name: neither can be tried out by itself.
      if (row === undefined) {
        await guesses.wrong(c, null);
        throw new Refusal(
          401,
          'code',
          'No class of this code has this name on its roster. Ask your instructor how it is spelt.',
        );
      }
      await guesses.before(c, row.trainee.id);
      if (row.class.pins && (pin === undefined || !(await isSecret(pin, row.trainee.pin, 'pin')))) {
        await guesses.wrong(c, row.trainee.id);
        throw new Refusal(401, 'pin', 'Marks count in this class: join with the six digits your instructor gave you.');
      }
      const csrf = await enter(parts, c, { traineeId: row.trainee.id });
      const { id, name: asOnRoster } = row.trainee;
      return c.json(
        { role: 'trainee' as const, name: asOnRoster, id, class: row.class.name, csrf, keeper: false, setup: false },
        200,
      );
    },
  );
}

function leave(app: OpenAPIHono<LabEnv>, parts: Parts): void {
  app.openapi(
    createRoute({
      method: 'post',
      path: '/api/leave',
      ...only('anyone', parts),
      responses: answers(done, 'The session is over'),
    }),
    async (c) => {
      const name = cookieName(isSecure(c, parts));
      const token = getCookie(c, name);
      if (token !== undefined) await parts.sessions.end(token);
      deleteCookie(c, name, { path: '/', secure: isSecure(c, parts) });
      return c.json({ done: true as const }, 200);
    },
  );
}

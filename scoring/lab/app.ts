import { getConnInfo } from '@hono/node-server/conninfo';
import { OpenAPIHono } from '@hono/zod-openapi';
import type { Context } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { csrf } from 'hono/csrf';
import { HTTPException } from 'hono/http-exception';
import { secureHeaders } from 'hono/secure-headers';
import type { ContentfulStatusCode } from 'hono/utils/http-status';
import { InputError } from '../index.ts';
import { MOST_BYTES } from '../node/index.ts';
import { identify, type LabEnv } from './access.ts';
import { guessLimit, requestLimit } from './limits.ts';
import type { Parts } from './parts.ts';
import { isPassing } from './passing.ts';
import { type FieldProblem, Refusal } from './refusal.ts';
import { accountRoutes } from './routes/account.ts';
import { assignmentRoutes } from './routes/assignments.ts';
import { attemptRoutes } from './routes/attempts.ts';
import { classRoutes } from './routes/classes.ts';
import { exerciseRoutes } from './routes/exercises.ts';
import { instructorRoutes } from './routes/instructors.ts';
import { liveRoutes } from './routes/live.ts';
import { markRoutes } from './routes/marks.ts';
import { outRoutes } from './routes/out.ts';
import { personRoutes } from './routes/person.ts';
import { rosterRoutes } from './routes/roster.ts';
import { serviceRoutes } from './routes/service.ts';
import { traineeRoutes } from './routes/trainee.ts';

/** Longest body of anything but an upload, bytes. */
const MOST_JSON = 1_500_000;

/** The lab as a function from request to answer; opens no port. */
export function labApp(parts: Parts): OpenAPIHono<LabEnv> {
  const app = new OpenAPIHono<LabEnv>({
    defaultHook: (result, c) => {
      if (result.success) return undefined;
      return problems(
        c,
        400,
        result.error.issues.map((issue) => ({
          field:
            [...issue.path.map(String), ...('keys' in issue ? [(issue.keys as string[]).join(', ')] : [])].join('.') ||
            'body',
          message: issue.message,
        })),
      );
    },
  });
  const addressOf = (c: Context): string => remoteAddress(c, parts.settings.behindProxy);

  app.onError((error, c) => answerTo(error, c, parts));
  app.notFound((c) => problems(c, 404, [{ field: '', message: 'There is nothing here.' }]));
  app.use(watched(parts));
  app.use(
    secureHeaders({
      contentSecurityPolicy: {
        defaultSrc: ["'none'"],
        scriptSrc: ["'self'", "'wasm-unsafe-eval'"],
        styleSrc: ["'self'"],
        imgSrc: ["'self'", 'data:', 'blob:'],
        fontSrc: ["'self'"],
        connectSrc: ["'self'"],
        workerSrc: ["'self'"],
        formAction: ["'self'"],
        baseUri: ["'none'"],
        frameAncestors: ["'none'"],
      },
      strictTransportSecurity: parts.settings.https ? 'max-age=15552000' : false,
      // Only over https: over plain http a browser ignores it with a warning.
      crossOriginOpenerPolicy: parts.settings.https,
      xFrameOptions: 'DENY',
      referrerPolicy: 'same-origin',
    }),
  );
  app.use('/api/*', async (c, next) => {
    c.header('Cache-Control', 'no-store');
    await next();
  });
  app.use('/api/*', csrf({ origin: (origin, c) => hostOf(origin) === c.req.header('host') }));
  const uploads = bodyLimit({ maxSize: MOST_BYTES, onError: () => tooLarge(MOST_BYTES) });
  const others = bodyLimit({ maxSize: MOST_JSON, onError: () => tooLarge(MOST_JSON) });
  app.use('/api/*', (c, next) => (c.req.path.startsWith('/api/my/') ? uploads : others)(c, next));
  app.use('/api/*', identify(parts), requestLimit(addressOf, parts.settings.requestsAMinute));

  serviceRoutes(app, parts);
  const guesses = guessLimit(addressOf);
  accountRoutes(app, parts, guesses);
  instructorRoutes(app, parts, guesses);
  exerciseRoutes(app, parts);
  classRoutes(app, parts);
  rosterRoutes(app, parts);
  assignmentRoutes(app, parts);
  attemptRoutes(app, parts);
  traineeRoutes(app, parts);
  markRoutes(app, parts);
  liveRoutes(app, parts);
  outRoutes(app, parts);
  personRoutes(app, parts);
  app.doc31('/api/openapi.json', {
    openapi: '3.1.0',
    info: {
      title: 'Toehold school lab',
      version: '1',
      description:
        '`x-access` says for whom a route is; `keeper` is an instructor in charge of the lab, `class` one who teaches the class in the path.',
    },
  });
  return app;
}

function watched({ log, metrics }: Parts) {
  return async (c: Context, next: () => Promise<void>): Promise<void> => {
    const began = performance.now();
    await next();
    const took_ms = performance.now() - began;
    const route = c.req.routePath;
    const { status } = c.res;
    metrics.requests.observe({ method: c.req.method, route, status: String(status) }, took_ms / 1000);
    // The route and not the path: ids and names stay out of the log.
    log.info({ method: c.req.method, route, status, took_ms: Math.round(took_ms) }, 'answered');
  };
}

/** Whatever goes wrong becomes an answer; a request never ends the lab. */
function answerTo(error: Error, c: Context, { log }: Parts): Response {
  if (error instanceof Refusal) return problems(c, error.status, error.problems, error.message);
  if (error instanceof InputError) {
    const fields = error.problems.map((p) => ({
      field: p.path || 'body',
      message: `found ${p.found}, allowed: ${p.allowed}`,
    }));
    return problems(c, 400, fields);
  }
  if (error instanceof HTTPException) {
    return problems(c, error.status, [{ field: error.status === 403 ? 'origin' : 'body', message: error.message }]);
  }
  log.error(error, 'a request went wrong');
  const passing = isPassing(error);
  return problems(c, passing ? 503 : 500, [
    {
      field: '',
      message: passing
        ? 'The database or the disk does not answer. Nothing is lost; try again.'
        : 'Something went wrong in the lab. It is in its log.',
    },
  ]);
}

function problems(c: Context, status: ContentfulStatusCode, fields: readonly FieldProblem[], error?: string): Response {
  const said = fields.map(({ field, message }) => (field === '' ? message : `${field}: ${message}`));
  return c.json({ error: error ?? said.join('\n'), problems: fields }, status);
}

function tooLarge(most: number): never {
  throw new Refusal(413, 'body', `It is larger than ${most} bytes.`);
}

function hostOf(origin: string): string | null {
  return URL.canParse(origin) ? new URL(origin).host : null;
}

/** Without a server in between, as in the tests, everybody is at one address. */
function remoteAddress(c: Context, behindProxy: boolean): string {
  const forwarded = behindProxy ? c.req.header('x-forwarded-for')?.split(',').at(-1)?.trim() : undefined;
  if (forwarded !== undefined) return forwarded;
  const bindings = c.env as { incoming?: unknown } | undefined;
  return bindings?.incoming === undefined ? '' : (getConnInfo(c).remote.address ?? '');
}

import type { Context, MiddlewareHandler } from 'hono';
import { RateLimiterMemory, RateLimiterRes } from 'rate-limiter-flexible';
import type { LabEnv } from './access.ts';
import { Refusal } from './refusal.ts';

/** Wrong guesses of one secret from one address, per quarter of an hour. A class behind one address shares only guesses at one name. */
const GUESSES = { points: 10, duration: 900 };
/** Wrong guesses from one address at whatever, per quarter of an hour: a class of sixteen mistypes less. */
const GUESSES_AT_ALL = { points: 200, duration: 900 };
/** All the nobodies of one address together ask this many times as often as one person may: a whole school joins at the bell. */
const STRANGERS = 10;

/** Where a request comes from, as told by the server or by the proxy before it. */
export type AddressOf = (c: Context) => string;

/** Counts wrong guesses. */
export interface GuessLimit {
  /**
   * @param of whose secret; null: a guess at nobody in particular
   * @throws Refusal 429 after too many wrong ones
   */
  before(c: Context, of: string | null): Promise<void>;
  wrong(c: Context, of: string | null): Promise<void>;
}

export function guessLimit(addressOf: AddressOf): GuessLimit {
  const one = new RateLimiterMemory({ keyPrefix: 'one', ...GUESSES });
  const all = new RateLimiterMemory({ keyPrefix: 'all', ...GUESSES_AT_ALL });
  const counted = (c: Context, of: string | null) =>
    [
      [all, addressOf(c), GUESSES_AT_ALL.points],
      ...(of === null ? [] : [[one, `${addressOf(c)} ${of.toLowerCase()}`, GUESSES.points] as const]),
    ] as const;
  return {
    before: async (c, of) => {
      for (const [limit, key, most] of counted(c, of)) {
        const so = await limit.get(key);
        if (so !== null && so.consumedPoints >= most) throw tooMany(c, so);
      }
    },
    wrong: async (c, of) => {
      // Past its points a limiter refuses to count on; that is what `before` looks at.
      for (const [limit, key] of counted(c, of)) await limit.consume(key).catch(() => undefined);
    },
  };
}

/** Keeps one page gone mad from taking the lab from all others. */
export function requestLimit(addressOf: AddressOf, aMinute: number): MiddlewareHandler<LabEnv> {
  const people = new RateLimiterMemory({ keyPrefix: 'people', points: aMinute, duration: 60 });
  const strangers = new RateLimiterMemory({ keyPrefix: 'strangers', points: STRANGERS * aMinute, duration: 60 });
  return async (c, next) => {
    const { who } = c.var;
    // Workers of the school's own fetch as fast as they score.
    if (who.role !== 'worker') {
      try {
        await (who.role === 'nobody' ? strangers.consume(addressOf(c)) : people.consume(who.id));
      } catch (cause) {
        if (cause instanceof RateLimiterRes) throw tooMany(c, cause);
        throw cause;
      }
    }
    await next();
  };
}

function tooMany(c: Context, so: RateLimiterRes): Refusal {
  const seconds = Math.max(1, Math.ceil(so.msBeforeNext / 1000));
  c.header('Retry-After', String(seconds));
  return new Refusal(429, '', `Too many tries. Wait ${seconds} s.`);
}

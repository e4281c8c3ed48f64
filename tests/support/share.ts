/**
 * Where many cases are of one kind, `npm test` takes a share of them, the same each time, and the slow suite takes them all: it sets
 * TEST_SHARE=whole (tests/slow/vitest.config.ts lists the files that ask).
 */

/** Whether this run takes every case. */
export const WHOLE = process.env.TEST_SHARE === 'whole';

/** Every case in the slow suite; in `npm test` so many, evenly spread, the first among them. */
export function share<T>(cases: readonly T[], quick: number): readonly T[] {
  if (WHOLE || quick >= cases.length) return cases;
  return Array.from({ length: quick }, (_, n) => cases[Math.floor((n * cases.length) / quick)]!);
}

/** A number of random runs: all of them in the slow suite. */
export const runs = (whole: number, quick: number): number => (WHOLE ? whole : quick);

/** Ten thousand schedules of faults over the lab; see tests/lab/simulation.test.ts, which shows on planted mistakes that it finds them. */
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { schedules } from '../lab/simulation/schedules.ts';
import { Simulation } from '../lab/simulation/simulation.ts';
import { KINDS } from '../lab/simulation/world.ts';

const RUNS = 2500;

let simulation: Simulation;
/** What struck where, over all seeds. */
const struck = new Set<string>();
beforeAll(async () => {
  simulation = await Simulation.open();
});
afterAll(() => simulation.close());

describe('the lab under ten thousand schedules of faults', () => {
  it.each([1, 2, 3, 4])(
    `loses nothing it acknowledged, scores nothing twice, and is the same again from its files: ${RUNS} of seed %d`,
    async (seed) => {
      const here = new Set<string>();
      await fc.assert(
        fc.asyncProperty(schedules, async ([s, uploads, faults]) => {
          const run = await simulation.run(s, uploads, faults);
          for (const fault of run.struck) here.add(fault.replace(/ at await \d+/, ''));
          if (run.wrong.length > 0) throw new Error([...run.wrong, ...run.struck].join('\n'));
        }),
        { seed, numRuns: RUNS },
      );
      // Faults of every kind struck at every sort of await, or the schedules say little.
      expect(here.size).toBeGreaterThan(150);
      for (const fault of here) struck.add(fault);
    },
  );

  it('meets every kind of fault at disk, database and queue alike', () => {
    for (const kind of KINDS)
      for (const part of ['disk', 'query', 'queue', 'commit'])
        expect(
          [...struck].some((fault) => fault.startsWith(`${kind}, ${part}`)),
          `${kind} at ${part}`,
        ).toBe(true);
  });
});

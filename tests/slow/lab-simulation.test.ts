/** Ten thousand schedules of faults over the lab; see tests/lab/simulation.test.ts, which shows on planted mistakes that it finds them. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { schedules } from '../lab/simulation/schedules.ts';
import { Simulation } from '../lab/simulation/simulation.ts';

const RUNS = 2500;

describe('the lab under ten thousand schedules of faults', () => {
  it.each([1, 2, 3, 4])(
    `loses nothing it acknowledged, scores nothing twice, and is the same again from its files: ${RUNS} of seed %d`,
    async (seed) => {
      const simulation = await Simulation.open();
      const struck = new Set<string>();
      try {
        await fc.assert(
          fc.asyncProperty(schedules, async ([s, uploads, faults]) => {
            const run = await simulation.run(s, uploads, faults);
            for (const fault of run.struck) struck.add(fault.replace(/ at await \d+/, ''));
            if (run.wrong.length > 0) throw new Error([...run.wrong, ...run.struck].join('\n'));
          }),
          { seed, numRuns: RUNS },
        );
      } finally {
        await simulation.close();
      }
      // Faults of every kind struck at every sort of await, or the schedules say little.
      expect(struck.size).toBeGreaterThan(150);
    },
  );
});

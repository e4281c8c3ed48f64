import fc, { type Scheduler } from 'fast-check';
import type { Upload } from './simulation.ts';
import { type Fault, KINDS } from './world.ts';

/** A schedule: who goes first at every await, what is handed in, and what goes wrong where. */
export const schedules: fc.Arbitrary<[Scheduler, Upload[], Fault[]]> = fc.tuple(
  fc.scheduler(),
  fc.array(fc.record({ trainee: fc.constantFrom(0, 1), attempt: fc.constantFrom(0, 1, 2) }) as fc.Arbitrary<Upload>, {
    minLength: 1,
    maxLength: 3,
  }),
  fc.array(
    fc.record({
      at: fc.nat(160),
      kind: fc.constantFrom(...KINDS),
      chance: fc.double({ min: 0, max: 1, noNaN: true }),
    }),
    { minLength: 1, maxLength: 4 },
  ),
);

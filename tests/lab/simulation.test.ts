/**
 * Faults at every await over upload, file, acknowledgement, queue, score and row: a few schedules here, ten thousand in the slow suite. What a schedule finds is
 * tried again with its seed and path (`fc.assert` prints both).
 */
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { VERSIONS } from '../../scoring/lab/judge.ts';
import { Scores } from '../../scoring/lab/scores.ts';
import { scores } from '../../scoring/lab/tables.ts';
import { schedules } from './simulation/schedules.ts';
import { type Planted, Simulation } from './simulation/simulation.ts';

const SEED = 20261126;

let simulation: Simulation;
beforeAll(async () => {
  simulation = await Simulation.open();
}, 60_000);
afterAll(() => simulation.close());

const wrongOf = async (runs: number, planted: Planted): Promise<string | null> => {
  const found = await fc.check(
    fc.asyncProperty(schedules, async ([s, uploads, faults]) => {
      const { wrong } = await simulation.run(s, uploads, faults, planted);
      if (wrong.length > 0) throw new Error(wrong.join('; '));
    }),
    { seed: SEED, numRuns: runs, endOnFailure: true },
  );
  return found.failed ? String((found.errorInstance as Error).message) : null;
};

describe('the lab under faults', () => {
  it('loses nothing it acknowledged, scores nothing twice, and is the same again from its files', async () => {
    expect(await wrongOf(12, {})).toBeNull();
  }, 120_000);

  // Each of these is a mistake that somebody could make; a simulation that finds none of them would be none.
  it('would be found out if it acknowledged before it kept', async () => {
    expect(await wrongOf(100, { hasty: true })).toMatch(/lost: acknowledged|rows of/);
  }, 120_000);

  it('would be found out if it did not wait for the names of files', async () => {
    const planted: Planted = { disk: (disk) => ({ ...disk, syncFolder: async () => undefined }) };
    expect(await wrongOf(100, planted)).toMatch(/rebuilt as|lost: acknowledged|rows of/);
  }, 120_000);

  it('would be found out if a second score took the place of the first', async () => {
    class Overwriting extends Scores {
      constructor(private readonly own: ConstructorParameters<typeof Scores>[0]) {
        super(own, VERSIONS);
      }
      override has = async (): Promise<boolean> => false;
      override async write({ attempt, judge, outcome, took_ms, worker }: Parameters<Scores['write']>[0]) {
        const row = {
          attempt,
          judge,
          ...VERSIONS,
          ...outcome,
          scored: new Date(),
          took_ms: Math.round(took_ms),
          worker,
        };
        const target = [scores.attempt, scores.engine, scores.scoring, scores.judge];
        await this.own.insert(scores).values(row).onConflictDoUpdate({ target, set: row });
        return true;
      }
    }
    expect(await wrongOf(200, { scores: (db) => new Overwriting(db) })).toMatch(/scored twice/);
  }, 120_000);
});

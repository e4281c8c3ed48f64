/** Statements to a record store under a thousand schedules of faults: at every await of writing, asking and marking; and planted mistakes that the schedules find. */
import { randomUUID } from 'node:crypto';
import { eq } from 'drizzle-orm';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { VERSIONS } from '../../scoring/lab/judge.ts';
import { Statements } from '../../scoring/lab/statements.ts';
import type { Db } from '../../scoring/lab/store.ts';
import { statements } from '../../scoring/lab/tables.ts';
import { OutboxSimulation, type PlantedStatements } from '../lab/simulation/outbox.ts';
import { schedules } from '../lab/simulation/schedules.ts';

const STORE = { url: 'http://store.invalid', login: null, home: 'http://lab.invalid' };
const RUNS = 1000;

let simulation: OutboxSimulation;
beforeAll(async () => {
  simulation = await OutboxSimulation.open();
});
afterAll(() => simulation.close());

/** What the schedules find wrong with a planted mistake. */
async function foundBy(planted: PlantedStatements): Promise<string> {
  const failed = await tried(300, planted).catch((error: Error) => error);
  if (!(failed instanceof Error)) return 'nothing';
  return failed.cause instanceof Error ? failed.cause.message : failed.message;
}

/** Everything that struck; throws at the first schedule under which something did not hold. */
async function tried(runs: number, planted?: PlantedStatements): Promise<Set<string>> {
  const struck = new Set<string>();
  await fc.assert(
    fc.asyncProperty(schedules, async ([s, , faults]) => {
      // What is on trial here passes fewer awaits than the whole lab: the faults are brought nearer.
      const run = await simulation.run(
        s,
        faults.map((f) => ({ ...f, at: f.at % 60 })),
        planted,
      );
      for (const fault of run.struck) struck.add(fault.replace(/ at await \d+/, ''));
      if (run.wrong.length > 0) throw new Error([...run.wrong, ...run.struck].join('\n'));
    }),
    // A planted mistake need not be shrunk to be seen.
    { seed: 1, numRuns: runs, endOnFailure: planted !== undefined },
  );
  return struck;
}

describe('the outbox under schedules of faults', () => {
  it(`loses no statement and sends none under a second id: ${RUNS} of seed 1`, async () => {
    const struck = await tried(RUNS);
    for (const kind of [
      'dies before',
      'dies after',
      'fails before',
      'fails after',
      'power cut, database of before lost',
    ])
      for (const part of ['store', 'query', 'commit'])
        expect(
          [...struck].some((fault) => fault.startsWith(`${kind}, ${part}`)),
          `${kind} at ${part}`,
        ).toBe(true);
  });

  it('finds a statement that is given a new id whenever it is written', async () => {
    class Renaming extends Statements {
      override async write(tx: Db, job: Parameters<Statements['write']>[1]): Promise<void> {
        await super.write(tx, job);
        for (const { id, statement } of await tx.select().from(statements)) {
          const named = randomUUID();
          await tx
            .update(statements)
            .set({ id: named, statement: statement.replace(id, named) })
            .where(eq(statements.id, id));
        }
      }
    }
    expect(await foundBy((db, ask) => new Renaming(db, STORE, VERSIONS, ask))).toMatch(/sent twice/);
  });

  it('finds a statement that is marked before the store has it', async () => {
    class Hasty extends Statements {
      constructor(
        private readonly own: Db,
        private readonly asked: typeof fetch,
      ) {
        super(own, STORE, VERSIONS, asked);
      }
      override async send(id: string): Promise<void> {
        const [row] = await this.own.select().from(statements).where(eq(statements.id, id));
        await this.own.update(statements).set({ sent: new Date() }).where(eq(statements.id, id));
        await this.asked(`${STORE.url}/statements?statementId=${id}`, { method: 'PUT', body: row!.statement });
      }
    }
    expect(await foundBy((db, ask) => new Hasty(db, ask))).toMatch(/lost/);
  });
});

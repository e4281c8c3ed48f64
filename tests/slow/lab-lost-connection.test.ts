import { sql } from 'drizzle-orm';
import { afterAll, describe, expect, it } from 'vitest';
import { openStore } from '../../scoring/lab/store.ts';
import { newServerDatabase, stopServer } from '../lab/support/stores.ts';

afterAll(stopServer);

describe('a connection lost between two statements of a transaction', () => {
  it('costs that transaction, not the program, and the next one has a new connection', async () => {
    const uncaught: unknown[] = [];
    const catchIt = (cause: unknown): void => void uncaught.push(cause);
    process.on('uncaughtException', catchIt);
    const url = await newServerDatabase();
    const store = await openStore({ url });
    const other = await openStore({ url });
    try {
      const broken = store.db.transaction(async (tx) => {
        const { rows } = (await tx.execute(sql`select pg_backend_pid() as pid`)) as unknown as {
          rows: { pid: number }[];
        };
        await other.executeSql('select pg_terminate_backend($1)', [rows[0]!.pid]);
        // Nothing is asked while the word of it arrives.
        await new Promise((resolve) => setTimeout(resolve, 300));
        await tx.execute(sql`select 1`);
      });
      await expect(broken).rejects.toThrow();
      expect((await store.executeSql('select 1 as one')).rows).toEqual([{ one: 1 }]);
      expect(uncaught).toEqual([]);
    } finally {
      process.off('uncaughtException', catchIt);
      await store.close();
      await other.close();
    }
  }, 120_000);
});

import { PGlite, type QueryOptions, type Results, type Transaction, types } from '@electric-sql/pglite';
import { drizzle } from 'drizzle-orm/pglite';
import type { Db } from '../../../scoring/lab/store.ts';

const asItCame = (value: string): string => value;

/**
 * An embedded database that hands times over as text, as drizzle wants them. Told so with every question, as drizzle does it, the database copies its hundreds
 * of other parsers each time: a third of what a question takes.
 */
export function openEngine(): Promise<PGlite> {
  return PGlite.create({ parsers: { [types.TIMESTAMPTZ]: asItCame, [types.TIMESTAMP]: asItCame } });
}

/**
 * Asks the database in one message in place of the five that a statement with parameters takes: the parameters stand in the text as literals, which
 * PostgreSQL gives their types by the same rules. A schedule asks some sixty times; three quarters of its time were those messages.
 */
export async function askOnce<T>(
  of: Pick<PGlite | Transaction, 'exec'>,
  text: string,
  params: readonly unknown[] = [],
  options?: QueryOptions,
): Promise<Results<T>> {
  const { rowMode } = options ?? {};
  const [result] = await of.exec(withLiterals({ sql: text, params }), rowMode && { rowMode });
  if (result === undefined) throw new Error(`no answer to ${text}`);
  return result as Results<T>;
}

/** A statement with its parameters in their places. */
export function withLiterals({ sql, params }: { sql: string; params: readonly unknown[] }): string {
  return sql.replace(/\$(\d+)/g, (_, n: string) => literal(params[Number(n) - 1]));
}

/** Tables through drizzle over a database asked that way. */
export function quickly(engine: PGlite): Db {
  return drizzle(
    new Proxy(engine, {
      get: (of, key) => {
        if (key === 'query') {
          return (text: string, params?: unknown[], options?: QueryOptions) => askOnce(of, text, params, options);
        }
        const value: unknown = Reflect.get(of, key);
        return typeof value === 'function' ? value.bind(of) : value;
      },
    }),
  );
}

function literal(value: unknown): string {
  if (value === null || value === undefined) return 'null';
  if (value instanceof Date) return literal(value.toISOString());
  if (typeof value === 'object') return literal(JSON.stringify(value));
  // Strings are standard-conforming: a backslash is a backslash.
  return `'${String(value).replaceAll("'", "''")}'`;
}

import { readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';

/** Rows of a CSV file by its head. Ends the program with a clear line when the file is no such table. */
export function readRows(path: string | undefined, need: readonly string[]): Record<string, string>[] {
  if (path === undefined) return fail('name a CSV file');
  let rows: Record<string, string>[];
  try {
    rows = parse(readFileSync(path, 'utf8'), { columns: true, skip_empty_lines: true, trim: true, bom: true });
  } catch (cause) {
    return fail(`${path}: ${cause instanceof Error ? cause.message : 'cannot be read'}`);
  }
  const head = Object.keys(rows[0] ?? {});
  const missing = need.filter((name) => !head.includes(name));
  if (missing.length > 0)
    return fail(`${path}: found columns ${head.join(', ') || 'none'}, missing: ${missing.join(', ')}`);
  return rows;
}

export function numberIn(row: Record<string, string>, column: string, line: number): number {
  const text = row[column] ?? '';
  const value = Number(text);
  if (text === '' || !Number.isFinite(value))
    return fail(`row ${line}, ${column}: found ${JSON.stringify(text)}, allowed: a number`);
  return value;
}

export function fail(text: string): never {
  process.stderr.write(`${text}\n`);
  process.exit(2);
}

import { AttemptFiles } from '../../../scoring/lab/attempt-files.ts';
import { realDisk } from '../../../scoring/lab/disk.ts';
import { openStore } from '../../../scoring/lab/store.ts';
import { scores, submissions } from '../../../scoring/lab/tables.ts';
import type { Place } from './ground.ts';

/** What a stopped lab holds, counted from its tables and its files. */
export interface Count {
  acknowledged: number;
  /** Acknowledged without a whole file, a receipt or a row. */
  lost: number;
  /** Attempts with more than one row, and scores of one attempt beyond the first. */
  double: number;
  scored: number;
  /** Scores that are a sentence why there can be none. */
  faults: number;
  /** Welding and judging one attempt on its thread, mean, ms. */
  thread_ms: number;
  /** When each score was written, ms, in order. */
  written_ms: number[];
}

export async function countIn(place: Place, acknowledged: readonly string[]): Promise<Count> {
  const store = await openStore(place.databaseUrl === null ? { folder: place.folder } : { url: place.databaseUrl });
  try {
    const rows = await store.db.select({ id: submissions.id, attempt: submissions.attempt }).from(submissions);
    const scored = await store.db
      .select({ attempt: scores.attempt, scored: scores.scored, took_ms: scores.took_ms, fault: scores.fault })
      .from(scores);
    const files = new AttemptFiles(place.folder, realDisk);
    const receipts = new Set(await files.receiptIds());
    const there = new Set<string>();
    for (const { id, attempt } of rows)
      if (receipts.has(id) && (await files.readAttempt(attempt)) !== null) there.add(attempt);
    const beyondFirst = (names: readonly string[]): number => names.length - new Set(names).size;
    return {
      acknowledged: acknowledged.length,
      lost: acknowledged.filter((digest) => !there.has(digest)).length,
      double: beyondFirst(rows.map((r) => r.attempt)) + beyondFirst(scored.map((s) => s.attempt)),
      scored: scored.length,
      faults: scored.filter((s) => s.fault !== null).length,
      thread_ms: scored.reduce((sum, s) => sum + s.took_ms, 0) / Math.max(1, scored.length),
      written_ms: scored.map((s) => s.scored.getTime()).sort((a, b) => a - b),
    };
  } finally {
    await store.close();
  }
}

import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { Recording } from '../../engine/index.ts';
import type { Result } from '../../scoring/index.ts';

/** An attempt as this browser keeps it. */
export interface StoredAttempt {
  id: string;
  /** ms since the epoch. */
  made_ms: number;
  title: string;
  recording: Recording;
  result: Result | null;
}

export type AttemptEntry = Pick<StoredAttempt, 'id' | 'made_ms' | 'title'> & { verdict: Result['verdict'] | null };

interface Schema extends DBSchema {
  attempts: { key: string; value: StoredAttempt; indexes: { made: number } };
}

let opening: Promise<IDBPDatabase<Schema>> | null = null;

function open(): Promise<IDBPDatabase<Schema>> {
  opening ??= openDB<Schema>('toehold', 1, {
    upgrade(db) {
      db.createObjectStore('attempts', { keyPath: 'id' }).createIndex('made', 'made_ms');
    },
  });
  return opening;
}

/** Keeps an attempt. Rejects if the browser will not store (private window, disk full): the caller says so, the attempt stays open. */
export async function keepAttempt(attempt: StoredAttempt): Promise<void> {
  await (await open()).put('attempts', attempt);
}

export async function loadAttempt(id: string): Promise<StoredAttempt | undefined> {
  return (await open()).get('attempts', id);
}

export async function removeAttempt(id: string): Promise<void> {
  await (await open()).delete('attempts', id);
}

/** Newest first. */
export async function listAttempts(): Promise<AttemptEntry[]> {
  const all = await (await open()).getAllFromIndex('attempts', 'made');
  return all
    .reverse()
    .map(({ id, made_ms, title, result }) => ({ id, made_ms, title, verdict: result?.verdict ?? null }));
}

import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { Recording } from '../../engine/index.ts';
import type { Coupon, Result } from '../../scoring/index.ts';

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

/** A real coupon kept beside an attempt. */
export interface StoredCoupon {
  id: string;
  /** Id of the attempt it belongs to. */
  attempt: string;
  made_ms: number;
  coupon: Coupon;
  /** The photograph; null when only its marks were opened. */
  picture: Blob | null;
}

interface Schema extends DBSchema {
  attempts: { key: string; value: StoredAttempt; indexes: { made: number } };
  coupons: { key: string; value: StoredCoupon; indexes: { attempt: string } };
}

let opening: Promise<IDBPDatabase<Schema>> | null = null;

function open(): Promise<IDBPDatabase<Schema>> {
  opening ??= openDB<Schema>('toehold', 2, {
    upgrade(db, from) {
      if (from < 1) db.createObjectStore('attempts', { keyPath: 'id' }).createIndex('made', 'made_ms');
      if (from < 2) db.createObjectStore('coupons', { keyPath: 'id' }).createIndex('attempt', 'attempt');
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

/** Takes an attempt off the shelf, with the coupons kept beside it. */
export async function removeAttempt(id: string): Promise<void> {
  const change = (await open()).transaction(['attempts', 'coupons'], 'readwrite');
  const coupons = change.objectStore('coupons');
  for (const key of await coupons.index('attempt').getAllKeys(id)) await coupons.delete(key);
  await change.objectStore('attempts').delete(id);
  await change.done;
}

/** Rejects like keepAttempt. */
export async function keepCoupon(coupon: StoredCoupon): Promise<void> {
  await (await open()).put('coupons', coupon);
}

/** Coupons of one attempt, newest first. */
export async function listCoupons(attempt: string): Promise<StoredCoupon[]> {
  const found = await (await open()).getAllFromIndex('coupons', 'attempt', attempt);
  return found.sort((a, b) => b.made_ms - a.made_ms);
}

/** Newest first. */
export async function listAttempts(): Promise<AttemptEntry[]> {
  const all = await (await open()).getAllFromIndex('attempts', 'made');
  return all
    .reverse()
    .map(({ id, made_ms, title, result }) => ({ id, made_ms, title, verdict: result?.verdict ?? null }));
}

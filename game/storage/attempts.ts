import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { Recording } from '../../engine/index.ts';
import { type Coupon, type Exercise, type Result, recordingVersions, upToCurrent } from '../../scoring/index.ts';
import { isTestExercise, type PastAttempt } from '../session/level.ts';

/** Ids of attempts opened from a file begin with this. */
export const FILE_ID = 'file-';

/** An attempt as this browser keeps it. */
export interface StoredAttempt {
  id: string;
  /** ms since the epoch. */
  made_ms: number;
  title: string;
  recording: Recording;
  result: Result | null;
}

/** What the shelf shows of an attempt, and what the level of its exercise is told from. */
export interface AttemptEntry extends PastAttempt {
  id: string;
  title: string;
  helped: 'robot' | 'test' | 'with guides' | 'without guides';
}

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
    // Another tab has a newer program and waits to bring the store up: let go of it, and open it anew when it is next needed.
    blocking(_current, _next, event) {
      (event.target as IDBDatabase).close();
      opening = null;
    },
  });
  return opening;
}

/** Keeps an attempt. Rejects if the browser will not store (private window, disk full): the caller says so, the attempt stays open. */
export async function keepAttempt(attempt: StoredAttempt): Promise<void> {
  await (await open()).put('attempts', attempt);
}

export async function loadAttempt(id: string): Promise<StoredAttempt | undefined> {
  const kept = await (await open()).get('attempts', id);
  return kept && { ...kept, recording: current(kept.recording, kept.title) };
}

/** A kept recording as it would be written today: older ones lie in the store as they were put there. */
function current(recording: Recording, title: string): Recording {
  return upToCurrent({ ...recording }, title, recordingVersions) as unknown as Recording;
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
  return all.reverse().map(entryOf);
}

function entryOf({ id, made_ms, title, recording: kept, result }: StoredAttempt): AttemptEntry {
  const recording = current(kept, title);
  const exercise = recording.exercise as Exercise | null;
  const hand = recording.origin.kind === 'hand';
  return {
    id,
    made_ms,
    title,
    exercise: exercise?.name ?? null,
    verdict: result?.verdict ?? null,
    own: hand && !id.startsWith(FILE_ID),
    helped: helpOf(recording, exercise),
  };
}

/** What help an attempt was welded with, from what is written in it. */
export function helpOf(
  { origin, aids }: Pick<Recording, 'origin' | 'aids'>,
  exercise: Pick<Exercise, 'aids'> | null,
): AttemptEntry['helped'] {
  if (origin.kind === 'robot') return 'robot';
  if (aids.pacer || aids.beat || aids.toeMarks) return 'with guides';
  return exercise && isTestExercise(exercise) ? 'test' : 'without guides';
}

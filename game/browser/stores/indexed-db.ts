import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB, type StoreNames } from 'idb';
import type { AttemptStore, CouponStore, PracticeStore, ScoreStore } from '../../core/ports.ts';
import { idOf, type PracticeRecord } from '../../core/practice/record.ts';
import type { AttemptEntry, StoredAttempt, StoredCoupon } from '../../core/session/shelf.ts';
import type { DraftChunk, DraftHead } from '../../core/session/unfinished.ts';

interface Schema extends DBSchema {
  attempts: { key: string; value: StoredAttempt; indexes: { made: number } };
  coupons: { key: string; value: StoredCoupon; indexes: { attempt: string } };
  entries: { key: string; value: AttemptEntry };
  drafts: { key: string; value: DraftHead };
  chunks: { key: [string, number]; value: DraftChunk };
  scores: { key: string; value: object };
  practice: { key: string; value: PracticeRecord };
}

/** Most scores of classes kept. */
const MOST_SCORES = 2000;

type Name = StoreNames<Schema>;
type Writing = IDBPTransaction<Schema, Name[], 'readwrite'>;

/**
 * Attempts, coupons and scores of a class in the browser's IndexedDB. Opens it when first needed, and again should the browser close it. The
 * stores share one connection and one way of writing, and so one function.
 */
export function indexedDbStores(name = 'toehold'): {
  attempts: AttemptStore;
  coupons: CouponStore;
  practice: PracticeStore;
  scores: ScoreStore;
} {
  let opening: Promise<IDBPDatabase<Schema>> | null = null;

  const open = (): Promise<IDBPDatabase<Schema>> => {
    if (opening) return opening;
    const asked = openDB<Schema>(name, 5, {
      upgrade(db, from) {
        if (from < 1) db.createObjectStore('attempts', { keyPath: 'id' }).createIndex('made', 'made_ms');
        if (from < 2) db.createObjectStore('coupons', { keyPath: 'id' }).createIndex('attempt', 'attempt');
        // Entries of attempts kept before there were any are made when the list is first read.
        if (from < 3) {
          db.createObjectStore('entries', { keyPath: 'id' });
          db.createObjectStore('drafts', { keyPath: 'id' });
          db.createObjectStore('chunks', { keyPath: ['id', 'from'] });
        }
        if (from < 4) db.createObjectStore('scores');
        if (from < 5) db.createObjectStore('practice', { keyPath: 'id' });
      },
      // Another tab has a newer program and waits to bring the store up: let go of it, and open it anew when it is next needed.
      blocking(_current, _next, event) {
        (event.target as IDBDatabase).close();
        opening = null;
      },
      // The browser closed the store by itself: its files were cleared.
      terminated() {
        opening = null;
      },
    });
    opening = asked;
    asked.catch(() => {
      if (opening === asked) opening = null;
    });
    return asked;
  };

  /** Makes a change that is on the disk when this returns: all of it or nothing. */
  const write = async (names: Name[], change: (tx: Writing) => Promise<unknown>): Promise<void> => {
    const tx = (await open()).transaction(names, 'readwrite', { durability: 'strict' });
    const [made, done] = await Promise.allSettled([change(tx).catch((error) => giveUp(tx, error)), tx.done]);
    // A full disk shows in the transaction; what was asked of it only says that it was given up.
    if (done.status === 'rejected' && tx.error) throw tx.error;
    if (made.status === 'rejected') throw made.reason;
    if (done.status === 'rejected') throw done.reason;
  };

  const dropDraft = async (tx: Writing, id: string): Promise<void> => {
    await tx.objectStore('drafts').delete(id);
    await tx.objectStore('chunks').delete(chunksOf(id));
  };

  const attempts: AttemptStore = {
    put: (attempt, entry) =>
      write(['attempts', 'entries', 'drafts', 'chunks'], async (tx) => {
        await tx.objectStore('attempts').put(attempt);
        await tx.objectStore('entries').put(entry);
        await dropDraft(tx, attempt.id);
      }),
    get: async (id) => (await open()).get('attempts', id),
    ids: async () => (await open()).getAllKeys('attempts'),
    entries: async () => (await open()).getAll('entries'),
    putEntry: (entry) => write(['entries'], (tx) => tx.objectStore('entries').put(entry)),
    remove: (id) =>
      write(['attempts', 'entries', 'coupons', 'drafts', 'chunks', 'practice'], async (tx) => {
        const coupons = tx.objectStore('coupons');
        for (const key of await coupons.index('attempt').getAllKeys(id)) await coupons.delete(key);
        await tx.objectStore('attempts').delete(id);
        await tx.objectStore('entries').delete(id);
        for (const kind of ['judgement', 'retention'] as const) await tx.objectStore('practice').delete(idOf(kind, id));
        await dropDraft(tx, id);
      }),
    putChunk: (head, chunk) =>
      write(['drafts', 'chunks'], async (tx) => {
        await tx.objectStore('drafts').put(head);
        if (chunk) await tx.objectStore('chunks').put(chunk);
      }),
    drafts: async () => (await open()).getAll('drafts'),
    draft: async (id) => (await open()).get('drafts', id),
    chunks: async (id) => (await open()).getAll('chunks', chunksOf(id)),
  };

  const coupons: CouponStore = {
    put: (coupon) => write(['coupons'], (tx) => tx.objectStore('coupons').put(coupon)),
    of: async (attempt) => (await open()).getAllFromIndex('coupons', 'attempt', attempt),
  };

  const practice: PracticeStore = {
    put: (record) => write(['practice'], (tx) => tx.objectStore('practice').put(record)),
    all: async () => (await open()).getAll('practice'),
    remove: (id) => write(['practice'], (tx) => tx.objectStore('practice').delete(id)),
  };

  const scores: ScoreStore = {
    get: async (key) => (await open()).get('scores', key),
    put: async (key, score) => {
      const db = await open();
      // Scores can be made again; more than a school year's are let go of together.
      if ((await db.count('scores')) >= MOST_SCORES) await db.clear('scores');
      await db.put('scores', score, key);
    },
    clear: async () => (await open()).clear('scores'),
  };

  return { attempts, coupons, practice, scores };
}

/** A change that failed half way is taken back whole. */
function giveUp(tx: Writing, error: unknown): never {
  try {
    tx.abort();
  } catch {
    // The store has given it up already.
  }
  throw error;
}

/** Chunks of one draft: every key that begins with its id. */
function chunksOf(id: string): IDBKeyRange {
  return IDBKeyRange.bound([id], [id, []]);
}

import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { AttemptStore, CouponStore } from '../../core/ports.ts';
import type { StoredAttempt, StoredCoupon } from '../../core/session/shelf.ts';

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

export const attemptStore: AttemptStore = {
  async put(attempt) {
    await (await open()).put('attempts', attempt);
  },
  async get(id) {
    return (await open()).get('attempts', id);
  },
  async all() {
    return (await (await open()).getAllFromIndex('attempts', 'made')).reverse();
  },
  async remove(id) {
    const change = (await open()).transaction(['attempts', 'coupons'], 'readwrite');
    const coupons = change.objectStore('coupons');
    for (const key of await coupons.index('attempt').getAllKeys(id)) await coupons.delete(key);
    await change.objectStore('attempts').delete(id);
    await change.done;
  },
};

export const couponStore: CouponStore = {
  async put(coupon) {
    await (await open()).put('coupons', coupon);
  },
  async of(attempt) {
    return (await open()).getAllFromIndex('coupons', 'attempt', attempt);
  },
};

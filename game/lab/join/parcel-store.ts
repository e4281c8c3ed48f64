import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { Parcel, ParcelStore } from './outbox.ts';

interface Schema extends DBSchema {
  parcels: { key: string; value: Parcel };
}

/** Parcels in the browser's IndexedDB, beside the attempts themselves. */
export function parcelStore(name = 'toehold-lab'): ParcelStore {
  let opening: Promise<IDBPDatabase<Schema>> | null = null;
  const open = (): Promise<IDBPDatabase<Schema>> => {
    opening ??= openDB<Schema>(name, 1, {
      upgrade: (db) => void db.createObjectStore('parcels', { keyPath: 'key' }),
      terminated: () => {
        opening = null;
      },
    }).catch((error) => {
      opening = null;
      throw error;
    });
    return opening;
  };
  const write = async (change: (db: IDBPDatabase<Schema>) => Promise<unknown>): Promise<void> => {
    await change(await open());
  };
  return {
    put: (parcel) =>
      write(async (db) => {
        // On the disk when this returns, not only on its way there.
        const tx = db.transaction('parcels', 'readwrite', { durability: 'strict' });
        await Promise.all([tx.store.put(parcel), tx.done]);
      }),
    all: async () => (await open()).getAll('parcels'),
    remove: (key) => write((db) => db.delete('parcels', key)),
  };
}

import type { Page } from 'playwright-core';

/** Puts records straight into the page's store, as an earlier visit may have left them. */
export async function putRecords(page: Page, records: Record<string, readonly object[]>): Promise<void> {
  await page.evaluate(
    (all) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('toehold');
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const change = opening.result.transaction(Object.keys(all), 'readwrite');
          for (const [name, rows] of Object.entries(all)) for (const row of rows) change.objectStore(name).put(row);
          change.oncomplete = () => {
            opening.result.close();
            resolve();
          };
          change.onerror = () => reject(change.error);
        };
      }),
    records,
  );
}

/** Records of one kind as they now lie in the page's store. */
export function readRecords(page: Page, name: string): Promise<Record<string, unknown>[]> {
  return page.evaluate(
    (from) =>
      new Promise<Record<string, unknown>[]>((resolve, reject) => {
        const opening = indexedDB.open('toehold');
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const found = opening.result.transaction(from).objectStore(from).getAll();
          found.onsuccess = () => {
            opening.result.close();
            resolve(found.result);
          };
          found.onerror = () => reject(found.error);
        };
      }),
    name,
  );
}

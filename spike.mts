import { createRequire } from 'node:module';
import { PGlite } from '@electric-sql/pglite';
import { drizzle } from 'drizzle-orm/pglite';
import PgBoss from 'pg-boss';

const fsx = createRequire(import.meta.url)('fs-native-extensions');

import { openSync, rmSync } from 'node:fs';

rmSync('/tmp/lab-spike/db', { recursive: true, force: true });
let t = performance.now();
const lap = (w: string) => {
  console.log(w, Math.round(performance.now() - t));
  t = performance.now();
};
const fd = openSync('/tmp/lab-spike/lock', 'a+');
console.log('lock', fsx.tryLock(fd));
const fd2 = openSync('/tmp/lab-spike/lock', 'a+');
console.log('second in same process', fsx.tryLock(fd2), Object.keys(fsx));
const pg = await PGlite.create('/tmp/lab-spike/db');
lap('create');
const db = drizzle(pg);
const boss = new PgBoss({
  db: {
    executeSql: async (text: string, values?: any[]) => {
      if (values?.length) {
        const r = await pg.query(text, values);
        return { rows: r.rows, rowCount: r.affectedRows ?? r.rows.length };
      }
      const rs = await pg.exec(text);
      const last = rs.filter((r) => r.fields.length).at(-1);
      return { rows: last?.rows ?? [], rowCount: last?.affectedRows ?? 0 };
    },
  } as any,
});
boss.on('error', (e) => console.log('err', e));
await boss.start();
lap('boss');
await boss.createQueue('q', { name: 'q', policy: 'standard', retryLimit: 2, expireInSeconds: 60 } as any);
console.log(
  await boss.send('q', { a: 1 }, { singletonKey: 'x' }),
  await boss.send('q', { a: 1 }, { singletonKey: 'x' }),
);
lap('send');
const jobs = await boss.fetch('q', { batchSize: 10 });
console.log(jobs.length);
lap('fetch');
for (const j of jobs) await boss.complete('q', j.id);
lap('complete');
try {
  const second = await PGlite.create('/tmp/lab-spike/db');
  console.log('second PGlite opened!', (await second.query('select 1')).rows);
} catch (e) {
  console.log('second refused', e);
}
await boss.stop({ graceful: true });
lap('stop');
await pg.close();
lap('close');
const again = await PGlite.create('/tmp/lab-spike/db');
lap('reopen');
await again.close();

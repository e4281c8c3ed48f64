import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { backUp, restore } from '../../scoring/lab/backup.ts';
import { openLab } from '../../scoring/lab/lab.ts';
import { openStore, type Store, type StorePlace } from '../../scoring/lab/store.ts';
import { shortAttempt } from './support/attempts.ts';
import { firstInstructor, joined, newClass, newLab, PASSWORD, Person } from './support/school.ts';
import { KIND, newServerDatabase, stopServer } from './support/stores.ts';

const TABLES = ['instructors', 'trainees', 'assignments', 'submissions', 'scores', 'overrides', 'audit'];
const folders: string[] = [];
afterAll(async () => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
  await stopServer();
});

function folder(): string {
  const made = mkdtempSync(join(tmpdir(), 'toehold-lab-'));
  folders.push(made);
  return made;
}

async function rowsOf(store: Store): Promise<unknown[]> {
  const all: unknown[] = [];
  for (const table of TABLES)
    all.push((await store.executeSql(`select row_to_json(t)::text as row from ${table} t order by 1`)).rows);
  return all;
}

describe(`a backup of a lab on the ${KIND} store`, () => {
  it('is another lab when restored, on either database: same rows, same people, same attempts, new numbers go on', async () => {
    const t = await newLab();
    const maud = await firstInstructor(t.lab);
    const tern = await newClass(maud, 'Tern Dock', ['Ines Calder']);
    const ines = await joined(t.lab, tern.code, 'Ines Calder');
    await ines.hand(tern.assignmentId, shortAttempt(1));
    const { trainees } = await maud.must('GET', `/api/classes/${tern.classId}/roster`);
    const mark = `/api/classes/${tern.classId}/assignments/${tern.assignmentId}/marks/${trainees[0]!.id}`;
    await maud.must('POST', mark, { mark: 70, reason: 'Seen at the booth, with "quotes" and ümlauts' });
    await expect
      .poll(async () => (await ines.must('GET', '/api/my/attempts')).attempts[0]!.state, { timeout: 60_000 })
      .toBe('scored');
    const kept = folder();
    const before = await rowsOf(t.lab.parts.store);
    expect(await backUp(t.lab.parts.store, t.folder, kept)).toMatchObject({ attempts: 1 });
    await t.end();
    await expect(backUp(t.lab.parts.store, t.folder, kept)).rejects.toThrow('not empty');

    for (const target of KIND === 'server' ? (['embedded', 'server'] as const) : (['embedded'] as const)) {
      const data = folder();
      const databaseUrl = target === 'server' ? await newServerDatabase() : null;
      const place: StorePlace = databaseUrl === null ? { folder: data } : { url: databaseUrl };
      const store = await openStore(place);
      await restore(store, data, kept);
      expect(await rowsOf(store)).toEqual(before);
      await expect(restore(store, data, kept)).rejects.toThrow('a lab that is in use');
      await store.close();

      const lab = await openLab({ ...t.options, folder: data, databaseUrl, threads: 0 });
      const again = new Person(lab);
      await again.must('POST', '/api/login', { name: 'Maud Tarrant', password: PASSWORD });
      const { attempts } = await again.must('GET', `/api/classes/${tern.classId}/attempts`);
      const file = await again.ask('GET', `/api/classes/${tern.classId}/attempts/${attempts[0]!.id}/file`);
      expect(file.text).toBe(JSON.stringify(shortAttempt(1)));
      await again.must('POST', mark, { mark: 75, reason: 'Once more' });
      const { marks } = await again.must('GET', mark.slice(0, mark.lastIndexOf('/')));
      expect(marks[0]!.history).toHaveLength(2);
      await lab.stop();
    }

    // Damaged on the way: said by the file's name before anything is written.
    const audit = join(kept, 'audit.jsonl');
    writeFileSync(audit, readFileSync(audit, 'utf8').replace('class made', 'class mode'));
    const empty = folder();
    const store = await openStore({ folder: empty });
    await expect(restore(store, empty, kept)).rejects.toThrow('audit.jsonl');
    expect((await rowsOf(store)).flat()).toEqual([]);
    rmSync(join(kept, 'backup.json'));
    await expect(restore(store, empty, kept)).rejects.toThrow('backup.json');
    await store.close();
  }, 200_000);
});

import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { openStore, type StorePlace } from '../../scoring/lab/store.ts';
import { KIND, newServerDatabase, stopServer } from './support/stores.ts';

const MIGRATIONS = fileURLToPath(new URL('../../scoring/lab/migrations', import.meta.url));
const all = JSON.parse(readFileSync(join(MIGRATIONS, 'meta', '_journal.json'), 'utf8')).entries as { tag: string }[];
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

/** The migrations as they were when there were so many. */
function earlier(many: number): string {
  const made = folder();
  cpSync(MIGRATIONS, made, { recursive: true });
  const path = join(made, 'meta', '_journal.json');
  const journal = JSON.parse(readFileSync(path, 'utf8'));
  writeFileSync(path, JSON.stringify({ ...journal, entries: journal.entries.slice(0, many) }));
  return made;
}

describe(`tables of an earlier lab on the ${KIND} store`, () => {
  it.each(all.slice(0, -1).map(({ tag }, i) => [tag, i + 1] as const))(
    'as of %s are brought up with their rows',
    async (_tag, many) => {
      const place: StorePlace = KIND === 'server' ? { url: await newServerDatabase() } : { folder: folder() };
      const old = await openStore(place, earlier(many));
      await old.executeSql(
        `insert into scores (attempt, engine, scoring, judge, result, hand, scored, took_ms, worker) values ('a', '0.3.0', '0.3.0', 'j', '{}', 'h', now(), 1, 'w')`,
      );
      // From the third on a submission carries its judge and a trainee a plate.
      const [judge, plates] = many < 3 ? ['', ['', '']] : [`, 'j'`, [', 2', ', 1']];
      await old.executeSql(
        `insert into classes (id, name, code, marks, pins, made) values ('c', 'Tern Dock', 'TERN', '{"rule":"best"}', false, now());
         insert into trainees (id, class_id, name, name_key, made${many < 3 ? '' : ', plate'})
           values ('w', 'c', 'Wren', 'wren', now()${plates[0]}), ('i', 'c', 'Ines', 'ines', now()${plates[1]});
         insert into judges (digest, content) values ('j', '{}');
         insert into assignments (id, class_id, judge, title, opens, made) values ('a', 'c', 'j', 'Tee', now(), now());
         insert into submissions (id, class_id, assignment_id, trainee_id, attempt, bytes, received, number, late${many < 3 ? '' : ', judge'})
           values ('s', 'c', 'a', 'w', 'a', 1, now(), 1, false${judge})`,
      );
      await old.executeSql(
        `insert into instructors (id, name, password, made) values ('m', 'Maud', 'x', '2026-01-01'), ('o', 'Osric', 'x', '2026-01-02')`,
      );
      await old.close();
      const now = await openStore(place);
      const judged = await now.executeSql('select judge, carried from submissions');
      expect(judged.rows).toEqual([{ judge: 'j', carried: null }]);
      // Everybody has a plate of their own, by name among those who came at once.
      const dealt = await now.executeSql('select name, plate from trainees order by plate');
      expect(dealt.rows).toEqual([
        { name: 'Ines', plate: 1 },
        { name: 'Wren', plate: 2 },
      ]);
      // Whoever was first is in charge.
      const keepers = await now.executeSql('select name, keeper from instructors order by name');
      expect(keepers.rows).toEqual([
        { name: 'Maud', keeper: true },
        { name: 'Osric', keeper: false },
      ]);
      const { rows } = await now.executeSql('select attempt, hand, motion from scores');
      expect(rows).toEqual([{ attempt: 'a', hand: 'h', motion: null }]);
      await now.close();
    },
    120_000,
  );
});

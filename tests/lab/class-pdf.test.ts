/** The class sheet that the lab sets is the command line's, byte for byte, of the same attempts. Tern Dock and its people are invented. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { toehold } from '../support/toehold.ts';
import { bytesOf, shortAttempt, shortExercise } from './support/attempts.ts';
import { firstInstructor, HOST, joined, newClass, newLab, type Person, type TestLab } from './support/school.ts';
import { stopServer } from './support/stores.ts';

const PEOPLE = ['Ines Calder', 'שרה לוי'];

describe('the class sheet on paper', () => {
  let t: TestLab;
  let maud: Person;
  let folder: string;
  beforeAll(async () => {
    t = await newLab({ threads: 1 });
    maud = await firstInstructor(t.lab);
    folder = mkdtempSync(join(tmpdir(), 'toehold-lab-paper-'));
  }, 120_000);
  afterAll(async () => {
    await t.end();
    rmSync(folder, { recursive: true, force: true });
    await stopServer();
  });

  it('has the bytes that `toehold sheet --out class.pdf` gives', async () => {
    const tern = await newClass(maud, 'Tern Dock', PEOPLE);
    const handed = new Map<string, Uint8Array>();
    for (const [i, name] of PEOPLE.entries()) {
      const bytes = bytesOf(shortAttempt(i));
      handed.set(name.toLowerCase().replace(' ', '-'), bytes);
      expect((await (await joined(t.lab, tern.code, name)).hand(tern.assignmentId, bytes)).status).toBe(200);
    }
    const rows = async () =>
      (await maud.ask('GET', `/api/classes/${tern.classId}/results.jsonl`)).text
        .split('\n')
        .filter(Boolean)
        .map((line) => JSON.parse(line) as { file: string });
    await expect.poll(async () => (await rows()).length, { timeout: 90_000, interval: 500 }).toBe(PEOPLE.length);
    for (const { file } of await rows()) {
      const [who] = [...handed].find(([name]) => file.includes(name))!;
      writeFileSync(join(folder, file), handed.get(who)!);
    }
    const exercise = join(folder, '..', `${folder.split('/').at(-1)}.exercise.json`);
    writeFileSync(exercise, JSON.stringify(shortExercise()));
    const out = join(folder, 'class.pdf');
    const said = await toehold('sheet', folder, '--exercise', exercise, '--no-journal', '--workers', '1', '--out', out);
    rmSync(exercise);
    expect(said.code).toBe(0);
    const answer = await t.lab.app.request(`http://${HOST}/api/classes/${tern.classId}/class.pdf`, {
      headers: { host: HOST, cookie: maud.cookie },
    });
    expect(answer.status).toBe(200);
    const pdf = Buffer.from(await answer.arrayBuffer());
    expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
    expect(pdf.equals(readFileSync(out))).toBe(true);
  }, 180_000);
});

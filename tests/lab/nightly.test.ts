/** What is too old goes by itself when its hour comes, and by the command when somebody asks. Tern Dock and its people are invented. */
import { rmSync } from 'node:fs';
import { eq } from 'drizzle-orm';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openLab } from '../../scoring/lab/lab.ts';
import { runForget } from '../../scoring/lab/run-forget.ts';
import { readEnvironment } from '../../scoring/lab/settings.ts';
import { submissions, trainees } from '../../scoring/lab/tables.ts';
import { shortAttempt } from './support/attempts.ts';
import { firstInstructor, joined, newClass, newLab, SETTINGS, type TestLab } from './support/school.ts';
import { stopServer } from './support/stores.ts';

const DAY_MS = 86_400_000;
const OLD = new Date(Date.now() - 200 * DAY_MS);

describe('what is too old', () => {
  let t: TestLab;
  beforeAll(async () => {
    t = await newLab({ threads: 0 });
    const maud = await firstInstructor(t.lab);
    const tern = await newClass(maud, 'Tern Dock', ['Ines Calder', 'Wren Hollis']);
    for (const [i, name] of ['Ines Calder', 'Wren Hollis'].entries())
      await (await joined(t.lab, tern.code, name)).hand(tern.assignmentId, shortAttempt(i));
  }, 120_000);
  afterAll(async () => {
    await t.lab.stop();
    rmSync(t.folder, { recursive: true, force: true });
    await stopServer();
  });

  const age = async (name: string): Promise<void> => {
    const { db } = t.lab.parts.store;
    const [who] = await db.select().from(trainees).where(eq(trainees.name, name));
    await db.update(trainees).set({ made: OLD }).where(eq(trainees.id, who!.id));
    await db.update(submissions).set({ received: OLD }).where(eq(submissions.traineeId, who!.id));
  };
  const names = async (): Promise<string[]> =>
    (await t.lab.parts.store.db.select().from(trainees).orderBy(trainees.name)).map((p) => p.name);

  it('goes by the command, which says first what it would take', async () => {
    await age('Wren Hollis');
    await t.lab.stop();
    const said: string[] = [];
    const { databaseUrl } = t.options;
    const env = readEnvironment(databaseUrl === null ? {} : { DATABASE_URL: databaseUrl });
    const forget = (really: boolean) =>
      runForget({ data: t.folder, days: 100, really, env, say: (text) => said.push(text) });
    await forget(false);
    expect(said.pop()).toMatch(/^Would erase 1 trainees .* and 0 attempts of others .*Nothing was changed/);
    await forget(true);
    expect(said.pop()).toMatch(/^Erased: 1 trainees and 1 attempts/);
    await forget(true);
    expect(said.pop()).toMatch(/^Erased: 0 trainees and 0 attempts/);
    t.lab = await openLab(t.options);
    expect(await names()).toEqual(['Ines Calder']);
    expect(await t.lab.parts.files.receiptIds()).toHaveLength(1);
  }, 120_000);

  it('goes by itself when its hour has come', async () => {
    await age('Ines Calder');
    await t.lab.stop();
    // Every minute in place of every night; the lab's own clock and queue.
    t.lab = await openLab({ ...t.options, settings: { ...SETTINGS, keepDays: 100 }, forgetsAt: '* * * * *' });
    await expect.poll(names, { timeout: 270_000, interval: 2000 }).toEqual([]);
    expect(await t.lab.parts.files.receiptIds()).toEqual([]);
  }, 300_000);
});

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pino from 'pino';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { exerciseNamed } from '../../scoring/index.ts';
import { type Lab, openLab } from '../../scoring/lab/lab.ts';
import { type Served, serve } from '../../scoring/lab/serve.ts';
import { PASSWORD, SETTINGS, SETUP_CODE } from '../lab/support/school.ts';
import { launchChromium } from './support/chromium.ts';

const FIRST = 'a kittiwake on the mole';

let browser: Browser;
let folder: string;
let lab: Lab;
let served: Served;
let address: string;
const complaints: string[] = [];

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'toehold-lab-'));
  const log = pino({ level: 'silent' });
  lab = await openLab({
    folder,
    databaseUrl: null,
    threads: 0,
    slowest_s: 120,
    settings: { ...SETTINGS, requestsAMinute: 6000 },
    log,
  });
  served = await serve(lab, { host: '127.0.0.1', port: 0, tls: null });
  address = `http://127.0.0.1:${served.port}/`;
  browser = await launchChromium();
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await served?.close();
  await lab?.stop();
  rmSync(folder, { recursive: true, force: true });
});

async function desk(locale = 'en-GB'): Promise<Page> {
  const page = await (await browser.newContext({ viewport: { width: 1100, height: 800 }, locale })).newPage();
  page.on('pageerror', (error) => complaints.push(error.message));
  await page.goto(`${address}lab/`);
  return page;
}

async function signIn(page: Page, name: string, password: string): Promise<void> {
  await page.getByLabel('Name').fill(name);
  await page.getByLabel(/Password/).fill(password);
  await page.getByRole('button', { name: 'Sign in' }).click();
}

// Instructors and classes are invented.
describe('an instructor in charge of the lab', () => {
  let hob: Page;
  it('keeps an exercise made at the bench, hears what is wrong with a file, and hands one out', async () => {
    hob = await desk();
    await hob.getByLabel('Code').fill(SETUP_CODE);
    await hob.getByLabel('Name').fill('Hob Treen');
    await hob.getByLabel(/Password/).fill(PASSWORD);
    await hob.getByRole('button', { name: 'Begin' }).click();

    const shelf = hob.getByTestId('own-exercises');
    const { limits: _, ...ready } = exerciseNamed('tee-inverted-v')!;
    const file = (name: string, content: unknown): string => {
      const path = join(folder, name);
      writeFileSync(path, typeof content === 'string' ? content : JSON.stringify(content));
      return path;
    };
    const give = async (path: string): Promise<void> => {
      await shelf.getByLabel('Exercise file').setInputFiles(path);
      await shelf.getByRole('button', { name: 'Add' }).click();
    };
    await give(file('cut.json', '{"format":'));
    await hob.getByRole('alert').filter({ hasText: 'cut.json' }).waitFor();
    await give(file('thick.json', { ...ready, joint: { ...ready.joint, plateA_mm: 400 } }));
    await hob.getByRole('alert').filter({ hasText: 'exercise.joint.plateA_mm: found 400' }).waitFor();
    await give(file('ours.json', { ...ready, name: 'our-tee', title: 'Our own tee' }));
    await shelf.getByText('Our own tee').waitFor();
    expect(await hob.getByRole('alert').count()).toBe(0);

    await hob.getByLabel('New class').fill('Gull Yard');
    await hob.getByRole('button', { name: 'Make', exact: true }).click();
    await hob.getByRole('tab', { name: 'Handed out' }).click();
    await hob.getByLabel('Exercise').selectOption({ label: 'Our own tee' });
    await hob.getByRole('button', { name: 'Hand out' }).click();
    await hob.getByTestId('assignments').getByText('Our own tee').waitFor();
    await hob.getByRole('button', { name: 'All classes' }).click();
    await shelf.getByRole('button', { name: 'Take away Our own tee' }).click();
    await shelf.getByText('Our own tee').waitFor({ state: 'detached' });
    // What was handed out stays.
    await hob.getByRole('button', { name: 'Gull Yard' }).click();
    await hob.getByRole('tab', { name: 'Handed out' }).click();
    await hob.getByTestId('assignments').getByText('Our own tee').waitFor();
  }, 60_000);

  it('lets another in, who changes the password, and removes them again without losing their class', async () => {
    await hob.getByRole('button', { name: 'All classes' }).click();
    const staff = hob.getByTestId('instructors');
    await staff.getByLabel('Name of the new instructor').fill('Maud Tarrant');
    await staff.getByLabel(/Password to begin with/).fill(FIRST);
    await staff.getByRole('button', { name: 'Let in' }).click();
    await staff.getByText(/Maud Tarrant can sign in/).waitFor();
    // Nobody takes the charge from the only one who has it, and nobody removes themselves.
    await staff.getByLabel('Hob Treen is in charge').click();
    await hob.getByRole('alert').filter({ hasText: 'Somebody has to be in charge' }).waitFor();
    expect(await staff.getByLabel('Hob Treen is in charge').isChecked()).toBe(true);
    expect(
      await staff.getByRole('row').filter({ hasText: 'Hob Treen' }).getByRole('button', { name: 'Remove' }).count(),
    ).toBe(0);

    const maud = await desk();
    await signIn(maud, 'Maud Tarrant', FIRST);
    await maud.getByRole('heading', { name: 'Classes' }).waitFor();
    expect(await maud.getByTestId('instructors').count()).toBe(0);
    await maud.getByText('Change your password').click();
    const own = maud.getByTestId('own-password');
    await own.getByLabel('Password until now').fill('something quite else');
    await own.getByLabel(/at least 10/).fill(PASSWORD);
    await own.getByRole('button', { name: 'Change' }).click();
    await maud.getByRole('alert').filter({ hasText: 'not the password until now' }).waitFor();
    await own.getByLabel('Password until now').fill(FIRST);
    await own.getByRole('button', { name: 'Change' }).click();
    await maud.getByText('Changed. You are signed out everywhere else.').waitFor();
    await maud.getByLabel('New class').fill('Gannet Hall');
    await maud.getByRole('button', { name: 'Make', exact: true }).click();
    await maud.locator('.classcode').waitFor();

    // A forgotten password: whoever is in charge gives a new one, and every session is over.
    const row = staff.getByRole('row').filter({ hasText: 'Maud Tarrant' });
    await row.getByRole('button', { name: 'New password' }).click();
    await row.getByLabel(/New password for/).fill(FIRST);
    await row.getByRole('button', { name: 'Set' }).click();
    await staff.getByText(/Maud Tarrant has a new password/).waitFor();
    await maud.getByRole('tab', { name: 'Marks' }).click();
    await maud.reload();
    await signIn(maud, 'Maud Tarrant', FIRST);
    await maud.getByRole('button', { name: 'Gannet Hall' }).click();
    // She lets Hob into her class by name.
    await maud.getByRole('tab', { name: 'Roster' }).click();
    const teachers = maud.getByTestId('teachers');
    await teachers.getByLabel(/Let another instructor in/).fill('Nobody Here');
    await teachers.getByRole('button', { name: 'Let in' }).click();
    await maud.getByRole('alert').filter({ hasText: 'no instructor of this name' }).waitFor();
    await maud.context().close();

    await row.getByRole('button', { name: 'Remove' }).click();
    await row.getByLabel(/Removes Maud Tarrant/).fill('Maud Tarrant');
    await row.getByRole('button', { name: 'Remove' }).click();
    await staff.getByText('Maud Tarrant is removed. 1 class came to you.').waitFor();
    await hob.getByRole('button', { name: 'Gannet Hall' }).waitFor();
    expect(await staff.getByRole('row').filter({ hasText: 'Maud Tarrant' }).count()).toBe(0);
    expect(complaints).toEqual([]);
  }, 60_000);

  it('is answered in German on a German page: refusals, wrong files, the trail', async () => {
    const page = await desk('de-DE');
    const refused = (text: RegExp): Promise<void> => page.getByRole('alert').filter({ hasText: text }).waitFor();
    await page.getByLabel('Name').fill('Hob Treen');
    await page.getByLabel(/Passwort/).fill('something quite else');
    await page.getByRole('button', { name: 'Anmelden' }).click();
    await refused(/^Name und Passwort gehören nicht zusammen\.$/);
    await page.getByLabel(/Passwort/).fill(PASSWORD);
    await page.getByRole('button', { name: 'Anmelden' }).click();
    const shelf = page.getByTestId('own-exercises');
    const path = join(folder, 'schnitt.json');
    writeFileSync(path, '{"format":');
    await shelf.locator('input[type="file"]').setInputFiles(path);
    await shelf.getByRole('button', { name: 'Hinzufügen' }).click();
    await refused(/schnitt\.json: gefunden: Text, der kein JSON ist \(die Datei ist abgeschnitten\)/);
    const staff = page.getByTestId('instructors');
    await staff.locator('input[type="checkbox"]').first().click();
    await refused(/^Jemand muss das Labor leiten\.$/);
    await page.getByRole('button', { name: 'Gull Yard' }).click();
    await page.getByRole('tab').last().click();
    const trail = page.getByTestId('trail');
    await trail.getByText('Klasse angelegt').waitFor();
    expect(await trail.textContent()).not.toMatch(/class made|handed out/);
    await page.context().close();
    expect(complaints).toEqual([]);
  }, 60_000);
});

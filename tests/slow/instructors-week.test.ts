/**
 * An instructor's week in one Chromium: Monday an exercise is made, proved and printed, Tuesday sixteen trainees weld it on two laptops and a stick,
 * Wednesday the class sheet and the three to see, Friday paper and coupons. Nothing needs a terminal: what is typed here into Node stands for hands at
 * the booth (attempts are welded by a hand that wanders) and for a person's eyes. Needs the built game and a Chromium. Everybody is invented.
 */
import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { handOfAmount, weaveHand } from '../../engine/index.ts';
// @ts-expect-error: a script without types, since it runs before anything is installed
import { serveFolder } from '../../game/tools/serve.mjs';
import {
  attemptFileName,
  dealPiece,
  type Exercise,
  exerciseDigest,
  readExercise,
  readProfile,
} from '../../scoring/index.ts';
import { classPaper, classPdf, classSheet, scoreFolder, sheetCsv } from '../../scoring/node/index.ts';
import { BenchDriver, keep } from '../browser/support/bench.ts';
import { chromiumPath, PLAINLY } from '../browser/support/chromium.ts';
import { MOUSE, record } from '../scoring/welds.ts';

const GAME = fileURLToPath(new URL('../../dist/game/', import.meta.url));
const PEOPLE = [
  ...['Ines Calder', 'Tomás Okafor', 'Wren Hollis', 'Pia Lindqvist', 'Dov Arkady', 'Sunniva Roe', '17', 'שרה לוי'],
  ...[
    'Mara Voss',
    'Ilse Brandt',
    'Owen Tarr',
    '=HYPERLINK("x")',
    'Łucja Wrona',
    'Bo 🙂 Lind',
    "Sean O'Dea",
    'Ann-Kathrin von der Heide',
  ],
];
const ROSTER = `name,plate\n${PEOPLE.map((name, i) => `"${name.replaceAll('"', '""')}",${i + 1}`).join('\n')}`;
const WORD = 'Heron';

let browser: Browser;
let server: { close(): void; address(): unknown };
let address: string;
const stick = mkdtempSync(join(tmpdir(), 'toehold-stick-'));
let exercise: Exercise;
let exercisePath: string;
let files: string[];

beforeAll(async () => {
  if (!existsSync(`${GAME}index.html`)) throw new Error('dist/game is missing: run `npm run build` first.');
  server = await serveFolder(GAME, 0);
  address = `http://localhost:${(server.address() as AddressInfo).port}/`;
  browser = await chromium.launch({ executablePath: chromiumPath(), args: PLAINLY });
}, 60_000);
afterAll(async () => {
  await browser?.close();
  server?.close();
});

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });

/** A laptop: a browser of its own. @param work what is done on it; `clicks` says how many buttons were pressed so far */
async function laptop(
  work: (page: Page, click: (name: string) => Promise<void>, clicks: () => number) => Promise<void>,
): Promise<void> {
  const bench = await BenchDriver.open(browser, address, { plain: true });
  let pressed = 0;
  try {
    await bench.page.evaluate(() => {
      window.print = () => undefined;
    });
    await work(
      bench.page,
      async (name) => {
        pressed += 1;
        await button(bench.page, name).first().click();
      },
      () => pressed,
    );
    expect(bench.complaints).toEqual([]);
  } finally {
    await bench.close();
  }
}

async function savedBy(page: Page, name: string): Promise<string> {
  const download = page.waitForEvent('download');
  await button(page, name).click();
  return keep(await download);
}

/** Pages that the sheet just printed has; the sheet is then put away. */
async function pagesPrinted(page: Page): Promise<number> {
  const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
  await page.evaluate(() => dispatchEvent(new Event('afterprint')));
  return pdf.match(/\/Type\s*\/Page\b/g)?.length ?? 0;
}

/** A hand at the booth: it wanders, with what a mouse does not measure held. */
function weldedBy(person: number): string {
  const own = dealPiece(exercise, WORD, person + 1);
  const { tipToWork_mm, workAngle_deg, travelAngle_deg } = own.hold;
  const poses = [...weaveHand(own.demonstration, handOfAmount(person + 1, 0.2 + 0.04 * person))];
  const recording = record(
    {
      simulation: { joint: own.joint, process: own.process, cell_mm: 0.75 },
      origin: { kind: 'hand' },
      device: MOUSE,
      aids: { pacer: false, beat: false, toeMarks: false, plainView: true, handRig: null },
      exercise: own,
      trainee: { name: PEOPLE[person]!, bench: `b${1 + (person % 2)}` },
    },
    poses.map((p) => ({ ...p, tipToWork_mm, workAngle_deg, travelAngle_deg })),
  );
  return JSON.stringify(recording);
}

describe('the week', () => {
  it('Monday: an exercise is made with limits of the school’s own, proved, mapped, saved and printed', async () => {
    await laptop(async (page, click) => {
      await click('Desk');
      await click('Exercise');
      const field = (name: string) => page.getByLabel(name, { exact: true });
      await field('title').fill('Bracket, short');
      await field('name, as in file names').first().fill('bracket-short');
      await field('joint long, mm').fill('30');
      await field('settings').selectOption({ label: 'free within ranges' });
      await field('attempts that count (empty: all)').fill('3');
      await field('gap varies, mm').fill('0');
      await field('gap varies, mm, to').fill('0.6');
      await field('cuts move up or down by at most, mm').fill('2');
      await click('Change them into our own');
      await page.locator('#limits-name').fill('tern-dock-week-1');
      await page.locator('#limits-source').fill('');
      await page.getByText(/where these limits were taken from/).waitFor();
      await page.locator('#limits-source').fill('Tern Dock, made up');
      await page.getByText('An exercise.', { exact: true }).waitFor();

      await click('Prove it with robot hands');
      await page.getByTestId('proof-summary').waitFor({ timeout: 400_000 });
      await click('Draw the map of settings');
      await page.locator('.range-drawing').waitFor({ timeout: 400_000 });

      exercisePath = await savedBy(page, 'Save as a file');
      exercise = readExercise(readFileSync(exercisePath, 'utf8'), exercisePath);
      expect(exercise).toMatchObject({ name: 'bracket-short', attempts: 3, settings: 'within ranges' });
      expect(exercise.limits).toMatchObject({ name: 'tern-dock-week-1', source: 'Tern Dock, made up' });
      const profile = await savedBy(page, 'Save these limits as a file');
      expect(readProfile(readFileSync(profile, 'utf8'))).toEqual(exercise.limits);
      for (const sheet of ['its sheet', 'macro sheet', 'booth card']) {
        await click(sheet);
        expect(await pagesPrinted(page), sheet).toBe(1);
      }
    });
  }, 900_000);

  it('Tuesday: two laptops deal everybody the piece that word and plate number say, and the files go on a stick', async () => {
    for (const seats of [
      [0, 8],
      [1, 13],
    ]) {
      await laptop(async (page, click) => {
        await page.getByTestId('open-file').setInputFiles(exercisePath);
        await page.getByText(/Everybody has a piece of their own/).waitFor();
        await click('Desk');
        await click('Trainees');
        await page.getByRole('textbox', { name: 'Roster' }).fill(ROSTER);
        await click('Use this roster');
        await page.getByText('16 names on the roster.').waitFor();
        const word = page.locator('.word input');
        await word.fill(WORD.toUpperCase());
        await word.blur();
        for (const seat of seats) {
          if (!(await page.getByRole('dialog').isVisible())) await page.getByTestId('who').click();
          await page.locator('.roster button').nth(seat).click();
          const own = dealPiece(exercise, WORD, seat + 1);
          await page.getByText(`Your piece: plate ${seat + 1}`).waitFor();
          const gap = page.getByRole('spinbutton', { name: 'gap', exact: true });
          expect(Number(await gap.getAttribute('aria-valuenow'))).toBeCloseTo(own.joint.gap_mm, 6);
          expect(await page.getByTestId('who').textContent()).toContain(PEOPLE[seat]);
          expect(await page.getByTestId('level-short').textContent()).toContain('attempt 1 of 3');
        }
      });
    }
    files = PEOPLE.map((trainee, i) => {
      const name = attemptFileName({
        date: '2026-03-10',
        bench: `b${1 + (i % 2)}`,
        trainee,
        exercise: exercise.name,
        attempt: 1,
      });
      const path = join(stick, name);
      writeFileSync(path, weldedBy(i));
      return path;
    });
    expect(new Set(files).size).toBe(16);
  }, 400_000);

  it('Wednesday: three clicks from the stick to the three to see; nothing is lost, and a borrowed piece is named', async () => {
    const borrowed = join(
      stick,
      attemptFileName({ date: '2026-03-11', bench: 'b2', trainee: 'Wren Hollis', exercise: exercise.name, attempt: 2 }),
    );
    writeFileSync(borrowed, readFileSync(files[0]!, 'utf8'));
    const half = join(stick, '2026-03-11_b1_dov-arkady_bracket-short_02.json');
    writeFileSync(half, readFileSync(files[4]!, 'utf8').slice(0, 4000));
    const handedOut = join(stick, basename(exercisePath));
    writeFileSync(handedOut, readFileSync(exercisePath));
    const names = [...files, borrowed, half, handedOut];
    await laptop(async (page, click, clicks) => {
      await click('Desk');
      await click('Trainees');
      await page.getByRole('textbox', { name: 'Roster' }).fill(ROSTER);
      await click('Use this roster');
      await page.locator('.word input').fill(WORD);
      await page.locator('.word input').blur();
      await click('Class');
      await click('Back to the bench');
      const before = clicks();
      await click('Desk');
      const picker = page.waitForEvent('filechooser');
      await click('Choose files');
      await (await picker).setFiles(names);
      await page.getByTestId('first-three').waitFor({ timeout: 300_000 });
      expect(clicks() - before).toBeLessThanOrEqual(3);
      await page.getByText(/^Print$/).waitFor({ timeout: 300_000 });
      await page.getByText(/^Welding the three/).waitFor({ state: 'detached', timeout: 120_000 });
      await page
        .getByText(/the same motion as/)
        .first()
        .waitFor();
      await page.getByText(/welded on plate 1, which is Ines Calder/).waitFor();
      await page.getByText(/the file is cut off/).waitFor();
      const scores = await scoreFolder(stick, { journal: null });
      const known = { word: WORD, roster: PEOPLE.map((name, i) => ({ name, bench: null, plate: i + 1 })) };
      const sheet = classSheet(scores, new Set([exerciseDigest(exercise)!]), known);
      expect(sheet.bad).toHaveLength(1);
      expect(readFileSync(await savedBy(page, 'class table, CSV'), 'utf8')).toBe(sheetCsv(sheet));
      const pdf = readFileSync(await savedBy(page, 'class sheet, PDF'));
      expect(pdf.equals(Buffer.from(await classPdf(classPaper(sheet, stick))))).toBe(true);
      await click('Put this class away');
      const again = page.waitForEvent('filechooser');
      await click('Choose files');
      await (await again).setFiles(names);
      await page.getByText(/17 files were scored here before/).waitFor({ timeout: 20_000 });
    });
  }, 900_000);

  it('Friday: an attempt on one sheet, two halves sawn, readers compared', async () => {
    await laptop(async (page, click) => {
      await page.getByTestId('open-file').setInputFiles(files[2]!);
      await page.getByTestId('verdict').waitFor({ timeout: 120_000 });
      await expect.poll(() => button(page, 'Print').first().isEnabled(), { timeout: 60_000 }).toBe(true);
      await click('Print');
      expect(await pagesPrinted(page)).toBe(1);
      await click('Desk');
      await click('Coupons');
      await click('Saw through both halves');
      await page.getByText(/a height with 8 mm to read on either side/).waitFor({ timeout: 60_000 });
      await page.getByLabel('Table of readings').fill('macro,reader,convexity\n1,IC,1\n1,WH,1.1\n2,IC,2\n2,WH,2.2');
      await click('See how they agree');
      await page.getByTestId('agreement').getByText('convexity').waitFor();
      await click('For instructors');
      await page.getByText('What it has not').waitFor();
    });
  }, 300_000);
});

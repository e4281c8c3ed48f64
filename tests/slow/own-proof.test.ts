/**
 * Three exercises that nobody has tried before, typed at the desk and proved there; the file opened as a trainee opens it; robot hands that weld
 * it; their files on the class sheet. What the proof said of each hand is what its file then gets. Needs the built game and a Chromium.
 */
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { handOfAmount, noFaults, recordPoses, weaveHand } from '../../engine/index.ts';
// @ts-expect-error: a script without types, since it runs before anything is installed
import { serveFolder } from '../../game/tools/serve.mjs';
import { attemptFileName, type Exercise, type ProofHand, proofHands, readExercise } from '../../scoring/index.ts';
import { faultHand } from '../../scoring/trials/exercise-proof.ts';
import { BenchDriver, keep } from '../browser/support/bench.ts';
import { chromiumPath, PLAINLY } from '../browser/support/chromium.ts';
import { MOUSE, record } from '../scoring/welds.ts';

const GAME = fileURLToPath(new URL('../../dist/game/', import.meta.url));

/** What is typed at the desk: the exercise begun from, then fields by label. */
const OWN: {
  from: string;
  fields: Record<string, string>;
  choices?: Record<string, string>;
  bands?: Record<string, [string, string]>;
}[] = [
  {
    from: 'Lap on 5 mm plate',
    fields: {
      title: 'Doubler on 4 mm',
      'name, as in file names': 'doubler-4',
      'right or back plate, mm': '4',
      'left or edge plate, mm': '4',
      'joint long, mm': '36',
      'size, mm': '3',
      'wire feed speed, m/min': '4.3',
      volts: '19.5',
      'travel, mm/s': '2.8',
    },
  },
  {
    from: 'Thin tee, 4 mm plate',
    fields: {
      title: 'Web foot, 8 on 6',
      'name, as in file names': 'web-foot',
      'right or back plate, mm': '8',
      'left or edge plate, mm': '6',
      'joint long, mm': '40',
      'size, mm': '5',
      'wire feed speed, m/min': '5.8',
      volts: '20.5',
      'width, mm': '5.5',
      'travel, mm/s': '2.6',
      'reach ahead, mm': '2.5',
    },
  },
  {
    from: 'Crescent on a 6 mm tee',
    fields: {
      title: 'Walkway, free to set',
      'name, as in file names': 'walkway-free',
      'joint long, mm': '36',
      'size, mm': '4.5',
      'attempts that count (empty: all)': '3',
    },
    choices: { settings: 'free within ranges' },
    bands: { 'feed, m/min': ['5.4', '6.2'], 'volts, V': ['19.5', '21.5'] },
  },
];

let browser: Browser;
let server: { close(): void; address(): unknown };
let address: string;
const stick = mkdtempSync(join(tmpdir(), 'toehold-own-'));

beforeAll(async () => {
  if (!existsSync(`${GAME}index.html`)) throw new Error('dist/game is missing: run `npm run build` first.');
  server = await serveFolder(GAME, 0);
  address = `http://localhost:${(server.address() as AddressInfo).port}/`;
  browser = await chromium.launch({ executablePath: chromiumPath(), args: PLAINLY });
}, 60_000);
afterAll(async () => {
  await browser?.close();
  server?.close();
  rmSync(stick, { recursive: true, force: true });
});

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });

async function onPage<T>(work: (page: Page, bench: BenchDriver) => Promise<T>): Promise<T> {
  const bench = await BenchDriver.open(browser, address, { plain: true });
  try {
    const out = await work(bench.page, bench);
    expect(bench.complaints).toEqual([]);
    return out;
  } finally {
    await bench.close();
  }
}

interface Proved {
  exercise: Exercise;
  path: string;
  /** Verdict of each hand, in the order of `proofHands`, as the table on the page has it. */
  verdicts: string[];
  summary: string;
}

function proved({ from, fields, choices = {}, bands = {} }: (typeof OWN)[number]): Promise<Proved> {
  return onPage(async (page) => {
    await button(page, 'Desk').click();
    await button(page, 'Exercise').click();
    const form = page.locator('form.editor');
    await page.locator('.begin select').selectOption({ label: from });
    for (const [label, text] of Object.entries(fields))
      await form.getByLabel(label, { exact: true }).first().fill(text);
    for (const [label, text] of Object.entries(choices))
      await form.getByLabel(label, { exact: true }).selectOption({ label: text });
    for (const [label, [low, high]] of Object.entries(bands)) {
      await form.getByLabel(label, { exact: true }).fill(low);
      await form.getByLabel(`${label}, to`, { exact: true }).fill(high);
    }
    await page.getByText('An exercise.', { exact: true }).waitFor();
    await button(page, 'Prove it with robot hands').click();
    const summary = page.getByTestId('proof-summary');
    await summary.waitFor({ timeout: 600_000 });
    const path = await saved(page, 'Save as a file');
    return {
      exercise: readExercise(readFileSync(path, 'utf8'), path),
      path,
      verdicts: (await page.locator('.proof tbody .verdict').allTextContents()).map((text) => text.trim()),
      summary: (await summary.textContent()) ?? '',
    };
  });
}

async function saved(page: Page, name: string): Promise<string> {
  const download = page.waitForEvent('download');
  await button(page, name).click();
  return keep(await download);
}

/** The file of a robot hand that welds the exercise as one of the proof's hands did. */
function weldedByRobot(exercise: Exercise, { fault, amount, seed }: ProofHand): string {
  const faults = amount > 0 ? handOfAmount(seed, amount) : noFaults(seed);
  const hand =
    fault === null
      ? { weave: exercise.demonstration, faults, poses: [...weaveHand(exercise.demonstration, faults)] }
      : faultHand(exercise, fault, seed);
  const recording = recordPoses(
    {
      simulation: { joint: exercise.joint, process: exercise.process, cell_mm: 0.75 },
      origin: { kind: 'robot', weave: hand.weave, faults: hand.faults },
      device: { kind: 'robot', measures: { tipToWork: true, workAngle: true, travelAngle: true }, scale: 1 },
      aids: { pacer: false, beat: false, toeMarks: false, plainView: false, handRig: null },
      exercise,
    },
    hand.poses,
  );
  return JSON.stringify(recording);
}

/** A hand of another seed than the proof's, with what a mouse does not measure held; steadier ones are taken for robots. */
function weldedByTrainee(exercise: Exercise, seed: number): string {
  const { tipToWork_mm, workAngle_deg, travelAngle_deg } = exercise.hold;
  const poses = [...weaveHand(exercise.demonstration, handOfAmount(seed, 0.45))];
  return JSON.stringify(
    record(
      {
        simulation: { joint: exercise.joint, process: exercise.process, cell_mm: 0.75 },
        origin: { kind: 'hand' },
        device: MOUSE,
        aids: { pacer: false, beat: false, toeMarks: false, plainView: true, handRig: null },
        exercise,
        trainee: { name: `Trainee ${seed}`, bench: 'b1' },
      },
      poses.map((p) => ({ ...p, tipToWork_mm, workAngle_deg, travelAngle_deg })),
    ),
  );
}

describe.each(OWN.map((own) => [own.fields.title!, own] as const))('%s', (title, own) => {
  it('gets from robots what its proof says, at the trainee’s page and on the class sheet', async () => {
    const { exercise, path, verdicts, summary } = await proved(own);
    const hands = proofHands(exercise);
    expect(verdicts).toHaveLength(hands.length);
    const faults = hands.flatMap((hand, i) => (hand.fault === null ? [] : [verdicts[i]!]));
    const told = faults.filter((verdict) => verdict === 'outside' || verdict === 'no verdict').length;
    expect(summary).toContain(`${told} of ${faults.length} named faults fall outside or get no verdict.`);

    const file = (who: string, attempt: number): string =>
      join(stick, attemptFileName({ date: '2026-03-10', bench: 'b1', trainee: who, exercise: exercise.name, attempt }));
    const robots = hands.map((hand, i) => {
      const name = file('robot', i + 1);
      writeFileSync(name, weldedByRobot(exercise, hand));
      return name;
    });
    const people = [31, 32, 33].map((seed) => {
      const name = file(`trainee-${seed}`, 1);
      writeFileSync(name, weldedByTrainee(exercise, seed));
      return name;
    });

    await onPage(async (page, bench) => {
      await bench.openFile(path);
      await expect.poll(() => page.locator('.exercise select option:checked').textContent()).toBe(title);
      // The steadiest, the first fault and the widest hand, opened as attempts: the verdict on the screen.
      for (const i of [0, hands.findIndex((h) => h.fault !== null), hands.length - 1]) {
        await bench.openFile(robots[i]!);
        await page
          .getByTestId('verdict')
          .waitFor({ state: 'detached', timeout: 20_000 })
          .catch(() => undefined);
        expect(await bench.verdict(), hands[i]!.fault ?? `amount ${hands[i]!.amount}`).toBe(verdicts[i]);
      }
      await button(page, 'Desk').click();
      const picker = page.waitForEvent('filechooser');
      await button(page, 'Choose files').click();
      await (await picker).setFiles([...robots, ...people, path]);
      await page.getByRole('dialog').getByRole('button', { name: 'Print', exact: true }).waitFor({ timeout: 600_000 });
      await page.getByText(/^Welding the three/).waitFor({ state: 'detached', timeout: 120_000 });
      const rows = readFileSync(await saved(page, 'attempts, JSON lines'), 'utf8')
        .trimEnd()
        .split('\n')
        .map((line) => JSON.parse(line) as { file: string; verdict: string });
      const verdictOf = (name: string): string => rows.find((row) => row.file === basename(name))!.verdict;
      expect(robots.map(verdictOf)).toEqual(verdicts);
      // Robots are kept and not counted; the trainees count.
      await page.getByText(/^3 trainees, /).waitFor();
    });
  }, 1_500_000);
});

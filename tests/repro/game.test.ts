import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { Recording } from '../../engine/index.ts';
import { newId } from '../../game/browser/new-id.ts';
import { preferencesFrom } from '../../game/core/session/preferences.ts';
import { words } from '../../game/locale/index.ts';
import { handRigSchema } from '../../scoring/schema/bench.ts';
import { MapStores } from '../game/support/map-stores.ts';
import { TestBench } from '../game/support/test-bench.ts';

const GAME = fileURLToPath(new URL('../../game/', import.meta.url));

/**
 * What browsers give only to pages served securely or from this machine (WebIDL [SecureContext] in the specifications named, from
 * memory): Web Crypto, Clipboard, Storage, File System Access, Service Workers, Web Locks, Pointer Events (getCoalescedEvents), Gamepad.
 */
const SECURE_ONLY =
  /\b(randomUUID|crypto\.subtle|navigator\.clipboard|navigator\.storage|showSaveFilePicker|showOpenFilePicker|serviceWorker|navigator\.locks|getCoalescedEvents|getGamepads)\b/g;

/** Where one is used all the same, it is asked for first. */
const ASKED_FIRST = /navigator\.storage\?\.|getCoalescedEvents\?\.|getGamepads\?\.|serviceWorker\?\./;

afterEach(() => {
  vi.unstubAllGlobals();
});

/** Ten minutes of an arc that jumps along a long thick joint in small cells. */
function hugeOf(recording: Recording): Recording {
  const column = (value: (i: number) => number): number[] => Array.from({ length: 60_000 }, (_, i) => value(i));
  const { joint, process } = recording.simulation;
  return {
    ...recording,
    exercise: null,
    simulation: {
      joint: { ...joint, length_mm: 290, plateA_mm: 16, plateB_mm: 16, tabs: true },
      process,
      cell_mm: 0.45,
    },
    poses: {
      u: column(() => 0),
      y: column((i) => (Math.floor(i / 50) % 2 === 0 ? 100 : 28_000)),
      tip: column(() => 1200),
      work: column(() => 450),
      travel: column(() => 80),
      trigger: column(() => 1),
    },
  };
}

describe('bugs of the game that were mended and stay mended', () => {
  it('an attempt was lost without a word after its verdict on plain http: its id needed a secure page', async () => {
    const { getRandomValues } = globalThis.crypto;
    vi.stubGlobal('crypto', { getRandomValues: getRandomValues.bind(globalThis.crypto) });
    const ids = new Set(Array.from({ length: 1000 }, newId));
    expect(ids.size).toBe(1000);
    for (const id of ids) expect(id).toMatch(/^[0-9a-f]{32}$/);
  });

  it('the same class: nothing of the page relies on what only secure pages have', () => {
    const files = readdirSync(GAME, { recursive: true, encoding: 'utf8' }).filter((name) => /\.tsx?$/.test(name));
    expect(files.length).toBeGreaterThan(80);
    const bare = files.flatMap((name) =>
      readFileSync(join(GAME, name), 'utf8')
        .split('\n')
        .filter((line) => !/^\s*(\/\/|\*|\/\*)/.test(line))
        .filter((line) => line.match(SECURE_ONLY) && !ASKED_FIRST.test(line))
        .map((line) => `${name}: ${line.trim()}`),
    );
    expect(bare).toEqual([]);
  });

  it('one corrupt record emptied the shelf', async () => {
    const stores = new MapStores();
    const first = await new TestBench({ stores, length_mm: 20 }).settle();
    first.press(0, 5).wait(0.3).release();
    first.session.finish();
    await first.finished();
    await first.settle();
    stores.attemptRecords.set('corrupt', { id: 'corrupt' });
    const next = await new TestBench({ stores }).settle();
    expect(next.state.shelf.value.map((entry) => entry.damaged === null).sort()).toEqual([false, true]);
  });

  it('a page closed in mid-weld lost the attempt', async () => {
    const bench = await new TestBench({ length_mm: 20 }).settle();
    bench.press(0, 5).wait(1.2);
    await bench.settle();
    expect(bench.stores.heads.size).toBe(1);
  });

  it('a file that would weld for hours was opened without a word, and the page was busy with it', async () => {
    const bench = await new TestBench({ length_mm: 20 }).settle();
    bench.press(0, 5).wait(0.3).release();
    bench.session.finish();
    const before = await bench.finished();
    const huge = hugeOf(before.recording);
    await bench.session.opener.file(bench.file(huge, 'huge.json'));
    expect(bench.state.busy.value).toBeNull();
    expect(bench.state.finished.value).toBe(before);
    const problem = bench.state.problem.value!;
    expect(words.problems.say(problem)).toMatch(
      /^huge\.json: found some [\d.]+ (min|h) of work on one core \(60000 poses, 290 mm of joint in cells of 0\.45 mm\); opened without asking are those of at most 5 min\. Nothing has been welded\./,
    );
    if (problem.code !== 'much-work') throw new Error(`found ${problem.code}`);
    problem.goOn();
    expect(bench.state.busy.value?.what).toBe('welding again');
  });

  it('a corrupt hand rig among the preferences was written into attempts', () => {
    for (const handRig of [{ gun_g: 1e9, hose: 0 }, { gun_g: 700, hose: Number.NaN }, { gun_g: '700', hose: 0 }, []]) {
      const kept = preferencesFrom({ handRig }).handRig;
      if (kept !== null) expect(handRigSchema.safeParse(kept).success).toBe(true);
      else expect(kept).toBeNull();
    }
    expect(preferencesFrom({ handRig: { gun_g: 700, hose: 0.4 } }).handRig).toEqual({ gun_g: 700, hose: 0.4 });
  });
});

import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { BenchDriver } from './support/bench.ts';
import { launchChromium } from './support/chromium.ts';
import { polyline } from './support/paths.ts';
import { type Site, serveGame } from './support/site.ts';

const PATH = [
  { u_mm: 0, y_mm: 4 },
  { u_mm: 0, y_mm: 22 },
];
const SPEED_MMPS = 2.5;

let browser: Browser;
let site: Site;

beforeAll(async () => {
  [browser, site] = await Promise.all([launchChromium(), serveGame()]);
});

afterAll(async () => {
  await Promise.all([browser?.close(), site?.close()]);
});

/** Process ids of the browser's page processes. */
async function renderers(): Promise<number[]> {
  const cdp = await browser.newBrowserCDPSession();
  const { processInfo } = await cdp.send('SystemInfo.getProcessInfo');
  await cdp.detach();
  return processInfo.filter((p) => p.type === 'renderer').map((p) => p.id);
}

/** Stops and continues processes so that they get only a share of their time, Workers and all. Returns a function that lets them go. */
async function starve(pids: readonly number[], share: number): Promise<() => void> {
  // Long enough that two milliseconds of it are more than a timer's jitter, short enough that the page is not taken for dead.
  const cycle_ms = 400;
  let running = true;
  const signal = (name: 'SIGSTOP' | 'SIGCONT'): void => {
    for (const pid of pids) process.kill(pid, name);
  };
  const timer = setInterval(() => {
    if (running) signal('SIGSTOP');
    setTimeout(() => running && signal('SIGCONT'), cycle_ms * (1 - share));
  }, cycle_ms);
  return () => {
    running = false;
    clearInterval(timer);
    signal('SIGCONT');
  };
}

describe('a slow machine', () => {
  it('whose page is throttled six times still welds in real time: the bench has a thread of its own', async () => {
    const bench = await BenchDriver.open(browser, site.address, { plain: true });
    await bench.cdp.send('Emulation.setCPUThrottlingRate', { rate: 6 });
    const held_s = await bench.weld(polyline(PATH, SPEED_MMPS, 0.2), 16);
    await bench.cdp.send('Emulation.setCPUThrottlingRate', { rate: 1 });
    await bench.verdict();
    const { recording } = await bench.save();
    const on_s = recording.poses.trigger.filter((t) => t === 1).length / 100;
    expect(recording.ended).not.toBe('too-slow');
    expect(Math.abs(on_s - held_s)).toBeLessThan(0.03);
    await bench.close();
  }, 120_000);

  it('that cannot keep up is told so: the attempt stops, is not judged, and is never slowed', async () => {
    const bench = await BenchDriver.open(browser, site.address, { plain: true });
    await bench.cdp.send('Emulation.setCPUThrottlingRate', { rate: 1 });
    // A school's slowest machine welds some ten times faster than real time, a good one sixty: this is beyond both.
    const letGo = await starve(await renderers(), 0.005);
    try {
      await bench.weld(polyline(PATH, SPEED_MMPS, 0.2), 40);
    } finally {
      letGo();
    }
    expect(await bench.verdict()).toBe('no verdict');
    expect(await bench.page.getByText(/^Stopped: this machine fell \d+\.\d\d s behind real time/).count()).toBe(1);
    expect((await bench.save()).recording.ended).toBe('too-slow');
    await bench.close();
  }, 200_000);
});

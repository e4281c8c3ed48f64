/**
 * One recording, one hash: Node on source, four major versions of Node on built code, Firefox, Chromium and WebKit on built code. Browsers are started on a page
 * of a local server that replays the recording and posts what it got. Needs firefox-esr, chromium, webkit2gtk-driver and xvfb (Debian packages) and the built
 * library.
 */
import { execFileSync, spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { extname, join, normalize } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { defaultWeave, noFaults, type Recording, recordPoses, type replay, weaveHand } from '../../engine/index.ts';
import { optionsOf } from '../support/weld.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const DIST = join(ROOT, 'dist');

const PAGE = `<!doctype html><meta charset="utf-8"><script type="module">
const send = (body) => fetch('/result', { method: 'POST', body });
try {
  const { replay } = await import('/engine/index.js');
  const recording = await (await fetch('/recording')).json();
  const auto = replay(recording);
  const plain = replay(recording, undefined, { kernel: 'reference' });
  await send(JSON.stringify({ auto: auto.hash(), kernel: auto.kernel, plain: plain.hash() }));
} catch (error) {
  await send(JSON.stringify({ error: String(error) }));
}
</script>`;

interface Answer {
  auto?: string;
  kernel?: string;
  plain?: string;
  error?: string;
}

function recordingOf(): Recording {
  const weave = { ...defaultWeave(), length_mm: 10 };
  const faults = { ...noFaults(11), tremor_mm: 0.5, timing: 0.2, lag_s: 0.04 };
  return recordPoses(
    {
      simulation: optionsOf({ joint: { length_mm: 26, kind: 'lap', plateB_mm: 4.4 }, cell_mm: 1 }),
      origin: { kind: 'robot', weave, faults },
      device: { kind: 'robot', measures: { tipToWork: true, workAngle: true, travelAngle: true }, scale: null },
      aids: { pacer: false, beat: false, toeMarks: false, plainView: false, handRig: null },
      exercise: null,
    },
    weaveHand(weave, faults),
  );
}

/** Serves the built library, page and recording; resolves with what the browser posts back. */
function askBrowser(
  recording: Recording,
  program: string,
  args: (url: string, profile: string) => string[],
): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const profile = mkdtempSync(join(tmpdir(), 'toehold-browser-'));
    const server = createServer((request, response) => {
      if (request.url === '/result') {
        let body = '';
        request.on('data', (chunk) => {
          body += chunk;
        });
        request.on('end', () => {
          response.end();
          finish(() => resolve(JSON.parse(body) as Answer));
        });
        return;
      }
      if (request.url === '/recording') {
        response.setHeader('content-type', 'application/json');
        response.end(JSON.stringify(recording));
        return;
      }
      const path = normalize(join(DIST, new URL(request.url ?? '/', 'http://local').pathname));
      if (path.startsWith(DIST) && extname(path) === '.js' && existsSync(path)) {
        response.setHeader('content-type', 'text/javascript');
        response.end(readFileSync(path));
        return;
      }
      response.setHeader('content-type', 'text/html');
      response.end(PAGE);
    });
    server.listen(0, '127.0.0.1', () => {
      const url = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
      browser = spawn(program, args(url, profile), {
        stdio: 'ignore',
        // A group of its own, so that a browser that came with a screen takes it along when it ends.
        detached: true,
        env: { ...process.env, HOME: profile, MOZ_HEADLESS: '1' },
      });
      browser.once('error', (error) => finish(() => reject(error)));
    });
    let browser: ReturnType<typeof spawn> | null = null;
    const timer = setTimeout(() => finish(() => reject(new Error(`${program} gave no answer within 100 s`))), 100_000);
    function finish(then: () => void): void {
      clearTimeout(timer);
      if (browser?.pid !== undefined) endGroup(browser.pid);
      server.close();
      server.closeAllConnections();
      setTimeout(() => rmSync(profile, { recursive: true, force: true, maxRetries: 5 }), 500);
      then();
    }
  });
}

function endGroup(pid: number): void {
  try {
    process.kill(-pid, 'SIGKILL');
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ESRCH') throw error;
  }
}

/** WebKit's plain browser, which Debian's webkit2gtk-driver brings along in the library's own folder; null: not installed. */
function miniBrowser(): string | null {
  const named = process.env.WEBKIT_PATH;
  if (named !== undefined) return named;
  const places = ['/usr/lib', '/usr/libexec'].filter((place) => existsSync(place));
  const folders = places.flatMap((place) => [place, ...readdirSync(place).map((name) => join(place, name))]);
  const programs = folders.flatMap((folder) =>
    ['webkit2gtk-4.1', 'webkit2gtk-4.0', 'webkitgtk-6.0'].map((library) => join(folder, library, 'MiniBrowser')),
  );
  return programs.find((path) => existsSync(path)) ?? null;
}

describe('one recording, one hash', () => {
  const recording = recordingOf();

  beforeAll(() => {
    execFileSync(process.execPath, ['node_modules/typescript-native/bin/tsc', '-p', 'tsconfig.lib.json'], {
      cwd: ROOT,
    });
  });

  it('Node, built code', async () => {
    const built = (await import(/* @vite-ignore */ join(DIST, 'engine', 'index.js'))) as { replay: typeof replay };
    expect(built.replay(recording).hash()).toBe(recording.stateHash);
  });

  // The npm package `node` carries Node itself: other major versions without installing anything.
  it.each([22, 24, 26])('Node %i, both kernels', (major) => {
    const folder = mkdtempSync(join(tmpdir(), 'toehold-node-'));
    const file = join(folder, 'recording.json');
    writeFileSync(file, JSON.stringify(recording));
    const script = `
      import { readFileSync } from 'node:fs';
      import { replay } from ${JSON.stringify(pathToFileURL(join(DIST, 'engine', 'index.js')).href)};
      const recording = JSON.parse(readFileSync(${JSON.stringify(file)}, 'utf8'));
      const auto = replay(recording);
      const plain = replay(recording, undefined, { kernel: 'reference' });
      console.log(JSON.stringify({ version: process.version, auto: auto.hash(), kernel: auto.kernel, plain: plain.hash() }));`;
    try {
      const said = execFileSync(
        'npm',
        ['exec', '--yes', `--package=node@${major}`, '--', 'node', '--input-type=module', '-e', script],
        { cwd: folder, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] },
      );
      const answer = JSON.parse(said.trim().split('\n').pop()!) as Answer & { version: string };
      expect(answer.version.startsWith(`v${major}.`)).toBe(true);
      expect(answer).toMatchObject({ auto: recording.stateHash, kernel: 'simd', plain: recording.stateHash });
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  it('Firefox, both kernels', async () => {
    const program = process.env.FIREFOX_PATH ?? '/usr/bin/firefox-esr';
    if (!existsSync(program))
      throw new Error('Firefox was not tested: install firefox-esr, or set FIREFOX_PATH to its program file.');
    const answer = await askBrowser(recording, program, (url, profile) => [
      '--headless',
      '--no-remote',
      '--profile',
      profile,
      url,
    ]);
    expect(answer).toEqual({ auto: recording.stateHash, kernel: 'simd', plain: recording.stateHash });
  });

  it('Chromium, both kernels', async () => {
    const program = process.env.CHROME_PATH ?? '/usr/bin/chromium';
    const answer = await askBrowser(recording, program, (url, profile) => [
      '--headless',
      '--no-sandbox',
      '--disable-gpu',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      `--user-data-dir=${profile}`,
      url,
    ]);
    expect(answer).toEqual({ auto: recording.stateHash, kernel: 'simd', plain: recording.stateHash });
  });

  // It wants a screen: xvfb-run gives it one that nobody sees.
  it('WebKit, both kernels', async () => {
    const program = miniBrowser();
    if (program === null || !existsSync('/usr/bin/xvfb-run'))
      throw new Error(
        'WebKit was not tested: install webkit2gtk-driver and xvfb, or set WEBKIT_PATH to the program file of its MiniBrowser.',
      );
    const answer = await askBrowser(recording, '/usr/bin/xvfb-run', (url) => [
      '--auto-servernum',
      program,
      '--private',
      url,
    ]);
    expect(answer).toEqual({ auto: recording.stateHash, kernel: 'simd', plain: recording.stateHash });
  });
});

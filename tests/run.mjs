// `npm test`: installs what is missing, finds a browser, then unit tests with lint, types and build beside them, then browser tests.
// `npm test -- --slow` runs the slow ones after them, `npm run test:slow` those alone. Prints results only; the last line is "N passed, N failed". Only Node built-ins.
import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { constants, setPriority, tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { ensureInstalled, fail, ROOT } from '../game/tools/install.mjs';

const CHROMIUMS = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
];
const FIREFOXES = ['/usr/bin/firefox-esr', '/usr/bin/firefox', '/Applications/Firefox.app/Contents/MacOS/firefox'];
const WEBKITS = ['x86_64-linux-gnu', 'aarch64-linux-gnu'].map((abi) => `/usr/lib/${abi}/webkit2gtk-4.1/MiniBrowser`);
const INITDBS = [18, 17, 16, 15, 14].map((version) => `/usr/lib/postgresql/${version}/bin/initdb`);
/** A stage that takes longer has hung. The longest, slow tests with a page beside them, takes some 23 minutes on two cores. */
const LONGEST_STAGE_MS = 45 * 60_000;

let passed = 0;
let failed = 0;

function note(ok, name, seconds, details = '') {
  process.stdout.write(`${ok ? 'ok  ' : 'FAIL'} ${name} (${seconds.toFixed(1)} s)\n${details}`);
}

/** Runs a program to its end; `aside` lets everything else go first. */
function run(command, args, env = {}, aside = false) {
  const started = performance.now();
  return new Promise((resolve) => {
    let output = '';
    const done = (ok) => resolve({ ok, seconds: (performance.now() - started) / 1000, output });
    const child = spawn(command, args, {
      cwd: ROOT,
      env: { ...process.env, NO_COLOR: '1', FORCE_COLOR: '0', ...env },
      shell: process.platform === 'win32',
      stdio: ['ignore', 'pipe', 'pipe'],
      timeout: LONGEST_STAGE_MS,
    });
    if (aside && child.pid) setPriority(child.pid, constants.priority.PRIORITY_BELOW_NORMAL);
    for (const channel of [child.stdout, child.stderr])
      channel.on('data', (piece) => {
        output += piece;
      });
    child.on('error', (error) => {
      output += `${error.message}\n`;
      done(false);
    });
    child.on('close', (code, signal) => {
      if (signal) output += `ended by ${signal}\n`;
      done(code === 0);
    });
  });
}

async function check(name, command, args) {
  const { ok, seconds, output } = await run(command, args, {}, true);
  if (ok) passed += 1;
  else failed += 1;
  note(ok, name, seconds, ok ? '' : output);
  return ok;
}

/** Runs vitest over some folders and adds its counts; a run that yields no report is one failure. */
async function suite(name, args, env) {
  const folder = mkdtempSync(join(tmpdir(), 'toehold-test-'));
  const file = join(folder, 'report.json');
  const vitest = join('node_modules', 'vitest', 'vitest.mjs');
  const { ok, seconds, output } = await run(
    process.execPath,
    [vitest, 'run', ...args, '--reporter=json', `--outputFile=${file}`],
    env,
  );
  if (!existsSync(file)) {
    failed += 1;
    note(false, name, seconds, output);
    return;
  }
  const report = JSON.parse(readFileSync(file, 'utf8'));
  rmSync(folder, { recursive: true });
  let details = '';
  let bad = report.numFailedTests;
  for (const testFile of report.testResults) {
    const where = relative(ROOT, testFile.name);
    if (testFile.status === 'failed' && testFile.assertionResults.every((t) => t.status !== 'failed')) {
      bad += 1;
      details += `     ${where}: ${testFile.message}\n`;
    }
    for (const test of testFile.assertionResults) {
      if (test.status === 'passed' && test.failureMessages.length > 0)
        details += `     ${where}: ${test.fullName}: passed at the second try, at the first: ${test.failureMessages[0].split('\n')[0]}\n`;
      if (test.status !== 'failed') continue;
      details += `     ${where}: ${test.fullName}\n${test.failureMessages.join('\n').replace(/^/gm, '       ')}\n`;
    }
  }
  if (!ok && bad === 0) {
    bad = 1;
    details = output;
  }
  passed += report.numPassedTests;
  failed += bad;
  note(bad === 0, `${name}: ${report.numPassedTests} passed, ${bad} failed`, seconds, details);
}

function find(variable, places) {
  const named = process.env[variable];
  if (!named) return places.find((path) => existsSync(path)) ?? null;
  if (existsSync(named)) return named;
  return fail(`${variable}: found "${named}", but there is no such file`);
}

/** A program at its usual place, from Debian's packages where we may install; else null. */
async function ensureProgram(variable, places, debianPackage) {
  const found = find(variable, places);
  if (found) return found;
  if (process.getuid?.() !== 0 || !existsSync('/etc/debian_version')) return null;
  process.stdout.write(`Installing ${debianPackage} ...\n`);
  const quiet = { DEBIAN_FRONTEND: 'noninteractive' };
  await run('apt-get', ['update'], quiet);
  const apt = await run('apt-get', ['install', '-y', '--no-install-recommends', debianPackage], quiet);
  const installed = find(variable, places);
  if (!installed) process.stdout.write(apt.output);
  return installed;
}

/** Lint, types and build in turn, with whatever time the unit tests beside them leave. Resolves with whether the game was built. */
async function statics() {
  const modules = (...path) => join('node_modules', ...path);
  await check('format and lint', process.execPath, [modules('@biomejs', 'biome', 'bin', 'biome'), 'check', '.']);
  await check('types', process.execPath, [
    modules('typescript-native', 'bin', 'tsc'),
    '--noEmit',
    '-p',
    'tsconfig.json',
  ]);
  return check('build', 'npm', ['run', '--silent', 'build']);
}

ensureInstalled();
const chromium = await ensureProgram('CHROME_PATH', CHROMIUMS, 'chromium');
if (!chromium) fail('The browser tests need Chromium or Chrome: install it, or set CHROME_PATH to its program file.');

const inBrowser = ['--config', join('tests', 'browser', 'vitest.config.ts')];
const inSlow = join('tests', 'slow', 'vitest.config.ts');
const slowOnly = process.argv.includes('--slow-only');
const [built] = slowOnly
  ? [await check('build', 'npm', ['run', '--silent', 'build'])]
  : await Promise.all([statics(), suite('unit and laws', [])]);
// By themselves: they weld in real time.
if (built && !slowOnly) await suite('browser', inBrowser, { CHROME_PATH: chromium });
if (slowOnly || process.argv.includes('--slow')) {
  const firefox = await ensureProgram('FIREFOX_PATH', FIREFOXES, 'firefox-esr');
  const webkit = await ensureProgram('WEBKIT_PATH', WEBKITS, 'webkit2gtk-driver');
  // WebKit wants a screen; found by its name there.
  await ensureProgram('XVFB_RUN_PATH', ['/usr/bin/xvfb-run'], 'xvfb');
  const initdb = await ensureProgram('INITDB_PATH', INITDBS, 'postgresql');
  if (built) await suite('slow, in the browser', inBrowser, { CHROME_PATH: chromium, TEST_SHARE: 'whole' });
  // What welds nothing that has to keep time goes on beside the rest.
  const beside = { CHROME_PATH: chromium, TEST_SHARE: 'whole', BROWSER_TESTS: 'beside' };
  const besides = built ? suite('slow, in the browser beside', inBrowser, beside) : null;
  await suite('slow, lab on the embedded database', ['--config', inSlow, join('tests', 'lab')], {
    LAB_STORE: 'embedded',
  });
  // Without them the tests of Firefox, WebKit and PostgreSQL fail and say so: what was not tested is never passed over.
  await suite('slow', ['--config', inSlow], {
    CHROME_PATH: chromium,
    ...(initdb ? { INITDB_PATH: initdb } : {}),
    ...(firefox ? { FIREFOX_PATH: firefox } : {}),
    ...(webkit ? { WEBKIT_PATH: webkit } : {}),
  });
  await besides;
}
process.stdout.write(`${passed} passed, ${failed} failed\n`);
process.exitCode = failed === 0 ? 0 : 1;

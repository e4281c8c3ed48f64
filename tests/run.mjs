// `npm test`: installs what is missing, finds a browser, then format, types, unit and law tests, build and browser tests.
// Prints results only; the last line is "N passed, N failed". Only Node built-ins.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { ensureInstalled, fail, ROOT } from '../game/tools/install.mjs';

const BROWSERS = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
];

let passed = 0;
let failed = 0;

function note(ok, name, seconds, details = '') {
  process.stdout.write(`${ok ? 'ok  ' : 'FAIL'} ${name} (${seconds.toFixed(1)} s)\n${details}`);
}

function run(command, args, env = {}) {
  const started = performance.now();
  const result = spawnSync(command, args, {
    cwd: ROOT,
    encoding: 'utf8',
    env: { ...process.env, NO_COLOR: '1', FORCE_COLOR: '0', ...env },
    maxBuffer: 1 << 28,
    shell: process.platform === 'win32',
  });
  const seconds = (performance.now() - started) / 1000;
  const output = result.error ? `${result.error.message}\n` : `${result.stdout}${result.stderr}`;
  return { ok: result.status === 0, seconds, output };
}

function check(name, command, args) {
  const { ok, seconds, output } = run(command, args);
  if (ok) passed += 1;
  else failed += 1;
  note(ok, name, seconds, ok ? '' : output);
  return ok;
}

/** Runs vitest over some folders and adds its counts; a run that yields no report is one failure. */
function suite(name, args, env) {
  const folder = mkdtempSync(join(tmpdir(), 'toehold-test-'));
  const file = join(folder, 'report.json');
  const vitest = join('node_modules', 'vitest', 'vitest.mjs');
  const { ok, seconds, output } = run(
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

function findBrowser() {
  const named = process.env.CHROME_PATH;
  if (named) {
    if (existsSync(named)) return named;
    return fail(`CHROME_PATH: found "${named}", but there is no such file`);
  }
  return BROWSERS.find((path) => existsSync(path)) ?? null;
}

function canInstall() {
  return process.getuid?.() === 0 && existsSync('/etc/debian_version');
}

/** A Chromium to test in, installed on a Debian machine we may install on; else one clear line and no tests at all. */
function ensureBrowser() {
  const found = findBrowser();
  if (found) return found;
  if (canInstall()) {
    process.stdout.write('Installing Chromium ...\n');
    const quiet = { DEBIAN_FRONTEND: 'noninteractive' };
    run('apt-get', ['update'], quiet);
    const apt = run('apt-get', ['install', '-y', '--no-install-recommends', 'chromium'], quiet);
    const installed = findBrowser();
    if (installed) return installed;
    process.stdout.write(apt.output);
  }
  return fail('The browser tests need Chromium or Chrome: install it, or set CHROME_PATH to its program file.');
}

/** A PostgreSQL server to test the lab on, as Debian's package installs it. */
function ensurePostgres() {
  const found = () => {
    const root = '/usr/lib/postgresql';
    return existsSync(root) && readdirSync(root).some((version) => existsSync(join(root, version, 'bin', 'initdb')));
  };
  if (found()) return;
  if (canInstall()) {
    process.stdout.write('Installing PostgreSQL ...\n');
    const quiet = { DEBIAN_FRONTEND: 'noninteractive' };
    run('apt-get', ['update'], quiet);
    const apt = run('apt-get', ['install', '-y', '--no-install-recommends', 'postgresql'], quiet);
    if (found()) return;
    process.stdout.write(apt.output);
  }
  fail('The lab tests need PostgreSQL under /usr/lib/postgresql: install it (Debian: apt-get install postgresql).');
}

ensureInstalled();
ensurePostgres();
const browser = ensureBrowser();
check('format and lint', process.execPath, [join('node_modules', '@biomejs', 'biome', 'bin', 'biome'), 'check', '.']);
check('types', process.execPath, [join('node_modules', 'typescript', 'bin', 'tsc'), '--noEmit', '-p', 'tsconfig.json']);
suite('unit and laws', ['--exclude', 'tests/browser/**', '--exclude', 'tests/slow/**']);
if (check('build', 'npm', ['run', '--silent', 'build']))
  suite('browser', ['tests/browser', '--no-file-parallelism'], { CHROME_PATH: browser });
process.stdout.write(`${passed} passed, ${failed} failed\n`);
process.exitCode = failed === 0 ? 0 : 1;

// Brings node_modules in line with package-lock.json. Only Node built-ins: this runs before anything is installed.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = fileURLToPath(new URL('../../', import.meta.url));

const OLDEST_NODE = [20, 19];

/** Ends with one clear line if this Node is older than the project needs. */
function checkNode() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (major > OLDEST_NODE[0] || (major === OLDEST_NODE[0] && minor >= OLDEST_NODE[1])) return;
  fail(
    `Toehold needs Node ${OLDEST_NODE.join('.')} or newer; this is Node ${process.versions.node}. See https://nodejs.org`,
  );
}

/** @param {string} message */
export function fail(message) {
  process.stderr.write(`${message}\n`);
  process.exit(1);
}

/**
 * Why node_modules does not match the lock file, or null if it does. npm leaves a copy of what it installed in
 * node_modules/.package-lock.json; packages for other platforms are in the lock but rightly not there.
 * @returns {string | null}
 */
function staleness() {
  const installed = join(ROOT, 'node_modules', '.package-lock.json');
  if (!existsSync(installed)) return 'nothing is installed yet';
  const wanted = JSON.parse(readFileSync(join(ROOT, 'package-lock.json'), 'utf8')).packages;
  const present = JSON.parse(readFileSync(installed, 'utf8')).packages;
  for (const [name, entry] of Object.entries(wanted)) {
    if (name === '') continue;
    const there = present[name];
    if (!there && (entry.optional || entry.peer)) continue;
    if (!there) return `${name} is missing`;
    if (there.version !== entry.version) return `${name} is ${there.version}, the lock file says ${entry.version}`;
    if (!existsSync(join(ROOT, name))) return `${name} is missing`;
  }
  return null;
}

/** Runs `npm ci` if needed. npm's own words are shown only when it fails. */
export function ensureInstalled() {
  checkNode();
  const why = staleness();
  if (why === null) return;
  process.stdout.write(`Installing packages (${why}) ...\n`);
  const npm = spawnSync('npm', ['ci', '--no-audit', '--no-fund'], {
    cwd: ROOT,
    encoding: 'utf8',
    shell: process.platform === 'win32',
  });
  if (npm.error) fail(`npm could not be started: ${npm.error.message}`);
  if (npm.status !== 0) fail(`npm ci failed:\n${npm.stdout}${npm.stderr}`);
}

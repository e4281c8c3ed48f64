// `npm run reference:update`: runs the checks one file at a time and lets each write its part of README.md. --fine adds finer cells.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';

const vitest = join('node_modules', 'vitest', 'vitest.mjs');
const env = { ...process.env, REFERENCE_UPDATE: '1', TEST_SHARE: 'whole' };
const run = (...args) =>
  spawnSync(process.execPath, [vitest, 'run', ...args, '--no-file-parallelism'], { stdio: 'inherit', env }).status ?? 1;
let status = run('tests/reference');
if (process.argv.includes('--fine')) status ||= run('tests/slow/reference', '--config', 'tests/slow/vitest.config.ts');
process.exitCode = status;

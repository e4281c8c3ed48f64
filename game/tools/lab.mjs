// `npm run lab`: installs what is missing, builds the pages if they are not there, and runs the school lab from its sources.
import { spawn, spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { ensureInstalled, fail, ROOT } from './install.mjs';

/** Commands that serve no pages. */
const WITHOUT_PAGES = ['worker', 'rebuild', 'backup', 'restore', 'forget', 'help', '--help', '-h'];

ensureInstalled();
const args = process.argv.slice(2);
if (!WITHOUT_PAGES.includes(args[0] ?? '') && !existsSync(join(ROOT, 'dist', 'game', 'index.html'))) {
  process.stdout.write('Building the pages ...\n');
  const built = spawnSync('npm', ['run', '--silent', 'build'], {
    cwd: ROOT,
    encoding: 'utf8',
    shell: process.platform === 'win32',
  });
  if (built.status !== 0) fail(`The build failed:\n${built.stdout}${built.stderr}`);
}
const lab = spawn(process.execPath, ['--import', 'tsx', join(ROOT, 'scoring', 'lab', 'main.ts'), ...args], {
  stdio: 'inherit',
  cwd: ROOT,
});
// The lab stops in order when asked to; this one only waits for it.
process.on('SIGINT', () => undefined);
process.on('SIGTERM', () => lab.kill('SIGTERM'));
lab.on('exit', (code) => {
  process.exitCode = code ?? 1;
});

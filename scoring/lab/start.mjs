// `npm run lab`: installs what is missing, builds the pages if they are not there, and runs the lab from its sources in this process.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { ensureInstalled, fail, ROOT } from '../../game/tools/install.mjs';

ensureInstalled();
const serves = !['worker', 'rebuild', 'help', '--help', '-h'].includes(process.argv[2] ?? '');
if (serves && !existsSync(join(ROOT, 'dist', 'game', 'index.html'))) {
  process.stdout.write('Building the pages ...\n');
  const built = spawnSync('npm', ['run', '--silent', 'build'], {
    cwd: ROOT,
    encoding: 'utf8',
    shell: process.platform === 'win32',
  });
  if (built.status !== 0) fail(`The build failed:\n${built.stdout}${built.stderr}`);
}
const { register } = await import('tsx/esm/api');
register();
await import('./main.ts');

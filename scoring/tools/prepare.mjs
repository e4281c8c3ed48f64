/**
 * Runs after `npm ci`: compiles engine and scoring into dist/ and puts the `toehold` command where `npx toehold` looks for it. npm links
 * the bins of dependencies, not a project's own.
 */
import { execFileSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const compiler = join(root, 'node_modules', 'typescript', 'bin', 'tsc');
// Installed as somebody's dependency without development tools: the published files are there already.
if (existsSync(compiler)) {
  execFileSync(process.execPath, [compiler, '-p', join(root, 'tsconfig.lib.json')], { stdio: 'inherit', cwd: root });
  const main = join(root, 'dist', 'scoring', 'cli', 'main.js');
  chmodSync(main, 0o755);
  const bin = join(root, 'node_modules', '.bin');
  mkdirSync(bin, { recursive: true });
  if (process.platform === 'win32') {
    writeFileSync(join(bin, 'toehold.cmd'), '@node "%~dp0\\..\\..\\dist\\scoring\\cli\\main.js" %*\r\n');
  } else {
    const link = join(bin, 'toehold');
    rmSync(link, { force: true });
    symlinkSync(join('..', '..', 'dist', 'scoring', 'cli', 'main.js'), link);
  }
}

// `npm start`: installs what is missing, builds the game, serves it on this machine and opens it.
// Options: --port N (default 4173, or the next free one), --no-open. Only Node built-ins until then.
import { spawn, spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { ensureInstalled, fail, ROOT } from './install.mjs';
import { serveFolder } from './serve.mjs';

const HELP = `npm start [-- --port N] [-- --no-open]
Installs what is missing, builds the game, serves it at http://localhost:N (default 4173) and opens the browser.`;

function readOptions() {
  try {
    const { values } = parseArgs({
      options: {
        port: { type: 'string', default: '4173' },
        'no-open': { type: 'boolean', default: false },
        help: { type: 'boolean', default: false },
      },
    });
    const port = Number(values.port);
    if (!Number.isInteger(port) || port < 1 || port > 65535)
      fail(`--port: found "${values.port}", allowed are whole numbers from 1 to 65535`);
    return { port, open: !values['no-open'], help: values.help };
  } catch (error) {
    return fail(`${error.message}\n${HELP}`);
  }
}

function build() {
  process.stdout.write('Building ...\n');
  const npm = spawnSync('npm', ['run', '--silent', 'build'], {
    cwd: ROOT,
    encoding: 'utf8',
    shell: process.platform === 'win32',
  });
  if (npm.error) fail(`npm could not be started: ${npm.error.message}`);
  if (npm.status !== 0) fail(`The build failed:\n${npm.stdout}${npm.stderr}`);
}

/** Asks the desktop to open the address; a machine without one just shows the printed line. */
function openBrowser(address) {
  const [command, args] =
    process.platform === 'darwin'
      ? ['open', [address]]
      : process.platform === 'win32'
        ? ['cmd', ['/c', 'start', '', address]]
        : ['xdg-open', [address]];
  const child = spawn(command, args, { stdio: 'ignore', detached: true });
  child.on('error', () => undefined);
  child.unref();
}

const options = readOptions();
if (options.help) process.stdout.write(`${HELP}\n`);
else {
  ensureInstalled();
  build();
  const server = await serveFolder(join(ROOT, 'dist', 'game'), options.port).catch((error) =>
    fail(`The page could not be served: ${error.message}. Try another port: npm start -- --port 8080`),
  );
  const address = `http://localhost:${server.address().port}/`;
  process.stdout.write(
    `Toehold is at ${address}\nOne file for any machine, no network needed: dist/toehold.html\nStop with Ctrl+C.\n`,
  );
  if (options.open) openBrowser(address);
}

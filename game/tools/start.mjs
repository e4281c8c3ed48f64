// `npm start`: installs what is missing, builds the game, serves it on this machine and opens it.
// Options: --port N (default 4173, or the next free one), --no-open. Only Node built-ins.
import { spawn, spawnSync } from 'node:child_process';
import { createReadStream, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join, normalize, sep } from 'node:path';
import { parseArgs } from 'node:util';
import { ensureInstalled, fail, ROOT } from './install.mjs';

const HELP = `npm start [-- --port N] [-- --no-open]
Installs what is missing, builds the game, serves it at http://localhost:N (default 4173) and opens the browser.`;

const TYPES = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
  '.woff': 'font/woff',
  '.wasm': 'application/wasm',
  '.json': 'application/json',
};

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

/** The file a request means, inside `folder` only; null if there is none. */
function fileFor(folder, url) {
  let name;
  try {
    name = decodeURIComponent(new URL(url, 'http://localhost').pathname);
  } catch {
    return null;
  }
  const file = normalize(join(folder, name.endsWith('/') ? `${name}index.html` : name));
  if (!file.startsWith(folder + sep)) return null;
  const found = statSync(file, { throwIfNoEntry: false });
  return found?.isFile() ? file : null;
}

function serve(folder, port, onReady) {
  const server = createServer((request, response) => {
    const file = fileFor(folder, request.url ?? '/');
    if (!file) {
      response.writeHead(404, { 'Content-Type': 'text/plain; charset=utf-8' });
      response.end('There is no such page here.\n');
      return;
    }
    response.writeHead(200, {
      'Content-Type': TYPES[extname(file)] ?? 'application/octet-stream',
      'Cache-Control': 'no-cache',
    });
    createReadStream(file).pipe(response);
  });
  let tried = 0;
  server.on('error', (error) => {
    if (error.code === 'EADDRINUSE' && tried < 20) {
      tried += 1;
      server.listen(port + tried, 'localhost');
    } else fail(`The page could not be served: ${error.message}. Try another port: npm start -- --port 8080`);
  });
  server.on('listening', () => onReady(server.address().port));
  server.listen(port, 'localhost');
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
  serve(join(ROOT, 'dist', 'game'), options.port, (port) => {
    const address = `http://localhost:${port}/`;
    process.stdout.write(
      `Toehold is at ${address}\nOne file for any machine, no network needed: dist/toehold.html\nStop with Ctrl+C.\n`,
    );
    if (options.open) openBrowser(address);
  });
}

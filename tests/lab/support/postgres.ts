import { execFileSync, spawnSync } from 'node:child_process';
import { chownSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';

/** A PostgreSQL server of the tests' own, in a temporary folder. */
export interface TestPostgres {
  /** Address of a new database: empty, or a copy of one that nobody is connected to. */
  newDatabase(copied?: string): string;
  /** Ends the server as a power cut would, by kill -9: no shutdown, no checkpoint. */
  kill(): void;
  /** Starts it on the same data after that. */
  startAgain(): Promise<void>;
  stop(): void;
}

/** The folder of the server's programs: as `npm test` found it, or where Debian puts it, which is not on the PATH. */
function binaries(): string {
  const named = process.env.INITDB_PATH;
  if (named) return dirname(named);
  const root = '/usr/lib/postgresql';
  const versions = existsSync(root) ? readdirSync(root).sort((a, b) => Number(b) - Number(a)) : [];
  for (const version of versions) {
    const bin = join(root, version, 'bin');
    if (existsSync(join(bin, 'initdb'))) return bin;
  }
  throw new Error('The lab is tested on PostgreSQL too: install it (Debian: apt-get install postgresql).');
}

/** How long a killed server may take to start again. */
const PATIENCE_MS = 120_000;

/** Starts a server on a free port; as root through the user `postgres`, whom Debian's package makes. */
export async function startPostgres(): Promise<TestPostgres> {
  const bin = binaries();
  const root = process.getuid?.() === 0;
  const folder = mkdtempSync(join(tmpdir(), 'toehold-pg-'));
  if (root) {
    const id = (what: string): number => Number(execFileSync('id', [what, 'postgres'], { encoding: 'utf8' }));
    chownSync(folder, id('-u'), id('-g'));
  }
  // What could not be started leaves nothing behind.
  process.once('exit', () => rmSync(folder, { recursive: true, force: true }));
  const run = (program: string, args: string[]): string => {
    const command = [join(bin, program), ...args];
    const [first, ...rest] = root ? ['runuser', '-u', 'postgres', '--', ...command] : command;
    const { status, stderr, stdout, error } = spawnSync(first!, rest, { encoding: 'utf8', cwd: folder });
    if (status !== 0) throw new Error(`${program}: ${error?.message ?? stderr}`);
    return stdout;
  };
  const data = join(folder, 'data');
  const port = await freePort();
  run('initdb', ['-D', data, '-A', 'trust', '-U', 'postgres', '--no-sync', '-E', 'UTF8', '--locale=C']);
  const start = (): void => {
    // With its output in a file: a pipe would keep this process waiting for the server.
    run('pg_ctl', [
      ...['-D', data, '-w', '-l', join(folder, 'log'), 'start', '-o'],
      `-p ${port} -c listen_addresses=127.0.0.1 -c unix_socket_directories=${folder}`,
    ]);
  };
  const lock = join(data, 'postmaster.pid');
  const lockedBy = (): number => (existsSync(lock) ? Number(readFileSync(lock, 'utf8').split('\n', 1)[0]) : 0);
  /** What the server wrote last. */
  const said = (): string => readFileSync(join(folder, 'log'), 'utf8').slice(-3000);
  start();
  const at = (name: string): string => `postgres://postgres@127.0.0.1:${port}/${name}`;
  let made = 0;
  return {
    newDatabase: (copied) => {
      const name = `lab${made++}`;
      const like = copied === undefined ? [] : ['-T', new URL(copied).pathname.slice(1)];
      run('createdb', ['-h', '127.0.0.1', '-p', String(port), '-U', 'postgres', ...like, name]);
      return at(name);
    },
    kill: () => {
      const pid = lockedBy();
      // Number 0 would be this process and all beside it.
      if (pid === 0) throw new Error('There is no server to kill.');
      process.kill(pid, 'SIGKILL');
    },
    startAgain: async () => {
      // Processes of the killed server hold its memory until they see that it is gone; on a busy machine that takes them a while.
      const until = performance.now() + PATIENCE_MS;
      for (;;) {
        try {
          start();
          return;
        } catch (error) {
          if (isDead(lockedBy())) rmSync(lock, { force: true });
          if (performance.now() > until) throw new Error(`${error}\n${said()}`);
          await new Promise((resolve) => setTimeout(resolve, 250));
        }
      }
    },
    stop: () => {
      try {
        run('pg_ctl', ['-D', data, '-w', '-m', 'fast', 'stop']);
      } catch (error) {
        // Said, not thrown: it would hide what the test itself came to.
        console.error(String(error), said());
        spawnSync('pkill', ['-KILL', '-f', data]);
      }
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/**
 * Gone, or dead and not yet buried: a server takes a dead one's number for a living one's, and on a busy machine whoever buries the dead may take minutes.
 * Where that cannot be seen it is waited for.
 */
function isDead(pid: number): boolean {
  if (pid === 0 || !existsSync('/proc/self/stat')) return false;
  try {
    return /\) Z /.test(readFileSync(`/proc/${pid}/stat`, 'utf8'));
  } catch {
    return true;
  }
}

export function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.on('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      server.close(() => resolve(typeof address === 'object' && address !== null ? address.port : 0));
    });
  });
}

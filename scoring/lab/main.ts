import { availableParallelism, hostname } from 'node:os';
import { Command, CommanderError, InvalidArgumentError, Option } from 'commander';
import pino, { type Logger } from 'pino';
import { InputError } from '../index.ts';
import { fillDemo } from './demo.ts';
import { type Lab, openLab } from './lab.ts';
import { newCode } from './passwords.ts';
import { runBackup } from './run-backup.ts';
import { runForget } from './run-forget.ts';
import { runRebuild } from './run-rebuild.ts';
import { runWorker } from './run-worker.ts';
import { addresses, serve } from './serve.ts';
import { DATA_FOLDER, type Environment, readEnvironment, recordStore } from './settings.ts';

/** How long a stop may take before the rest is left to the next start, ms. */
const STOP_MS = 30_000;

const whole = (least: number, most: number) => (text: string) => {
  const n = Number(text);
  if (!Number.isInteger(n) || n < least || n > most) {
    throw new InvalidArgumentError(`Allowed: whole numbers from ${least} to ${most}.`);
  }
  return n;
};
const data = () => new Option('--data <folder>', 'where attempts and the embedded database lie').default(DATA_FOLDER);
const threads = () =>
  new Option('--threads <n>', 'attempts scored at once')
    .argParser(whole(0, 64))
    .default(Math.max(1, availableParallelism() - 1));

interface ServeFlags {
  data: string;
  host: string;
  port: number;
  threads: number;
  cert?: string;
  key?: string;
  behindProxy: boolean;
  demo: boolean;
}

function program(env: Environment): Command {
  const lab = new Command('npm run lab --')
    .description('The school lab: classes, exercises handed out, attempts collected and scored.')
    .exitOverride()
    .addHelpText('after', ENVIRONMENT);
  lab
    .command('serve', { isDefault: true })
    .description('Runs the lab and serves its pages.')
    .addOption(data())
    .option('--host <address>', 'address to listen at', '0.0.0.0')
    .option('--port <n>', 'port to listen at', whole(0, 65_535), 4180)
    .addOption(threads())
    .option('--cert <file>', 'certificate in PEM form, for https')
    .option('--key <file>', 'its key')
    .option('--behind-proxy', 'believe X-Forwarded-For and X-Forwarded-Proto of a reverse proxy', false)
    .option('--demo', 'fill an empty lab with an invented class to look round in', false)
    .action((o: ServeFlags) => runServe(o, env));
  lab
    .command('worker')
    .description('Scores attempts of a lab on PostgreSQL, on this or any other machine.')
    .addOption(data())
    .addOption(threads())
    .action((o: { data: string; threads: number }) => runWorker({ ...o, env, log: logger(env) }, untilStopped));
  lab
    .command('rebuild')
    .description('Puts every attempt that has a receipt on the disk back into the database. The lab must be stopped.')
    .addOption(data())
    .action((o: { data: string }) => runRebuild({ ...o, env, say }));
  lab
    .command('forget')
    .description(
      'Says which trainees and attempts are older than so many days; with --really erases them. The lab must be stopped, unless it is on PostgreSQL.',
    )
    .requiredOption('--older-than <days>', 'days that attempts are kept', whole(1, 36_500))
    .option('--really', 'erase, and not only say', false)
    .addOption(data())
    .action((o: { data: string; olderThan: number; really: boolean }) =>
      runForget({ ...o, days: o.olderThan, env, say }),
    );
  for (const [what, says] of [
    ['backup', 'Writes tables and files into an empty folder. The lab must be stopped, unless it is on PostgreSQL.'],
    ['restore', 'Fills an empty lab from such a folder, whichever database either has.'],
  ] as const) {
    lab
      .command(`${what} <folder>`)
      .description(says)
      .addOption(data())
      .action((folder: string, o: { data: string }) => runBackup(what, { ...o, folder, env, say }));
  }
  return lab;
}

const ENVIRONMENT = `
Environment:
  DATABASE_URL      PostgreSQL to use in place of the embedded database
  LAB_WORKER_TOKEN  word shared by service and workers, at least 20 characters
  LAB_URL           for workers: address of the service, to fetch attempts from
  LAB_LOG           silent, error, warn, info (default) or debug; one JSON object a line on the standard error
  LAB_REQUESTS      most requests of one person a minute (default 600)
  LAB_KEEP_DAYS     days that attempts are kept; what is older is erased every night. Left out: kept for ever
  LAB_XAPI_URL      record store (xAPI 1.0.3) that is told of every score; left out: nobody is. For service and workers alike
  LAB_XAPI_LOGIN    its name:password
  LAB_XAPI_HOME     address that stands for the lab in statements (default LAB_URL)
  LAB_SLOWEST_S     seconds after which an attempt is not scored any further (default 600)
`;

function logger(env: Environment): Logger {
  return pino({ level: env.LAB_LOG, base: { process: process.pid, host: hostname() } }, pino.destination(2));
}

function say(text: string): void {
  process.stdout.write(`${text}\n`);
}

async function runServe(o: ServeFlags, env: Environment): Promise<void> {
  if ((o.cert === undefined) !== (o.key === undefined)) {
    throw new InputError('--cert and --key', [
      { path: '', found: 'one without the other', allowed: 'both, or neither' },
    ]);
  }
  // An invented class never lands among a school's own.
  const folder = o.demo && o.data === DATA_FOLDER ? `${DATA_FOLDER}-demo` : o.data;
  const tls = o.cert === undefined || o.key === undefined ? null : { cert: o.cert, key: o.key };
  const log = logger(env);
  const setupCode = newCode();
  const lab = await openLab({
    folder,
    databaseUrl: env.DATABASE_URL ?? null,
    threads: o.threads,
    slowest_s: env.LAB_SLOWEST_S,
    log,
    recordStore: recordStore(env),
    settings: {
      setupCode,
      workerToken: env.LAB_WORKER_TOKEN ?? null,
      behindProxy: o.behindProxy,
      https: tls !== null,
      requestsAMinute: env.LAB_REQUESTS,
      keepDays: env.LAB_KEEP_DAYS ?? null,
    },
  });
  const demo = o.demo ? await fillDemo(lab.parts, new Date()).catch((cause) => undone(lab, cause)) : null;
  demo?.filled.catch((cause) => log.error(cause, 'the invented class is not whole'));
  const served = await serve(lab, { ...o, tls }).catch((cause) => undone(lab, cause));
  say(`The lab is at ${addresses({ ...o, tls }, served.port).join('  ')}`);
  say(
    `Instructors: add lab/ to the address. Data: ${folder}${env.DATABASE_URL === undefined ? '' : ' and PostgreSQL'}`,
  );
  const me = await lab.app.request('/api/me');
  if (demo !== null) say(`Invented class. Sign in as ${demo.instructor} with ${demo.password}`);
  else if (((await me.json()) as { setup: boolean }).setup)
    say(`Nobody is here yet. Code for the first instructor: ${setupCode}`);
  say('Stop with Ctrl+C.');
  await untilStopped();
  log.info('stopping');
  setTimeout(() => process.exit(1), STOP_MS).unref();
  await served.close();
  await lab.stop();
}

/** What was opened is closed before the fault goes on its way. */
async function undone(lab: Lab, cause: unknown): Promise<never> {
  await lab.stop();
  throw cause;
}

/** Until somebody or something asks this process to end. */
function untilStopped(): Promise<void> {
  return new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => resolve());
  });
}

/** @returns exit code: 0 done, 1 a fault, 2 bad input */
async function main(args: string[]): Promise<number> {
  try {
    await program(readEnvironment(process.env)).parseAsync(args, { from: 'user' });
    return 0;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
    if (error instanceof InputError) {
      process.stderr.write(`${error.message}\n`);
      return 2;
    }
    process.stderr.write(`The lab could not run: ${error instanceof Error ? error.message : String(error)}\n`);
    return 1;
  }
}

process.exitCode = await main(process.argv.slice(2));
// The embedded database keeps handles of its own open after it has been closed.
process.exit();

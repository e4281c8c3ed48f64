import { type ChildProcess, spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';

/** A lab as a process of its own. */
export interface LabProcess {
  said: () => string;
  /** Memory of the process, MB; null where the system does not tell. */
  memory_MB: () => number | null;
  stop: () => Promise<void>;
}

/** Starts a lab or a worker and waits until it is ready. @throws Error with what it said when it ends instead */
export async function startLab(
  args: readonly string[],
  env: Record<string, string>,
  ready = /Stop with Ctrl\+C/,
): Promise<LabProcess> {
  const child = spawn(process.execPath, ['--import', 'tsx', 'scoring/lab/main.ts', ...args], {
    env: { ...process.env, LAB_LOG: 'error', ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let said = '';
  for (const stream of [child.stdout, child.stderr])
    stream.on('data', (piece: Buffer) => {
      said += piece.toString();
    });
  await new Promise<void>((resolve, reject) => {
    const look = setInterval(() => {
      if (ready.test(said)) resolve();
      else if (child.exitCode !== null) reject(new Error(`the lab ended: ${said}`));
      else return;
      clearInterval(look);
    }, 50);
  });
  return { said: () => said, memory_MB: () => memoryOf(child), stop: () => ended(child) };
}

async function ended(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null) return;
  const gone = new Promise((resolve) => child.once('exit', resolve));
  child.kill('SIGTERM');
  await gone;
}

function memoryOf({ pid }: ChildProcess): number | null {
  try {
    const found = /VmRSS:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'));
    return found === null ? null : Math.round(Number(found[1]) / 1000);
  } catch {
    return null;
  }
}

/** Somebody at a browser, over a real port. */
export class Caller {
  #cookie = '';
  #csrf = '';
  constructor(private readonly base: string) {}

  /** The first thing an event stream says, and no more of it. */
  async first(path: string): Promise<string> {
    const stop = new AbortController();
    const answer = await fetch(`${this.base}${path}`, { headers: { cookie: this.#cookie }, signal: stop.signal });
    let text = '';
    for await (const piece of answer.body!.pipeThrough(new TextDecoderStream())) {
      text += piece;
      if (text.includes('\n\n')) break;
    }
    stop.abort();
    return text;
  }

  /** @throws Error unless the answer is good */
  async ask(method: string, path: string, body?: unknown): Promise<Record<string, never>> {
    const raw = body instanceof Uint8Array;
    const answer = await fetch(`${this.base}${path}`, {
      method,
      headers: {
        origin: this.base,
        cookie: this.#cookie,
        'x-csrf': this.#csrf,
        ...(body === undefined ? {} : { 'content-type': raw ? 'application/octet-stream' : 'application/json' }),
      },
      ...(body === undefined ? {} : { body: raw ? (body as Uint8Array<ArrayBuffer>) : JSON.stringify(body) }),
    });
    const set = answer.headers.get('set-cookie');
    if (set !== null) this.#cookie = set.split(';')[0]!;
    const json = (await answer.json()) as Record<string, never>;
    if (!answer.ok) throw new Error(`${method} ${path}: ${answer.status} ${JSON.stringify(json)}`);
    if (typeof json.csrf === 'string') this.#csrf = json.csrf;
    return json;
  }
}

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
  const endWithThis = (): void => void child.kill('SIGKILL');
  process.once('exit', endWithThis);
  child.once('exit', () => process.off('exit', endWithThis));
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

import { cpus } from 'node:os';
import type { LabProcess } from './lab-process.ts';

/** Something looked at once a second while a phase runs. */
export interface Watched {
  /** Memory of the service before, at its highest, and over the last quarter of the phase in the mean, MB; null where the system does not tell. */
  memory_MB: { before: number; highest: number; late: number } | null;
  /** Cores of the machine at work in the mean, with load generator, service, database and workers all on them. */
  cores: number;
}

/** Begins to watch; what is returned ends it. */
export function watch(service: LabProcess): () => Watched {
  const before = service.memory_MB();
  const began = { at: performance.now(), busy_s: busy() };
  const seen: number[] = [];
  const look = (): void => {
    const now = service.memory_MB();
    if (now !== null) seen.push(now);
  };
  const timer = setInterval(look, 1000);
  return () => {
    clearInterval(timer);
    look();
    const took_s = (performance.now() - began.at) / 1000;
    const last = seen.slice(-Math.ceil(seen.length / 4));
    return {
      memory_MB:
        before === null || last.length === 0
          ? null
          : { before, highest: Math.max(...seen), late: Math.round(last.reduce((a, b) => a + b, 0) / last.length) },
      cores: (busy() - began.busy_s) / took_s,
    };
  };
}

/** Processor time of the whole machine that was not idle, s. */
function busy(): number {
  return cpus().reduce((sum, { times }) => sum + times.user + times.nice + times.sys + times.irq, 0) / 1000;
}

/** Middle and tails of times, ms. */
export interface Latency {
  p50_ms: number;
  p95_ms: number;
  p99_ms: number;
}

export function latencyOf(times_ms: readonly number[]): Latency {
  const sorted = [...times_ms].sort((a, b) => a - b);
  const at = (share: number): number => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
  return { p50_ms: at(0.5), p95_ms: at(0.95), p99_ms: at(0.99) };
}

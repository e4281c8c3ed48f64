import type { Clock } from '../core/ports.ts';

/** The browser's clock; page and Worker read the same one. */
export const browserClock: Clock = {
  now_ms: () => performance.timeOrigin + performance.now(),
  date_ms: () => Date.now(),
  after(ms, run) {
    const timer = setTimeout(run, ms);
    return () => clearTimeout(timer);
  },
};

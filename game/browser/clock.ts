import type { Clock } from '../core/ports.ts';

/** The browser's clock; page and Worker read the same one. */
export const browserClock: Clock = {
  now_ms: () => performance.timeOrigin + performance.now(),
  date_ms: () => Date.now(),
  written(date_ms) {
    const at = new Date(date_ms);
    const two = (x: number): string => String(x).padStart(2, '0');
    return {
      iso: at.toISOString(),
      day: `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`,
      minute: `${two(at.getHours())}${two(at.getMinutes())}`,
    };
  },
  after(ms, run) {
    const timer = setTimeout(run, ms);
    return () => clearTimeout(timer);
  },
};

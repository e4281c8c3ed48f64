import type { Clock, WrittenDate } from '../../../game/core/ports.ts';

interface Waiting {
  at_ms: number;
  order: number;
  run: () => void;
}

/** A clock that moves only when it is cranked, and runs what was put off in the order it falls due. */
export class CrankClock implements Clock {
  private waiting: Waiting[] = [];
  private count = 0;

  constructor(private now = Date.UTC(2026, 2, 14, 9, 0)) {}

  now_ms(): number {
    return this.now;
  }

  date_ms(): number {
    return this.now;
  }

  /** Its users live in Greenwich. */
  written(date_ms: number): WrittenDate {
    const iso = new Date(date_ms).toISOString();
    return { iso, day: iso.slice(0, 10), minute: iso.slice(11, 16).replace(':', '') };
  }

  after(ms: number, run: () => void): () => void {
    const entry = { at_ms: this.now + ms, order: this.count++, run };
    this.waiting.push(entry);
    return () => {
      this.waiting = this.waiting.filter((w) => w !== entry);
    };
  }

  /** Time passes without anything being run: the machine is busy. */
  spend(ms: number): void {
    this.now += ms;
  }

  /** Runs everything that falls due within `ms`, then stands there. */
  crank(ms: number): void {
    const until = this.now + ms;
    for (let next = this.due(until); next; next = this.due(until)) {
      this.waiting = this.waiting.filter((w) => w !== next);
      this.now = Math.max(this.now, next.at_ms);
      next.run();
    }
    this.now = Math.max(this.now, until);
  }

  private due(until_ms: number): Waiting | null {
    let first: Waiting | null = null;
    for (const w of this.waiting)
      if (
        w.at_ms <= until_ms &&
        (!first || w.at_ms < first.at_ms || (w.at_ms === first.at_ms && w.order < first.order))
      )
        first = w;
    return first;
  }
}

/** Sends one request at a time; while it is out, only the newest of what is asked meanwhile is kept. For handles being dragged. */
export class Latest<T> {
  private waiting: { value: T } | null = null;
  private out = false;

  constructor(private readonly send: (value: T) => void) {}

  ask(value: T): void {
    if (this.out) {
      this.waiting = { value };
      return;
    }
    this.out = true;
    this.send(value);
  }

  answered(): void {
    this.out = false;
    const next = this.waiting;
    this.waiting = null;
    if (next) this.ask(next.value);
  }

  /** Forgets what is out: its answer will not come, or will not be listened to. */
  reset(): void {
    this.out = false;
    this.waiting = null;
  }
}

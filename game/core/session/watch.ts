import type { Clock } from '../ports.ts';

/** How often a look is taken. */
const LOOK_MS = 100;
/** A bench at work says something ten times a second; silent for this long it has stopped. */
export const SILENT_MS = 800;
/** Before its first word a bench may be compiling. */
export const STARTING_MS = 20_000;

/**
 * Notices that a bench at work has fallen silent. Time in which this page itself stood still (a starved machine, a debugger) is not held
 * against the bench: only looks that came when they were due count.
 */
export class Watch {
  private callOff: (() => void) | null = null;
  private silence_ms = 0;
  private due_ms = 0;
  private awake = false;

  constructor(
    private readonly clock: Clock,
    private readonly silent: () => void,
  ) {}

  /** A new bench, which has yet to say its first word. */
  newBench(): void {
    this.awake = false;
    this.stop();
  }

  heard(): void {
    this.awake = true;
    this.silence_ms = 0;
  }

  /** The bench has been given work. */
  start(): void {
    this.stop();
    this.silence_ms = 0;
    this.lookLater();
  }

  stop(): void {
    this.callOff?.();
    this.callOff = null;
  }

  private lookLater(): void {
    this.due_ms = this.clock.now_ms() + LOOK_MS;
    this.callOff = this.clock.after(LOOK_MS, () => this.look());
  }

  private look(): void {
    const late_ms = this.clock.now_ms() - this.due_ms;
    if (late_ms < LOOK_MS) this.silence_ms += LOOK_MS + late_ms;
    if (this.silence_ms >= (this.awake ? SILENT_MS : STARTING_MS)) {
      this.callOff = null;
      this.silent();
    } else this.lookLater();
  }
}

import type { Clock } from '../ports.ts';

/** How often a look is taken. */
const LOOK_MS = 100;
/** A bench at work says something ten times a second; silent over so many looks, 0.8 s, it has stopped. */
const SILENT_LOOKS = 8;
/** Before its first word a bench may be compiling, 20 s. */
const STARTING_LOOKS = 200;

/**
 * Notices that a bench at work has fallen silent. It counts looks and not time: a page that itself stood still (a starved machine, a
 * debugger) does not hold that against the bench.
 */
export class Watch {
  private callOff: (() => void) | null = null;
  private looks = 0;
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
    this.looks = 0;
  }

  /** The bench has been given work. */
  start(): void {
    this.stop();
    this.looks = 0;
    this.lookLater();
  }

  stop(): void {
    this.callOff?.();
    this.callOff = null;
  }

  private lookLater(): void {
    this.callOff = this.clock.after(LOOK_MS, () => this.look());
  }

  private look(): void {
    this.looks += 1;
    if (this.looks >= (this.awake ? SILENT_LOOKS : STARTING_LOOKS)) {
      this.callOff = null;
      this.silent();
    } else this.lookLater();
  }
}

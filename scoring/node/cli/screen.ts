import { type Clean, clean, cleanJson } from '../../schema/clean.ts';

declare const shownBrand: unique symbol;
/** What a terminal is sent: clean lines with our own line ends and returns. Made by `Screen` alone. */
export type Shown = string & { readonly [shownBrand]: true };

/** Where a command's words go. */
export interface Terminal {
  out(text: Shown): void;
  err(text: Shown): void;
  /** Somebody looks at `err` as it is written: a line may be written over, to show how far the work is. */
  live?: boolean;
}

/** The one way to a terminal. Every line is cleaned on its way, so that no name or text in a file can steer it or make a line of its own. */
export class Screen {
  readonly #terminal: Terminal;
  /** Width of the line that is written over; 0: none is there. */
  #over = 0;

  constructor(terminal: Terminal) {
    this.#terminal = terminal;
  }

  get live(): boolean {
    return this.#terminal.live === true;
  }

  /** Lines on the way of results. */
  say(...lines: readonly string[]): void {
    this.#terminal.out(shown(lines.map(clean)));
  }

  /** Lines on the way of errors and remarks. */
  warn(...lines: readonly string[]): void {
    this.#terminal.err(shown(lines.map(clean)));
  }

  /** A value as JSON, for a program; what would steer a terminal is an escape. */
  json(value: unknown): void {
    this.#terminal.out(`${cleanJson(value, 2)}\n` as Shown);
  }

  /** Values as JSON, one a line. */
  jsonLines(values: readonly unknown[]): void {
    this.#terminal.out(values.map((value) => `${cleanJson(value)}\n`).join('') as Shown);
  }

  /** A line written over the one before; nothing where nobody looks. */
  over(line: string): void {
    if (!this.live) return;
    const text = clean(line);
    this.#terminal.err(`\r${text.padEnd(this.#over)}` as Shown);
    this.#over = text.length;
  }

  /** Clears the line that was written over, so that what follows starts on a clean one. */
  endOver(): void {
    if (this.#over === 0) return;
    this.#terminal.err(`\r${' '.repeat(this.#over)}\r` as Shown);
    this.#over = 0;
  }
}

function shown(lines: readonly Clean[]): Shown {
  return lines.map((line) => `${line}\n`).join('') as Shown;
}

const CELLS = 24;
const NAME = 40;

/**
 * How far a long job is, on one line that is written over: share, count, time left. The time left is reckoned from the files welded in this
 * run; those taken from the journal cost nothing.
 */
export class ProgressLine {
  readonly #screen: Screen;
  readonly #started = performance.now();

  constructor(screen: Screen) {
    this.#screen = screen;
  }

  show(p: { done: number; total: number; known: number; file: string }): void {
    const filled = Math.round((CELLS * p.done) / p.total);
    const welded = p.done - p.known;
    const left_s = welded > 0 ? ((performance.now() - this.#started) / 1000 / welded) * (p.total - p.done) : null;
    const left = left_s === null || p.done === p.total ? '' : `, ${leftSaid(left_s)} left`;
    this.#screen.over(
      `${'='.repeat(filled)}${'.'.repeat(CELLS - filled)} ${p.done} of ${p.total}${left}  ${clean(p.file).slice(0, NAME)}`,
    );
  }

  end(): void {
    this.#screen.endOver();
  }
}

function leftSaid(s: number): string {
  if (s < 90) return `about ${Math.max(1, Math.round(s))} s`;
  return s < 5400 ? `about ${Math.round(s / 60)} min` : `about ${Math.round(s / 3600)} h`;
}

export interface Terminal {
  out(text: string): void;
  err(text: string): void;
  /** Somebody looks at `err` as it is written: a line may be written over, to show how far the work is. */
  live?: boolean;
}

/** A name or sentence without control and direction characters, which could steer the terminal; line ends stay. */
export function plain(text: string): string {
  return text.replace(/(?!\n)[\p{Cc}\p{Bidi_Control}]/gu, (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`);
}

const CELLS = 24;
const NAME = 40;

/**
 * How far a long job is, on one line that is written over: share, count, time left. Silent where nobody looks. The time left is reckoned
 * from the files welded in this run; those taken from the journal cost nothing.
 */
export class ProgressLine {
  readonly #terminal: Terminal;
  readonly #started = performance.now();
  #width = 0;

  constructor(terminal: Terminal) {
    this.#terminal = terminal;
  }

  show(p: { done: number; total: number; known: number; file: string }): void {
    if (this.#terminal.live !== true) return;
    const filled = Math.round((CELLS * p.done) / p.total);
    const welded = p.done - p.known;
    const left_s = welded > 0 ? ((performance.now() - this.#started) / 1000 / welded) * (p.total - p.done) : null;
    const text = `${'='.repeat(filled)}${'.'.repeat(CELLS - filled)} ${p.done} of ${p.total}${
      left_s === null || p.done === p.total ? '' : `, ${leftSaid(left_s)} left`
    }  ${plain(p.file).slice(0, NAME)}`;
    this.#terminal.err(`\r${text.padEnd(this.#width)}`);
    this.#width = text.length;
  }

  /** Clears the line, so that what follows starts on a clean one. */
  end(): void {
    if (this.#width === 0) return;
    this.#terminal.err(`\r${' '.repeat(this.#width)}\r`);
    this.#width = 0;
  }
}

function leftSaid(s: number): string {
  if (s < 90) return `about ${Math.max(1, Math.round(s))} s`;
  return s < 5400 ? `about ${Math.round(s / 60)} min` : `about ${Math.round(s / 3600)} h`;
}

import type { HandLine, OpenHand } from '../ports.ts';
import type { HandAnswer, HandTask } from './tasks.ts';

/** One piece of work: the task, made only when a hand is free for it, and what becomes of the answer. */
export interface Piece {
  /** Null: there is nothing to ask, it has been settled already. */
  task: () => Promise<HandTask | null>;
  answered: (answer: HandAnswer) => void;
  /** The hand broke at it (out of memory, or its program did not load). Another takes over for the next. */
  brokeOff: (why: string) => void;
}

/** Helping hands at one kind of work: each at one piece at a time, opened when there is work and sent home after it. */
export class Crew {
  private lines = new Set<HandLine>();
  private release: (() => void)[] = [];
  private run = 0;

  constructor(
    private readonly open: OpenHand,
    private readonly most: number,
  ) {}

  /** Works through all pieces. @returns false when it was stopped before the end */
  async work(pieces: readonly Piece[]): Promise<boolean> {
    this.stop();
    this.run += 1;
    const run = this.run;
    let begun = 0;
    const next = (): Piece | null => (run === this.run && begun < pieces.length ? pieces[begun++]! : null);
    const hands = Math.max(1, Math.min(this.most, pieces.length));
    await Promise.all(Array.from({ length: hands }, () => this.oneHand(next, () => run === this.run)));
    return run === this.run;
  }

  /** Drops what is being done. What has been answered stays answered. */
  stop(): void {
    this.run += 1;
    for (const line of this.lines) line.close();
    this.lines.clear();
    for (const free of this.release.splice(0)) free();
  }

  private async oneHand(next: () => Piece | null, goesOn: () => boolean): Promise<void> {
    let hand: Hand | null = null;
    for (let piece = next(); piece !== null; piece = next()) {
      const task = await piece.task();
      if (!goesOn()) break;
      if (task === null) continue;
      hand ??= this.openHand();
      const said = await hand.ask(task);
      if (!goesOn()) break;
      if ('why' in said) {
        this.sendHome(hand);
        hand = null;
        piece.brokeOff(said.why);
      } else piece.answered(said.answer);
    }
    if (hand !== null) this.sendHome(hand);
  }

  private openHand(): Hand {
    const hand = new Hand(this.open);
    this.lines.add(hand.line);
    this.release.push(() => hand.broken('stopped'));
    return hand;
  }

  private sendHome(hand: Hand): void {
    if (this.lines.delete(hand.line)) hand.line.close();
  }
}

type Said = { answer: HandAnswer } | { why: string };

class Hand {
  readonly line: HandLine;
  private settle: ((said: Said) => void) | null = null;

  constructor(open: OpenHand) {
    this.line = open(
      (answer) => this.say({ answer }),
      (why) => this.broken(why),
    );
  }

  ask(task: HandTask): Promise<Said> {
    return new Promise((resolve) => {
      this.settle = resolve;
      this.line.ask(task);
    });
  }

  broken(why: string): void {
    this.say({ why });
  }

  private say(said: Said): void {
    const { settle } = this;
    this.settle = null;
    settle?.(said);
  }
}

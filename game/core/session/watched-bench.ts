import type { BenchAnswer, BenchRequest } from '../bench/protocol.ts';
import type { BenchLine, Ports } from '../ports.ts';
import { Watch } from './watch.ts';

export interface BenchHooks {
  hear(answer: BenchAnswer): void;
  /** The bench itself broke (it could not be loaded, or ran out of memory). */
  broken(message: string): void;
  /** It fell silent at work; another has taken its place, with nothing on it. */
  replaced(): void;
}

/** The session's bench: watched while it is at work, and replaced when it falls silent. */
export class WatchedBench {
  private line: BenchLine;
  private readonly watch: Watch;

  constructor(
    private readonly ports: Pick<Ports, 'clock' | 'openBench'>,
    private readonly hooks: BenchHooks,
  ) {
    this.watch = new Watch(ports.clock, () => {
      this.line.close();
      this.line = this.open();
      this.hooks.replaced();
    });
    this.line = this.open();
  }

  ask(request: BenchRequest, transfer?: Transferable[]): void {
    this.line.ask(request, transfer);
  }

  /** Gives it work that it has to be heard at. */
  work(request: BenchRequest): void {
    this.watch.start();
    this.line.ask(request);
  }

  /** It has nothing more to do that it would have to be heard at. */
  rest(): void {
    this.watch.stop();
  }

  private open(): BenchLine {
    this.watch.newBench();
    return this.ports.openBench(
      (answer) => {
        this.watch.heard();
        this.hooks.hear(answer);
      },
      (message) => {
        this.watch.stop();
        this.hooks.broken(message);
      },
    );
  }
}

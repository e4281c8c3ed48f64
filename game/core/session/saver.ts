import { resultOf, resultText } from '../../../scoring/index.ts';
import type { BenchAnswer, BenchRequest } from '../bench/protocol.ts';
import { nameOfFile } from '../desk/name-of-file.ts';
import type { Ports } from '../ports.ts';
import type { State } from './state.ts';

/** Hands out what the bench has read off an attempt, with the command line's bytes: in English and millimetres, whatever is on screen. */
export class Saver {
  constructor(
    private readonly ports: Pick<Ports, 'files' | 'clock'>,
    private readonly state: State,
    private readonly ask: (request: BenchRequest) => void,
  ) {}

  /** The result as JSON. Nothing before there is a verdict on the screen. */
  result(): void {
    const judgement = this.state.judgement.peek();
    const name = this.name();
    if (judgement && name)
      this.ports.files.saveAs(resultText(resultOf(judgement)), `${name}.result.json`, 'application/json');
  }

  /** The cut where it stands, as a drawing. */
  cut(): void {
    if (this.state.judgement.peek()) this.ask({ type: 'drawing', y_mm: this.state.cutAt.peek() });
  }

  hear({ svg, y_mm }: Extract<BenchAnswer, { type: 'drawing' }>): void {
    const name = this.name();
    if (name) this.ports.files.saveAs(svg, cutName(name, y_mm), 'image/svg+xml');
  }

  private name(): string | null {
    const done = this.state.finished.peek();
    return done && nameOfFile(done, this.state.shelf.peek(), this.ports.clock).replace(/\.json$/i, '');
  }
}

/** Name of a cut's drawing. @param name of its attempt's file, without its end */
export function cutName(name: string, y_mm: number): string {
  return `${name}.cut-${y_mm.toFixed(1)}mm.svg`;
}

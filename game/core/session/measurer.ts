import type { OwnMarks } from '../../../scoring/index.ts';
import type { BenchAnswer, BenchRequest } from '../bench/protocol.ts';
import type { State } from './state.ts';

/** Fine enough that a mark stands to a fiftieth of a millimetre. */
const SCALE = 60;

/** Lets the trainee measure a cut before the bench says what it reads there. */
export class Measurer {
  constructor(
    private readonly state: Pick<State, 'measuring'>,
    private readonly ask: (request: BenchRequest) => void,
  ) {}

  open(y_mm: number): void {
    this.state.measuring.value = { y_mm, cut: null, reading: null, refused: null };
    this.ask({ type: 'etched', y_mm, scale: SCALE });
  }

  compare(marks: OwnMarks): void {
    const now = this.state.measuring.value;
    if (now) this.ask({ type: 'compareOwn', y_mm: now.y_mm, marks });
  }

  /** Takes the readings away again, so that marks can be moved and compared anew. */
  again(): void {
    const now = this.state.measuring.value;
    if (now) this.state.measuring.value = { ...now, reading: null, refused: null };
  }

  close(): void {
    this.state.measuring.value = null;
  }

  hear(answer: BenchAnswer): void {
    const now = this.state.measuring.value;
    if (!now) return;
    if (answer.type === 'etched' && answer.y_mm === now.y_mm) this.state.measuring.value = { ...now, cut: answer.cut };
    if (answer.type === 'ownReading' && answer.y_mm === now.y_mm)
      this.state.measuring.value = { ...now, reading: answer.reading, refused: answer.refused };
  }
}

import { signal } from '@preact/signals';
import type { EtchedCut, OwnMarks, OwnReading } from '../../../scoring/index.ts';
import type { BenchAnswer, BenchRequest } from '../bench/protocol.ts';

/** A cut being measured by the trainee. */
export interface Measuring {
  y_mm: number;
  /** As it lies under the glass; null until the bench has sawn it. */
  cut: EtchedCut | null;
  /** Beside the bench's own reading; null until compared. */
  reading: OwnReading | null;
  /** Why the marks could not be read. */
  refused: string | null;
}

export const measuring = signal<Measuring | null>(null);

/** Fine enough that a mark stands to a fiftieth of a millimetre. */
const SCALE = 60;

/** Lets the trainee measure a cut before the bench says what it reads there. */
export class Measurer {
  constructor(private readonly ask: (request: BenchRequest) => void) {}

  open(y_mm: number): void {
    measuring.value = { y_mm, cut: null, reading: null, refused: null };
    this.ask({ type: 'etched', y_mm, scale: SCALE });
  }

  compare(marks: OwnMarks): void {
    if (measuring.value) this.ask({ type: 'compareOwn', y_mm: measuring.value.y_mm, marks });
  }

  /** Takes the readings away again, so that marks can be moved and compared anew. */
  again(): void {
    if (measuring.value) measuring.value = { ...measuring.value, reading: null, refused: null };
  }

  close(): void {
    measuring.value = null;
  }

  hear(answer: BenchAnswer): void {
    const now = measuring.value;
    if (!now) return;
    if (answer.type === 'etched' && answer.y_mm === now.y_mm) measuring.value = { ...now, cut: answer.cut };
    if (answer.type === 'ownReading' && answer.y_mm === now.y_mm)
      measuring.value = { ...now, reading: answer.reading, refused: answer.refused };
  }
}

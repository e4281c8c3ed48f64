import type { Recording } from '../../../engine/index.ts';
import { Latest } from '../bench/latest.ts';
import type { BenchAnswer, BenchRequest } from '../bench/protocol.ts';
import type { Comparer } from './comparer.ts';
import type { State } from './state.ts';

/** The first look at a changed attempt: the bench that holds the piece welds the stretch about the cut anew while the whole is welded elsewhere. */
export class FirstLook {
  private turn = 0;
  private recording: Recording | null = null;
  private readonly stretches: Latest<number>;

  constructor(
    private readonly comparer: Comparer,
    state: State,
    ask: (request: BenchRequest) => void,
  ) {
    this.stretches = new Latest((y_mm) => {
      const { turn, recording } = this;
      if (recording)
        ask({
          type: 'stretch',
          turn,
          recording,
          y_mm,
          id: 'beside',
          scale: state.cutScale.peek(),
          language: state.language.peek(),
        });
    });
  }

  /** @param recording the attempt with one thing changed; null: none is looked at */
  of(recording: Recording | null, y_mm: number): void {
    this.turn += 1;
    this.recording = recording;
    this.stretches.reset();
    this.at(y_mm);
  }

  at(y_mm: number): void {
    if (this.recording) this.stretches.ask(y_mm);
  }

  hear({ turn, cut }: Extract<BenchAnswer, { type: 'stretch' }>): void {
    if (turn !== this.turn) return;
    this.stretches.answered();
    if (cut) this.comparer.preview(cut);
    this.comparer.go();
  }
}

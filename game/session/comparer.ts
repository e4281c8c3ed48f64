import type { Recording } from '../../engine/index.ts';
import { cutScale, other, otherBusy, otherCut } from '../state.ts';
import { BenchClient } from '../worker/client.ts';
import { Latest } from '../worker/latest.ts';
import type { BenchAnswer } from '../worker/protocol.ts';

/** Holds a second attempt beside the one on the bench and cuts it at the same height. */
export class Comparer {
  private client: BenchClient | null = null;
  private ready = false;
  private at_mm = 0;
  private readonly cuts = new Latest<number>((y_mm) =>
    this.client?.ask({ type: 'cut', y_mm, id: 'beside', scale: cutScale.peek(), glass: false }),
  );

  constructor(private readonly failed: (message: string) => void) {}

  show(id: string, title: string, recording: Recording, y_mm: number): void {
    this.close();
    this.at_mm = y_mm;
    other.value = { id, title };
    otherBusy.value = { what: 'welding again', share: 0 };
    this.client = new BenchClient((answer) => this.hear(answer), this.failed);
    this.client.ask({ type: 'open', job: 1, recording });
  }

  cut(y_mm: number): void {
    this.at_mm = y_mm;
    if (this.ready) this.cuts.ask(y_mm);
  }

  close(): void {
    this.client?.close();
    this.client = null;
    this.ready = false;
    this.cuts.reset();
    other.value = null;
    otherCut.value = null;
    otherBusy.value = null;
  }

  private hear(answer: BenchAnswer): void {
    switch (answer.type) {
      case 'surface':
        this.client?.ask({ type: 'surfaceBack', buffer: answer.skin }, [answer.skin]);
        return;
      case 'progress':
        otherBusy.value = { what: 'welding again', share: answer.share };
        return;
      case 'ended':
        otherBusy.value = null;
        this.ready = true;
        this.cuts.ask(this.at_mm);
        return;
      case 'cut':
        otherCut.value = answer;
        this.cuts.answered();
        return;
      case 'failed':
        this.close();
        this.failed(answer.message);
        return;
      default:
        return;
    }
  }
}

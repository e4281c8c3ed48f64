import type { Recording } from '../../../engine/index.ts';
import { Latest } from '../bench/latest.ts';
import type { BenchAnswer, CutMessage } from '../bench/protocol.ts';
import type { BenchLine, OpenBench } from '../ports.ts';
import type { Problem } from './problem.ts';
import type { State } from './state.ts';

/** Holds a second attempt beside the one on the bench, on a bench of its own, and cuts it at the same height. */
export class Comparer {
  private line: BenchLine | null = null;
  private ready = false;
  /** Welds what is laid beside; null once it has been told to. */
  private start: (() => void) | null = null;
  private at_mm = 0;
  private readonly cuts = new Latest<number>((y_mm) =>
    this.line?.ask({
      type: 'cut',
      y_mm,
      id: 'beside',
      scale: this.state.cutScale.peek(),
      glass: false,
      language: this.state.language.peek(),
    }),
  );

  private readonly seeks = new Latest<number | null>((t_s) => this.line?.ask({ type: 'seek', t_s }));

  constructor(
    private readonly openBench: OpenBench,
    private readonly state: State,
    private readonly failed: (problem: Problem) => void,
  ) {}

  /** @param waits its bench is made ready and welds nothing before `go`: whatever else is to come first has the machine to itself */
  show(id: string, title: string | null, recording: Recording, y_mm: number, waits = false): void {
    this.close();
    this.at_mm = y_mm;
    this.state.other.value = { id, title };
    this.state.otherBusy.value = { what: 'welding again', share: 0 };
    this.line = this.openBench(
      (answer) => this.hear(answer),
      (message) => this.failed({ code: 'bench-broken', message }),
    );
    const { line } = this;
    this.start = () => line.ask({ type: 'open', job: 1, recording });
    if (!waits) this.go();
  }

  go(): void {
    this.start?.();
    this.start = null;
  }

  cut(y_mm: number): void {
    this.at_mm = y_mm;
    if (this.ready) this.cuts.ask(y_mm);
  }

  /** Goes to the same moment after the strike as the attempt on the bench, so that both grow in step; an attempt that was over stays finished. */
  seek(t_s: number | null): void {
    if (!this.ready) return;
    this.seeks.ask(t_s);
    this.cuts.ask(this.at_mm);
  }

  close(): void {
    this.line?.close();
    this.line = null;
    this.start = null;
    this.ready = false;
    this.cuts.reset();
    this.seeks.reset();
    this.state.other.value = null;
    this.state.otherCut.value = null;
    this.state.otherStretch.value = false;
    this.state.otherBusy.value = null;
    this.state.otherJudgement.value = null;
    this.state.whatIf.value = null;
  }

  /** A first look, from somewhere else, at what is being welded here: it gives way to the cut of the whole piece. */
  preview(cut: CutMessage): void {
    if (this.ready || this.line === null) return;
    this.state.otherCut.value = cut;
    this.state.otherStretch.value = true;
  }

  private hear(answer: BenchAnswer): void {
    switch (answer.type) {
      case 'surface':
        this.line?.ask({ type: 'surfaceBack', buffer: answer.skin }, [answer.skin]);
        if (this.ready) this.seeks.answered();
        return;
      case 'progress':
        this.state.otherBusy.value = { what: 'welding again', share: answer.share };
        return;
      case 'ended':
        this.state.otherBusy.value = null;
        this.ready = true;
        this.seek(this.state.shownTime.peek());
        return;
      case 'cut':
        this.state.otherCut.value = answer;
        this.state.otherStretch.value = false;
        this.cuts.answered();
        return;
      case 'scored':
        this.state.otherJudgement.value = answer.judgement;
        return;
      case 'failed':
        this.close();
        this.failed({ code: 'bench-refused', message: answer.message });
        return;
      default:
        return;
    }
  }
}

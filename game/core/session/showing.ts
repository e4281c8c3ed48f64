import { computed, effect, untracked } from '@preact/signals-core';
import { type AttemptRecording, type Judgement, type RootPlace, resultOf } from '../../../scoring/index.ts';
import type { BenchAnswer, BenchRequest } from '../bench/protocol.ts';
import { nameOfFile } from '../desk/name-of-file.ts';
import type { Ports } from '../ports.ts';
import type { Practice } from '../practice/practice.ts';
import type { Keeper } from './keeper.ts';
import type { Prover } from './prover.ts';
import type { State } from './state.ts';

/** What the showing needs of the session round it. */
interface Around {
  keeper: Keeper;
  prover: Prover;
  clock: Ports['clock'];
  practice: () => Practice;
  job: () => number;
  ask: (request: BenchRequest) => void;
  /** Draws the cut again where it stands. */
  cutAgain: () => void;
}

/** The way of a verdict onto the screen: measured, held back while the trainee is to say something first, shown, proved, set on paper. */
export class Showing {
  constructor(
    private readonly state: State,
    private readonly around: Around,
  ) {
    const inches = computed(() => state.preferences.value.inches);
    effect(() => {
      // Sheet and cut are lettered anew where language or units change.
      state.language.value;
      inches.value;
      untracked(() => {
        if (state.judgement.value === null) return;
        this.askPaper();
        around.cutAgain();
      });
    });
  }

  /** Measured: shown at once, or held back. `fresh`: welded just now, not opened. */
  hear({ judgement, strip }: Extract<BenchAnswer, { type: 'scored' }>, isCoupon: boolean, fresh: boolean): void {
    const { state } = this;
    const { keeper, practice } = this.around;
    const result = resultOf(judgement);
    const done = state.finished.peek();
    state.busy.value = null;
    const naming = state.naming.peek();
    const why = isCoupon && naming ? 'name' : fresh && practice().judgesFirst(result) ? 'judge' : null;
    if (done && fresh && done.recording.origin.kind === 'hand') practice().tested(done.id);
    if (done && !isCoupon) void keeper.keep(done, result);
    if (why === null) {
      this.show(judgement, strip, isCoupon);
      return;
    }
    state.held.value = { judgement, result, strip, why };
    if (why === 'name' && naming) {
      state.naming.value = { ...naming, phase: 'asked' };
      state.opened.value = strip;
    }
    state.announcement.value = { code: 'say-first', why };
  }

  /** Shows what is held back. */
  reveal(): void {
    const held = this.state.held.peek();
    if (!held) return;
    this.state.held.value = null;
    this.show(held.judgement, held.strip, held.why === 'name');
  }

  private show(judgement: Judgement, strip: RootPlace[], isCoupon: boolean): void {
    const { state } = this;
    state.judgement.value = judgement;
    state.opened.value = strip;
    state.announcement.value = { code: 'verdict' };
    const done = state.finished.peek();
    if (!done) return;
    if (!isCoupon) this.around.prover.prove(done.recording as AttemptRecording, resultOf(judgement));
    this.askPaper();
  }

  /** The report in the language on screen, and anew when that changes. */
  private askPaper(): void {
    const { finished, shelf, language, preferences } = this.state;
    const done = finished.peek();
    if (done === null) return;
    this.around.ask({
      type: 'paper',
      job: this.around.job(),
      file: nameOfFile(done, shelf.peek(), this.around.clock),
      language: language.peek(),
      inches: preferences.peek().inches,
    });
  }
}

import { signal } from '@preact/signals-core';
import type { AttemptRecording, OnOneCoupon, TwoTechniques } from '../../../scoring/index.ts';
import type { Ports } from '../ports.ts';
import { Crew } from './crew.ts';

/** Two techniques on one coupon, as far as they are compared. */
export interface TechniquesView {
  stage: 'none' | 'welding' | 'done';
  both: TwoTechniques | null;
  /** Why they cannot be compared; empty: they can. */
  why: string;
}

const NONE: TechniquesView = { stage: 'none', both: null, why: '' };

/** Saws through two techniques: both halves of the attempt on the bench, or it and another as the two sides of one joint. */
export class Techniques {
  readonly view = signal<TechniquesView>(NONE);
  private readonly crew: Crew;

  constructor(ports: Pick<Ports, 'openHand'>) {
    this.crew = new Crew(ports.openHand, 1);
  }

  /** @param at_mm where the hand changed; null: in the middle of the judged length */
  halves(recording: AttemptRecording, at_mm: number | null): Promise<void> {
    return this.compare({ how: 'halves', recording, ...(at_mm === null ? {} : { at_mm }) });
  }

  sides(first: AttemptRecording, second: AttemptRecording): Promise<void> {
    return this.compare({ how: 'sides', first, second });
  }

  clear(): void {
    this.crew.stop();
    this.view.value = NONE;
  }

  private async compare(coupon: OnOneCoupon): Promise<void> {
    this.view.value = { ...NONE, stage: 'welding' };
    const fail = (why: string): void => {
      this.view.value = { stage: 'done', both: null, why };
    };
    await this.crew.work([
      {
        task: async () => ({ type: 'techniques', coupon }),
        answered: (said) => {
          if (said.type !== 'techniques') return;
          if ('reason' in said) fail(said.reason);
          else this.view.value = { stage: 'done', both: said.both, why: '' };
        },
        brokeOff: fail,
      },
    ]);
  }
}

import '../../style/lab.css';
import { render } from 'preact';
import type { Clock } from '../../core/ports.ts';
import type { Session } from '../../core/session/session.ts';
import type { State } from '../../core/session/state.ts';
import { Line } from '../line.ts';
import { ClassBar } from './class-bar.tsx';
import { Membership } from './membership.ts';
import { parcelStore } from './parcel-store.ts';

/** How often own attempts are asked for while one is being scored, ms. */
const ASK_MS = 4000;

/** Puts the class bar under the bench of a page that a lab serves. */
export function joinLab(session: Session, state: State, clock: Clock): void {
  const membership = new Membership(new Line('./'), session, state, { store: parcelStore(), after: clock.after });
  const place = document.createElement('div');
  document.body.append(place);
  document.body.classList.add('in-class');
  render(<ClassBar membership={membership} />, place);
  // Back on the network: what waits goes at once.
  window.addEventListener('online', () => void membership.look());
  const watch = (): void => {
    const { me, mine, outbox } = membership;
    const waits = mine.value.some((a) => a.state === 'waiting') || outbox.sent.value > mine.value.length;
    clock.after(ASK_MS, () => {
      void (me.value === null ? membership.look() : waits ? membership.refresh() : Promise.resolve()).finally(watch);
    });
  };
  void membership.look().finally(watch);
}

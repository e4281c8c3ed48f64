import type { Problem } from '../core/session/problem.ts';
import type { Session } from '../core/session/session.ts';
import { words } from '../locale/index.ts';
import { problem } from '../page.ts';
import { deskTab } from './desk/tab.ts';
import type { DialogName } from './dialog.tsx';
import { couponFile } from './dropped.ts';

interface Props {
  session: Session;
  open: (name: DialogName) => void;
}

/** What went wrong, in a bar that takes nothing away: the attempt on the bench stays. What can be done with a file of another kind, or one that takes long, is offered. */
export function ProblemNote({ session, open }: Props) {
  const what = problem.value;
  if (what === null) return null;
  const offer = offerFor(what, session, open);
  return (
    <div class="problem" role="alert">
      <b>{words.problems.title}</b>
      <p class="why">{words.problems.say(what)}</p>
      {offer && (
        <button
          type="button"
          class="strong"
          onClick={() => {
            problem.value = null;
            offer.take();
          }}
        >
          {offer.said}
        </button>
      )}
      <button
        type="button"
        onClick={() => {
          problem.value = null;
        }}
      >
        {words.problems.close}
      </button>
    </div>
  );
}

/** What can be done with a file that is not opened on the bench; null: nothing here. */
function offerFor(what: Problem, session: Session, open: Props['open']): { said: string; take: () => void } | null {
  if (what.code === 'much-work') return { said: words.problems.goOn, take: what.goOn };
  if (what.code !== 'other-kind') return null;
  const { kind, source } = what;
  const w = words.problems.offers;
  const atDesk = (tab: 'exercise' | 'trainees'): void => {
    deskTab.value = tab;
    open('desk');
  };
  switch (kind) {
    case 'profile':
      return {
        said: w.profile,
        take: () => {
          atDesk('exercise');
          void session.desk.editor.profileFile(source);
        },
      };
    case 'table':
      return {
        said: w.table,
        take: () => {
          atDesk('trainees');
          void session.trainees.rosterFile(source);
        },
      };
    case 'logbook':
      return {
        said: w.logbook,
        take: () => {
          open('attempts');
          void session.opener.logbook(source);
        },
      };
    case 'coupon':
      return source instanceof File
        ? {
            said: w.coupon,
            take: () => {
              couponFile.value = source;
              open('coupon');
            },
          }
        : null;
    default:
      return null;
  }
}

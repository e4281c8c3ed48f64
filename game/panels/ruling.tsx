import { type Advice, type Line, proofSaid } from '../../scoring/index.ts';
import type { Session } from '../core/session/session.ts';
import { helpOf } from '../core/session/shelf.ts';
import { exerciseOf } from '../core/session/state.ts';
import { ready, words } from '../locale/index.ts';
import { busy, finished, held, language, naming, ownJudgement, proof, result } from '../page.ts';
import { JudgeCard, JudgedBeside } from './judge-card.tsx';
import { NameCard } from './name-card.tsx';
import { VerdictMark } from './verdict-mark.tsx';

const w = words.findings;

/** The verdict and the one thing to change first: before the eye on every screen as soon as the bead has been measured. */
export function Ruling({ session }: { session: Session }) {
  const found = result.value;
  const waits = held.value;
  const quiz = naming.value;
  if (quiz && (quiz.phase !== 'told' || found))
    return (
      <section class="first">
        <NameCard session={session} view={quiz} />
      </section>
    );
  if (waits && !busy.value)
    return (
      <section class="first">
        <JudgeCard session={session} held={waits} />
      </section>
    );
  if (!found || busy.value) return null;
  const welded = finished.value?.recording;
  const [first] = found.advice;
  const told = proof.value === 'trying' ? null : proof.value;
  const tried = told && first ? proofSaid(told.told, first.text, language.value) : null;
  return (
    <section class="first">
      <p class="ruling" data-testid="verdict">
        <VerdictMark verdict={found.verdict} />
        {found.profile && <span class="against">{ready(found.profile.title)}</span>}
        {welded && <span class="against">{words.level.welded(helpOf(welded, exerciseOf(welded)))}</span>}
      </p>
      {first && (
        <p class="say" data-testid="first">
          {tried?.says ?? first.text} <ShowMe session={session} advice={first} />
        </p>
      )}
      {proof.value !== null && (
        <p class="proof" role="status" data-testid="proof" data-standing={told?.standing ?? 'trying'}>
          {told === null || tried === null ? w.proof.trying : `${w.proof[told.standing]}: ${tried.note}`}
        </p>
      )}
      {ownJudgement.value && <JudgedBeside own={ownJudgement.value} />}
    </section>
  );
}

export function ShowMe({ session, advice }: { session: Session; advice: Advice }) {
  if (advice.y_mm === null && advice.t_s === null) return null;
  return (
    <button type="button" class="link" onClick={() => session.goTo(advice.y_mm, advice.t_s)}>
      {w.show}
      {advice.y_mm !== null && <span class="unit"> {w.place({ y_mm: advice.y_mm } as Line)}</span>}
    </button>
  );
}

import { exercises } from '../../scoring/index.ts';
import { type Due, dueOf } from '../core/practice/due.ts';
import type { Session } from '../core/session/session.ts';
import { words } from '../locale/index.ts';
import { preferences, shelf, tests } from '../page.ts';
import { VerdictMark } from './verdict-mark.tsx';
import { dayAndTime } from './when.ts';

const w = words.practice;

/** Tests that are due now, for the logbook to offer; nothing where none is. */
export function DueNow({ session, go }: { session: Session; go: (run: () => void) => void }) {
  const due = dueHere(session).filter((d) => d.now);
  if (due.length === 0) return null;
  return (
    <ul class="due" data-testid="due-now">
      {due.map((d) => (
        <DueRow key={d.exercise.name} session={session} due={d} go={go} />
      ))}
    </ul>
  );
}

function known() {
  return [...exercises, ...preferences.value.exercises];
}

function dueHere(session: Session): Due[] {
  return dueOf(shelf.value, tests.value, known(), preferences.value.trainee, session.today_ms());
}

function DueRow({ session, due: d, go }: { session: Session; due: Due; go: (run: () => void) => void }) {
  return (
    <li class={d.now ? 'now' : ''}>
      {d.now ? w.due.now(d.exercise.title, d.step) : w.due.later(d.exercise.title, d.step, dayAndTime(d.due_ms))}{' '}
      {d.now && (
        <button type="button" class="strong" onClick={() => go(() => session.practice.weldTest(d))}>
          {w.due.weld}
        </button>
      )}
    </li>
  );
}

/** Tests that are due or will be, and those that were welded. */
export function DueTests({ session, go }: { session: Session; go: (run: () => void) => void }) {
  const due = dueHere(session);
  const done = [...tests.value].sort((a, b) => b.made_ms - a.made_ms);
  const titleOf = (name: string | null): string => known().find((e) => e.name === name)?.title ?? '';
  return (
    <>
      <h3>{w.due.title}</h3>
      <p>{w.due.text}</p>
      {due.length === 0 && done.length === 0 && <p>{w.due.none}</p>}
      <ul class="due">
        {due.map((d) => (
          <DueRow key={d.exercise.name} session={session} due={d} go={go} />
        ))}
        {done.map((t) => {
          const verdict = shelf.value.find((e) => e.id === t.attempt)?.verdict ?? null;
          return (
            <li key={t.id}>
              {w.due.done(titleOf(t.exercise), t.step, dayAndTime(t.made_ms))}{' '}
              {verdict ? <VerdictMark verdict={verdict} /> : w.due.gone}
            </li>
          );
        })}
      </ul>
    </>
  );
}

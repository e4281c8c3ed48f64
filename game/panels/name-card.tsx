import { useEffect, useRef, useState } from 'preact/hooks';
import type { AdviceCode } from '../../scoring/index.ts';
import type { NamingView } from '../core/practice/views.ts';
import type { Session } from '../core/session/session.ts';
import { words } from '../locale/index.ts';
import { result } from '../page.ts';

const w = words.practice.naming;

/** A coupon whose fault is to be named, and afterwards what it was and what shows it. */
export function NameCard({ session, view }: { session: Session; view: NamingView }) {
  const heading = useRef<HTMLHeadingElement>(null);
  const { phase, level } = view;
  useEffect(() => heading.current?.focus({ preventScroll: true }), [phase]);
  const { right, of } = session.practice.named(level);
  return (
    <section class="naming" aria-label={w.title} data-testid="naming" data-phase={phase}>
      <h2 ref={heading} tabIndex={-1}>
        {w.title} <span class="unit">{w.level(level, right, of)}</span>
      </h2>
      {phase === 'welding' && <p role="status">{w.welding}</p>}
      {phase === 'asked' && <Choices session={session} view={view} />}
      {phase === 'told' && <Told session={session} view={view} />}
      {phase !== 'told' && (
        <p class="buttons">
          <button type="button" class="link" onClick={() => session.practice.leaveNaming()}>
            {w.leave}
          </button>
        </p>
      )}
    </section>
  );
}

function Choices({ session, view }: { session: Session; view: NamingView }) {
  const [said, setSaid] = useState<AdviceCode | null>(null);
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        if (said) session.practice.name(said);
      }}
    >
      <fieldset>
        <legend>{w.ask}</legend>
        {view.choices.map((code) => (
          <label key={code}>
            <input type="radio" name="fault" value={code} checked={said === code} onChange={() => setSaid(code)} />{' '}
            {w.fault(code)}
          </label>
        ))}
      </fieldset>
      <p class="buttons">
        <button type="submit" class="strong" disabled={said === null}>
          {w.say}
        </button>
      </p>
    </form>
  );
}

function Told({ session, view }: { session: Session; view: NamingView }) {
  const { said, was, says, level } = view;
  if (said === null || was === null) return null;
  // The sentence as it is said on the page, in its language.
  const first = result.value?.advice[0];
  const sentence = says !== null && first?.code === was ? first.text : says;
  return (
    <>
      <p role="status">
        <b>{said === was ? w.right(w.fault(was)) : w.wrong(w.fault(said), w.fault(was))}</b> {sentence}
      </p>
      {said !== was && <p>{w.wouldShow(w.fault(said), w.shows(said))}</p>}
      <p>{w.here(w.shows(was))}</p>
      <p class="buttons">
        <button type="button" class="strong" onClick={() => session.practice.nameFault(level)}>
          {w.next}
        </button>
        <button type="button" onClick={() => session.practice.leaveNaming()}>
          {w.leave}
        </button>
      </p>
    </>
  );
}

import { useSignal } from '@preact/signals';
import { useEffect, useRef, useState } from 'preact/hooks';
import { labWords } from '../../locale/lab-words.ts';
import { foundOut, ready } from '../../locale/live.ts';
import { Dialog } from '../../panels/dialog.tsx';
import type { Membership } from './membership.ts';

const w = labWords.join;

/** One line under the bench: whose class, which exercise handed out, and whether everything has arrived. */
export function ClassBar({ membership: m }: { membership: Membership }) {
  const [asking, ask] = useState(false);
  const me = m.me.value;
  const { outbox } = m;
  // A freshly sent attempt shows with the lab's number.
  useEffect(() => {
    void m.refresh();
  }, [outbox.sent.value]);
  // Joined: the sheet is done with, and does not come back when its trainee leaves.
  useEffect(() => {
    if (m.joined.value) ask(false);
  }, [m.joined.value]);
  const bar = useRef<HTMLElement>(null);
  // On a telephone the bar stands over the bench, and what floats there has to know how high it is.
  useEffect(() => {
    const { current } = bar;
    if (current === null) return undefined;
    const watch = new ResizeObserver(() => {
      document.documentElement.style.setProperty('--classbar', `${current.offsetHeight}px`);
    });
    watch.observe(current);
    return () => watch.disconnect();
  }, []);
  const waiting = outbox.parcels.value.filter((p) => p.refused === null && p.trainee === me?.id);
  const others = outbox.parcels.value.filter((p) => p.trainee !== me?.id);
  const refused = outbox.parcels.value.filter((p) => p.refused !== null && p.trainee === me?.id);
  const chosen = m.chosen.value;
  const mine = m.mine.value.filter((a) => a.assignment === chosen?.id);
  return (
    <aside ref={bar} class="classbar quiet" aria-label={w.title}>
      {m.joined.value ? (
        <>
          <b>
            {me?.class} · {me?.name}
          </b>
          <label>
            {w.handedOut}{' '}
            <select
              value={chosen?.id ?? ''}
              onChange={(event) => {
                const next = m.assigned.value.find((a) => a.id === event.currentTarget.value);
                if (next) m.take(next);
                else m.chosen.value = null;
              }}
            >
              <option value="">{m.assigned.value.length === 0 ? w.nothing : w.choose}</option>
              {m.assigned.value.map((a) => (
                <option key={a.id} value={a.id}>
                  {ready(a.title)}
                </option>
              ))}
            </select>
          </label>
          <span class="unit" data-testid="class-state">
            {chosen === null ? w.notHandedIn : w.handsIn(chosen.mostAttempts)}{' '}
            {w.state(outbox.sending.value, waiting.length)}{' '}
            {m.refusal.value === 'no answer' && waiting.length === 0 && w.noAnswer}{' '}
            {chosen !== null && w.arrived(mine.length, mine.filter((a) => a.state === 'scored').length)}
          </span>
          <button type="button" class="link" onClick={() => void m.leave()}>
            {w.leave}
          </button>
        </>
      ) : (
        <>
          <button type="button" onClick={() => ask(true)}>
            {w.open}
          </button>
          <span class="unit">{m.refusal.value === 'no answer' && w.noAnswer}</span>
        </>
      )}
      {others.length > 0 && (
        <span class="unit">{w.others(others.length, [...new Set(others.map((p) => p.name))])}</span>
      )}
      {refused.map((p) => (
        <span key={p.key} class="unit">
          {w.refused(p.title, foundOut(p.refused ?? ''))}{' '}
          <button type="button" class="link" onClick={() => void outbox.forget(p.key)}>
            {w.forget}
          </button>
        </span>
      ))}
      {asking && !m.joined.value && <JoinDialog membership={m} close={() => ask(false)} />}
    </aside>
  );
}

function JoinDialog({ membership: m, close }: { membership: Membership; close: () => void }) {
  const code = useSignal('');
  const name = useSignal('');
  const pin = useSignal('');
  const { refusal } = m;
  return (
    <Dialog title={w.title} close={close}>
      <form
        class="labform"
        onSubmit={(event) => {
          event.preventDefault();
          void m.join(code.value.trim(), name.value.trim(), pin.value.trim());
        }}
      >
        <label>
          {w.code}
          <input
            required
            maxLength={20}
            autocomplete="off"
            value={code}
            onInput={(e) => (code.value = e.currentTarget.value)}
          />
        </label>
        <label>
          {w.name}
          <input
            required
            maxLength={120}
            autocomplete="off"
            value={name}
            onInput={(e) => (name.value = e.currentTarget.value)}
          />
        </label>
        <label>
          {w.pin}
          <input
            maxLength={6}
            inputMode="numeric"
            autocomplete="off"
            value={pin}
            onInput={(e) => (pin.value = e.currentTarget.value)}
          />
        </label>
        {refusal.value !== null && (
          <p role="alert">{refusal.value === 'no answer' ? w.noAnswer : foundOut(refusal.value.message)}</p>
        )}
        <p class="buttons">
          <button type="submit" class="strong">
            {w.join}
          </button>
          <button type="button" onClick={close}>
            {w.cancel}
          </button>
        </p>
        <p class="unit">{w.kept}</p>
      </form>
    </Dialog>
  );
}

import { useState } from 'preact/hooks';
import type { Session } from '../core/session/session.ts';
import { ready, words } from '../locale/index.ts';
import { notice, robotWelding, torchState, unfinished } from '../page.ts';
import { dayAndTime } from './when.ts';

const w = words.unfinished;

/** Attempts that were never ended: each can be welded again up to where it was left, or thrown away. */
export function UnfinishedList({ session, taken }: { session: Session; taken: () => void }) {
  return (
    <ul class="unfinished">
      {unfinished.value.map((u) => (
        <li key={u.id}>
          <p>
            {w.said(
              ready(u.title ?? words.shelf.untitled),
              u.made_ms === 0 ? u.id : dayAndTime(u.made_ms),
              u.duration_s,
            )}{' '}
            {u.damaged !== null && w.damaged(u.damaged)} {u.damaged === null && u.otherEngine && w.otherEngine}
          </p>
          <p class="buttons">
            {u.damaged === null ? (
              <button
                type="button"
                class="strong"
                onClick={() => {
                  void session.opener.unfinished(u.id);
                  taken();
                }}
              >
                {w.take}
              </button>
            ) : (
              <button type="button" onClick={() => void session.keeper.saveRaw(u.id)}>
                {words.shelf.saveRaw}
              </button>
            )}
            <button type="button" onClick={() => void session.keeper.forget(u.id)}>
              {w.remove}
            </button>
          </p>
        </li>
      ))}
    </ul>
  );
}

/**
 * Attempts left unended, and what else the user should know: under the sentence, so that it covers nothing. While something is welded it is not
 * seen but keeps its room, so that the joint does not move under the hand.
 */
export function Notices({ session }: { session: Session }) {
  const [later, setLater] = useState<readonly string[]>([]);
  const welding = torchState.value === 'welding' || torchState.value === 'out' || robotWelding.value;
  const due = unfinished.value.filter((u) => !later.includes(u.id));
  const put = (): void => setLater(unfinished.value.map((u) => u.id));
  if (due.length === 0 && notice.value === null) return null;
  return (
    <div class={welding ? 'notes away' : 'notes'}>
      {due.length > 0 && (
        <section class="notice" aria-label={w.title} data-testid="unfinished">
          <b>{w.title}</b>
          <UnfinishedList session={session} taken={put} />
          <button type="button" class="link" onClick={put}>
            {w.later}
          </button>
        </section>
      )}
      {notice.value && (
        <section class="notice" role="status">
          <p>{words.notice[notice.value]}</p>
          <button
            type="button"
            class="link"
            onClick={() => {
              notice.value = null;
            }}
          >
            {words.notice.close}
          </button>
        </section>
      )}
    </div>
  );
}

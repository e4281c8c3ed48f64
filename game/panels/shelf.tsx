import { useState } from 'preact/hooks';
import type { Session } from '../core/session/session.ts';
import type { AttemptEntry } from '../core/session/shelf.ts';
import { ready, words } from '../locale/index.ts';
import { persistent, removed, shelf, unfinished } from '../page.ts';
import { Dialog, type DialogName } from './dialog.tsx';
import { Logbook } from './logbook.tsx';
import { PracticeSheet } from './practice.tsx';
import { ProblemNote } from './problem.tsx';
import { UnfinishedList } from './unfinished.tsx';
import { VerdictMark } from './verdict-mark.tsx';
import { dayAndTime } from './when.ts';

const w = words.shelf;

/** Attempts this browser keeps. */
export function ShelfDialog({
  session,
  open,
  close,
}: {
  session: Session;
  open: (name: DialogName) => void;
  close: () => void;
}) {
  const [leaf, setLeaf] = useState<'list' | 'log' | 'practice'>('list');
  return (
    <Dialog title={{ list: w.title, log: words.logbook.title, practice: words.practice.leaf }[leaf]} close={close}>
      <p class="leaves">
        <button type="button" aria-pressed={leaf === 'list'} onClick={() => setLeaf('list')}>
          {words.logbook.list}
        </button>
        <button type="button" aria-pressed={leaf === 'log'} onClick={() => setLeaf('log')}>
          {words.logbook.title}
        </button>
        <button type="button" aria-pressed={leaf === 'practice'} onClick={() => setLeaf('practice')}>
          {words.practice.leaf}
        </button>
      </p>
      {leaf === 'log' && <Logbook session={session} opened={close} />}
      {leaf === 'list' && <Kept session={session} close={close} />}
      {leaf === 'practice' && <PracticeSheet session={session} close={close} />}
      <p class="buttons">
        <button type="button" class="strong" onClick={close}>
          {words.about.close}
        </button>
      </p>
      <ProblemNote session={session} open={open} />
    </Dialog>
  );
}

function Kept({ session, close }: { session: Session; close: () => void }) {
  return (
    <>
      {unfinished.value.length > 0 && (
        <>
          <h3>{words.unfinished.heading}</h3>
          <UnfinishedList session={session} taken={close} />
        </>
      )}
      {removed.value && (
        <p class="putback" role="status">
          {w.removed(ready(removed.value.entry.title ?? w.untitled), dayAndTime(removed.value.entry.made_ms))}{' '}
          <button type="button" class="link" onClick={() => void session.keeper.putBack()}>
            {w.putBack}
          </button>
        </p>
      )}
      {shelf.value.length === 0 ? (
        <p>{w.empty}</p>
      ) : (
        <ul class="shelf">
          {shelf.value.map((entry) => (
            <Row key={entry.id} session={session} entry={entry} close={close} />
          ))}
        </ul>
      )}
      <p class="unit">
        {persistent.value === null ? w.unasked : persistent.value ? w.persistent : w.clearable} {w.drop}
      </p>
    </>
  );
}

function Row({ session, entry, close }: { session: Session; entry: AttemptEntry; close: () => void }) {
  const bad = entry.damaged !== null;
  return (
    <li class={bad ? 'damaged' : ''}>
      <span class="when">{entry.made_ms === 0 ? '' : dayAndTime(entry.made_ms)}</span>
      <span class="title">
        {bad && entry.title === null ? entry.id : ready(entry.title ?? w.untitled)}
        {entry.damaged !== null && <span class="unit"> {w.damaged(entry.damaged)}</span>}
      </span>
      <span class="unit helped">{bad ? '' : words.level.helped[entry.helped]}</span>
      <span class="unit trend" title={w.trendTitle}>
        {typeof entry.score === 'number' && w.trend(entry.score)}
      </span>
      {entry.verdict ? <VerdictMark verdict={entry.verdict} /> : <span class="verdict" />}
      {bad ? (
        <button type="button" onClick={() => void session.keeper.saveRaw(entry.id)}>
          {w.saveRaw}
        </button>
      ) : (
        <button
          type="button"
          onClick={() => {
            void session.opener.kept(entry.id);
            close();
          }}
        >
          {w.open}
        </button>
      )}
      <button type="button" class="link" onClick={() => void session.keeper.forget(entry.id)}>
        {w.remove}
      </button>
    </li>
  );
}

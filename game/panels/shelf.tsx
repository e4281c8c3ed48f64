import { words } from '../locale/index.ts';
import type { Session } from '../session/session.ts';
import { shelf } from '../state.ts';
import { Dialog } from './dialog.tsx';
import { VerdictMark } from './verdictMark.tsx';

/** Attempts this browser keeps. */
export function ShelfDialog({ session, close }: { session: Session; close: () => void }) {
  return (
    <Dialog title={words.shelf.title} close={close}>
      {shelf.value.length === 0 ? (
        <p>{words.shelf.empty}</p>
      ) : (
        <ul class="shelf">
          {shelf.value.map((entry) => (
            <li key={entry.id}>
              <span class="when">
                {new Date(entry.made_ms).toLocaleString([], { dateStyle: 'medium', timeStyle: 'short' })}
              </span>
              <span class="title">{entry.title}</span>
              <span class="unit helped">{words.level.helped[entry.helped]}</span>
              <span class="unit trend" title={words.shelf.trendTitle}>
                {entry.score !== null && words.shelf.trend(entry.score)}
              </span>
              {entry.verdict ? <VerdictMark verdict={entry.verdict} /> : <span class="verdict" />}
              <button
                type="button"
                onClick={() => {
                  void session.openKept(entry.id);
                  close();
                }}
              >
                {words.shelf.open}
              </button>
              <button type="button" class="link" onClick={() => void session.remove(entry.id)}>
                {words.shelf.remove}
              </button>
            </li>
          ))}
        </ul>
      )}
      <p class="unit">{words.shelf.drop}</p>
      <p class="buttons">
        <button type="button" class="strong" onClick={close}>
          {words.about.close}
        </button>
      </p>
    </Dialog>
  );
}

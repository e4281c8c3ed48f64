import { useRef, useState } from 'preact/hooks';
import { PenCheck } from '../core/hand/pen.ts';
import { words } from '../locale/index.ts';
import { preferences, setPreference } from '../page.ts';
import { Dialog } from './dialog.tsx';

const p = words.pen;
const WAYS = ['left', 'right', 'towards', 'away'] as const;

/** The pen is believed only after it has been seen to report four different leans. */
export function PenCheckForm({ close }: { close: () => void }) {
  const check = useRef(new PenCheck());
  const [, again] = useState(0);
  const see = (event: PointerEvent): void => {
    if (event.pointerType !== 'pen') return;
    if (check.current.see(event.tiltX, event.tiltY)) setPreference('penTilts', true);
    again((n) => n + 1);
  };
  return (
    <Dialog title={p.title} close={close}>
      <p>{p.text}</p>
      <div class="penfield" onPointerMove={see} onPointerDown={see}>
        {p.field}
      </div>
      <ul class="ways">
        {WAYS.map((way) => (
          <li key={way} class={check.current.seen[way] ? 'seen' : ''}>
            {check.current.seen[way] ? '✓ ' : ''}
            {p[way]}
          </li>
        ))}
      </ul>
      {preferences.value.penTilts && <p role="status">{p.passed}</p>}
      <p class="buttons">
        <button type="button" class="strong" onClick={close}>
          {p.close}
        </button>
      </p>
    </Dialog>
  );
}

import { useEffect, useState } from 'preact/hooks';
import { words } from '../locale/index.ts';
import { showing } from '../page.ts';
import { begin, type ChalkSpot, drawOn, pathOfStroke, type Stroke } from './chalk-strokes.ts';

const w = words.replay.chalk;

/** Drawing over what is shown to a room: with the pen down the page below rests; nothing of it is kept. */
export function Chalk() {
  const on = showing.value;
  const [drawing, setDrawing] = useState(false);
  const [strokes, setStrokes] = useState<readonly Stroke[]>([]);
  // What was drawn goes with the show.
  useEffect(() => {
    if (on) return;
    setDrawing(false);
    setStrokes([]);
  }, [on]);
  if (!on) return null;
  return (
    <>
      <svg
        class={drawing ? 'chalk down' : 'chalk'}
        viewBox="0 0 1000 1000"
        preserveAspectRatio="none"
        role="img"
        aria-label={w.board}
        data-testid="chalk"
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId);
          const at = spotOf(event);
          setStrokes((before) => begin(before, at));
        }}
        onPointerMove={(event) => {
          if (!event.currentTarget.hasPointerCapture(event.pointerId)) return;
          const to = spotOf(event);
          setStrokes((before) => drawOn(before, to));
        }}
      >
        {strokes.map((stroke, i) => {
          const d = pathOfStroke(stroke);
          return (
            <g key={`${i} ${stroke[0]?.x} ${stroke[0]?.y}`}>
              <path class="under" d={d} />
              <path d={d} />
            </g>
          );
        })}
      </svg>
      <p class="chalkbar buttons">
        <button type="button" aria-pressed={drawing} onClick={() => setDrawing(!drawing)}>
          {drawing ? w.stop : w.draw}
        </button>
        {strokes.length > 0 && (
          <>
            <button type="button" onClick={() => setStrokes(strokes.slice(0, -1))}>
              {w.back}
            </button>
            <button type="button" onClick={() => setStrokes([])}>
              {w.wipe}
            </button>
          </>
        )}
      </p>
    </>
  );
}

function spotOf(event: PointerEvent): ChalkSpot {
  return { x: event.clientX / innerWidth, y: event.clientY / innerHeight };
}

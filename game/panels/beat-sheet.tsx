import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { QUANTUM, type Recording } from '../../engine/index.ts';
import type { Motion } from '../../scoring/index.ts';
import { PACES } from '../core/session/player.ts';
import type { Session } from '../core/session/session.ts';
import { words } from '../locale/index.ts';
import { duration_s, exercise, finished, held, pace, playing, result, shownTime } from '../page.ts';
import { ShowButton } from './show.tsx';

const HEIGHT = 92;
const LEFT_Y = 30;
const RIGHT_Y = 66;
const INSET = 10;
/** A hand that goes no farther aside than this on either side of the root, mm, is drawn by it: a straight run does not look like a weave. */
const LEAST_ASIDE_MM = 2;
/** The hand's line has a corner at most this often, px. */
const CORNER_PX = 1.5;
/** The farthest from the middle that it is drawn. */
const MOST_PX = 25;
/** Step of the scrubber. */
const STEP_S = 0.05;

/**
 * Time as a two-line staff, one line a toe: pauses are bars as long as they lasted, root crossings strokes with a dot. Those are read within the
 * judged length; a fine line is the hand itself from strike to end, wherever the arc burnt.
 */
export function BeatSheet({ session }: { session: Session }) {
  const box = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(600);
  useEffect(() => {
    const element = box.current;
    if (!element) return;
    const sizes = new ResizeObserver(() => setWidth(element.clientWidth));
    sizes.observe(element);
    // By pointer any bar or dot leads to its place; by key the slider above reaches the same moments.
    const click = (event: MouseEvent): void => {
      const note = event.target instanceof Element ? event.target.closest<SVGElement>('.note') : null;
      if (note) session.goTo(Number(note.dataset.y), Number(note.dataset.t));
    };
    element.addEventListener('click', click);
    return () => {
      sizes.disconnect();
      element.removeEventListener('click', click);
    };
  }, [session]);
  const end = duration_s.value;
  const kind = exercise.value.joint.kind;
  const x = (t: number): number => INSET + (end > 0 ? (t / end) * (width - 2 * INSET) : 0);
  const shown = shownTime.value;
  const motion = (result.value ?? held.value?.result)?.motion;
  return (
    <section class="beat" aria-label={words.beat.title}>
      <div class="beathead">
        <h2>{words.beat.title}</h2>
        {finished.value && <Transport session={session} end={end} />}
      </div>
      <div ref={box} class="staffbox">
        <svg class="staff" width={width} height={HEIGHT} role="img" aria-label={words.beat.title}>
          <title>{words.beat.title}</title>
          <line class="line" x1={INSET} x2={width - INSET} y1={LEFT_Y} y2={LEFT_Y} />
          <line class="line" x1={INSET} x2={width - INSET} y1={RIGHT_Y} y2={RIGHT_Y} />
          <text class="name" x={INSET} y={LEFT_Y - 13}>
            {words.beat.left[kind]}
          </text>
          <text class="name" x={INSET} y={RIGHT_Y + 22}>
            {words.beat.right[kind]}
          </text>
          {finished.value && <HandLine recording={finished.value.recording} x={x} />}
          {motion && <Notes motion={motion} x={x} />}
          {finished.value && shown !== null && <line class="now" x1={x(shown)} x2={x(shown)} y1={8} y2={HEIGHT - 8} />}
        </svg>
        {finished.value ? <Scrubber session={session} end={end} /> : <p class="teach">{words.beat.empty}</p>}
      </div>
    </section>
  );
}

/** How far aside the hand was, the farthest of the attempt's strokes on the toes' lines. */
function HandLine({ recording, x }: { recording: Recording; x: (t: number) => number }) {
  const { poses, rate_Hz } = recording;
  const px_s = x(1) - x(0);
  const path = useMemo(() => {
    const burning = poses.u.filter((_, n) => poses.trigger[n] === 1).map((u) => Math.abs(u) * QUANTUM.u_mm);
    const far = burning.sort((a, b) => a - b)[Math.floor(0.95 * burning.length)] ?? 0;
    const px_mm = (RIGHT_Y - LEFT_Y) / 2 / Math.max(far, LEAST_ASIDE_MM);
    const every = Math.max(1, Math.floor((CORNER_PX * rate_Hz) / Math.max(px_s, 1e-3)));
    let d = '';
    let on = false;
    for (let n = 0; n < poses.u.length; n += every) {
      if (poses.trigger[n] !== 1) {
        on = false;
        continue;
      }
      const aside = Math.max(-MOST_PX, Math.min(MOST_PX, poses.u[n]! * QUANTUM.u_mm * px_mm));
      d += `${on ? 'L' : 'M'}${x(n / rate_Hz).toFixed(1)} ${((LEFT_Y + RIGHT_Y) / 2 + aside).toFixed(1)}`;
      on = true;
    }
    return d;
  }, [poses, rate_Hz, px_s]);
  return <path class="hand" d={path} />;
}

function Notes({ motion, x }: { motion: Motion; x: (t: number) => number }) {
  const { target } = exercise.value;
  const kind = exercise.value.joint.kind;
  return (
    <g>
      {motion.toes.map((visit) => {
        const y = visit.toe === 'B' ? LEFT_Y : RIGHT_Y;
        const asked = visit.toe === 'B' ? target.pauseB_s : target.pauseA_s;
        const name = visit.toe === 'B' ? words.beat.left[kind] : words.beat.right[kind];
        const from = x(visit.from_s);
        return (
          <g key={`${visit.toe}${visit.from_s}`} class="note" data-y={visit.y_mm} data-t={visit.to_s}>
            <title>{words.beat.pause(name, visit.pause_s, visit.filled)}</title>
            {asked && (
              <rect
                class="asked"
                x={x(visit.from_s + asked.from)}
                width={Math.max(1, x(asked.to) - x(asked.from))}
                y={y - 9}
                height={18}
              />
            )}
            <rect
              class={visit.filled === false ? 'bar early' : 'bar'}
              x={from}
              width={Math.max(1.5, x(visit.to_s) - from)}
              y={y - 4}
              height={8}
            />
          </g>
        );
      })}
      {motion.crossings.map((c) => (
        <g key={c.t_s} class="note" data-y={c.y_mm} data-t={c.t_s}>
          <title>{words.beat.crossing(c.lead_mm, c.onFront)}</title>
          <line class="cross" x1={x(c.t_s)} x2={x(c.t_s)} y1={LEFT_Y + 6} y2={RIGHT_Y - 6} />
          <circle class={c.onFront ? 'dot front' : 'dot'} cx={x(c.t_s)} cy={(LEFT_Y + RIGHT_Y) / 2} r={3.2} />
        </g>
      ))}
    </g>
  );
}

/** Plays the attempt and says which moment is on show. */
function Transport({ session, end }: { session: Session; end: number }) {
  const shown = shownTime.value;
  return (
    <div class="transport">
      <button
        type="button"
        class="play"
        onClick={() => {
          if (!playing.value && shown === null) session.seek(0);
          playing.value = !playing.value;
        }}
      >
        {playing.value ? words.replay.pause : words.replay.play}
      </button>
      {shown !== null && (
        <button
          type="button"
          onClick={() => {
            playing.value = false;
            session.seek(null);
          }}
        >
          {words.replay.finished}
        </button>
      )}
      <button
        type="button"
        aria-label={words.replay.back}
        title={words.replay.back}
        onClick={() => session.player.step(-1)}
      >
        ‹
      </button>
      <button type="button" aria-label={words.replay.on} title={words.replay.on} onClick={() => session.player.step(1)}>
        ›
      </button>
      <label class="pace">
        <span class="spoken">{words.replay.pace}</span>
        <select
          value={String(pace.value)}
          onChange={(event) => {
            pace.value = Number(event.currentTarget.value);
          }}
        >
          {PACES.map((times) => (
            <option key={times} value={String(times)}>
              {words.replay.times(times)}
            </option>
          ))}
        </select>
      </label>
      <ShowButton />
      <span class="time">{shown === null ? words.replay.whole : words.replay.at(shown, end)}</span>
    </div>
  );
}

/** Lies under the staff on the same seconds: joint, torch and cut go to the time under the thumb. */
function Scrubber({ session, end }: { session: Session; end: number }) {
  return (
    <input
      type="range"
      class="scrubber"
      aria-label={words.replay.slider}
      min={0}
      max={end}
      step={STEP_S}
      value={shownTime.value ?? end}
      onInput={(event) => {
        playing.value = false;
        const at = Number(event.currentTarget.value);
        // The last step may stop short of the end; the far end of the slider means the finished piece.
        session.seek(at > end - STEP_S ? null : at);
      }}
    />
  );
}

import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { PictureSpot } from '../../../scoring/index.ts';
import { real } from '../../locale/real-words.ts';
import { apart, type Chosen, inLine, type MarkSet, movePoint, pointsOf, removePoint, type Step } from './marks.ts';

interface BoardPicture {
  href: string | null;
  width: number;
  height: number;
}

interface Props {
  picture: BoardPicture;
  steps: readonly Step[];
  marks: MarkSet;
  /** Step whose points are being set. */
  active: string;
  chosen: Chosen | null;
  /** Marks are looked at, not set. */
  fixed: boolean;
  place: (at: PictureSpot) => void;
  change: (marks: MarkSet, chosen: Chosen | null) => void;
  /** Lines laid over the picture, in its pixels. */
  children?: ComponentChildren;
  /** Shown under the picture, at the right. */
  foot?: ComponentChildren;
}

/** A press this near a mark takes hold of it, CSS pixels. */
const HOLD_PX = 12;
/** A press that moves farther than this drags the mark or pans the picture instead of setting a mark. */
const MOVE_PX = 4;
const ZOOMS = [1, 1.5, 2, 3, 4, 6];

/** A picture with marks set on it: click to set, drag to move, drag beside the marks to pan, arrow keys to nudge. */
export function Board({ picture, steps, marks, active, chosen, fixed, place, change, children, foot }: Props) {
  const frame = useRef<HTMLDivElement>(null);
  const sheet = useRef<SVGSVGElement>(null);
  const [fit, setFit] = useState(1);
  const [zoom, setZoom] = useState(1);
  const scale = fit * zoom;
  const now = useRef({ marks, active, chosen, place, change, scale, fixed });
  now.current = { marks, active, chosen, place, change, scale, fixed };

  useEffect(() => {
    const element = frame.current;
    if (!element) return;
    const measure = (): void =>
      setFit(Math.min(element.clientWidth / picture.width, element.clientHeight / picture.height) || 1);
    measure();
    const sizes = new ResizeObserver(measure);
    sizes.observe(element);
    return () => sizes.disconnect();
  }, [picture.width, picture.height]);

  useEffect(() => {
    const element = sheet.current;
    const around = frame.current;
    if (!element || !around) return;
    return listen(element, around, now);
  }, []);

  return (
    <div class="board">
      <div ref={frame} class="boardframe">
        <svg
          ref={sheet}
          class={fixed ? 'boardsheet fixed' : 'boardsheet'}
          viewBox={`0 0 ${picture.width} ${picture.height}`}
          width={picture.width * scale}
          height={picture.height * scale}
          tabindex={0}
          role="application"
          aria-label={real.board.label}
          data-testid="board"
        >
          {picture.href && <image href={picture.href} width={picture.width} height={picture.height} />}
          {children}
          <MarkShapes steps={steps} marks={marks} chosen={chosen} unit={1 / scale} />
        </svg>
      </div>
      <div class="boardfoot">
        <label class="zoom">
          {real.board.zoom}
          <input
            type="range"
            min={0}
            max={ZOOMS.length - 1}
            step={1}
            value={ZOOMS.indexOf(zoom)}
            onInput={(event) => setZoom(ZOOMS[Number(event.currentTarget.value)])}
          />
          {zoom} ×
        </label>
        {foot}
      </div>
    </div>
  );
}

type Now = { current: Pick<Props, 'marks' | 'active' | 'chosen' | 'place' | 'change' | 'fixed'> & { scale: number } };

/** A press not yet lifted: where it began, what it took hold of, where the picture was scrolled to. */
interface Press {
  x: number;
  y: number;
  left: number;
  top: number;
  moved: boolean;
  held: Chosen | null;
  off: PictureSpot;
}

function listen(element: SVGSVGElement, around: HTMLElement, now: Now): () => void {
  let press: Press | null = null;

  const spot = (event: PointerEvent): PictureSpot => {
    const box = element.getBoundingClientRect();
    return {
      x: round((event.clientX - box.left) / now.current.scale),
      y: round((event.clientY - box.top) / now.current.scale),
    };
  };
  const near = (at: PictureSpot): Chosen | null => {
    let found: Chosen | null = null;
    let least = HOLD_PX / now.current.scale;
    for (const [step, points] of Object.entries(now.current.marks))
      for (const [index, point] of points.entries())
        if (apart(point, at) < least) {
          least = apart(point, at);
          found = { step, index };
        }
    return found;
  };
  const down = (event: PointerEvent): void => {
    if (event.button !== 0) return;
    element.setPointerCapture(event.pointerId);
    const at = spot(event);
    const held = now.current.fixed ? null : near(at);
    const mark = held && pointsOf(now.current.marks, held.step)[held.index];
    press = {
      x: event.clientX,
      y: event.clientY,
      left: around.scrollLeft,
      top: around.scrollTop,
      moved: false,
      held,
      // A mark keeps its distance from the finger that drags it.
      off: mark ? { x: mark.x - at.x, y: mark.y - at.y } : { x: 0, y: 0 },
    };
  };
  const move = (event: PointerEvent): void => {
    if (!press) return;
    if (Math.hypot(event.clientX - press.x, event.clientY - press.y) > MOVE_PX) press.moved = true;
    if (!press.moved) return;
    if (press.held) {
      const at = spot(event);
      const to = { x: round(at.x + press.off.x), y: round(at.y + press.off.y) };
      now.current.change(movePoint(now.current.marks, press.held, to), press.held);
      return;
    }
    around.scrollLeft = press.left - (event.clientX - press.x);
    around.scrollTop = press.top - (event.clientY - press.y);
  };
  const up = (event: PointerEvent): void => {
    const { fixed, active, place, change, marks } = now.current;
    // A click on a mark of the same kind chooses it; beside a mark of another kind it sets a new one, however near.
    if (press && !press.moved && !fixed) {
      if (press.held?.step === active) change(marks, press.held);
      else place(spot(event));
    }
    press = null;
  };
  const cancel = (): void => {
    press = null;
  };
  const key = (event: KeyboardEvent): void => {
    const { chosen, marks, fixed, scale, change } = now.current;
    if (!chosen || fixed) return;
    const at = pointsOf(marks, chosen.step)[chosen.index];
    if (!at) return;
    const step = (event.shiftKey ? 10 : 1) / scale;
    const ways: Record<string, [number, number]> = {
      ArrowLeft: [-step, 0],
      ArrowRight: [step, 0],
      ArrowUp: [0, -step],
      ArrowDown: [0, step],
    };
    const way = ways[event.key];
    if (way) change(movePoint(marks, chosen, { x: round(at.x + way[0]), y: round(at.y + way[1]) }), chosen);
    else if (event.key === 'Delete' || event.key === 'Backspace') change(removePoint(marks, chosen), null);
    else return;
    event.preventDefault();
  };
  element.addEventListener('pointerdown', down);
  element.addEventListener('pointermove', move);
  element.addEventListener('pointerup', up);
  element.addEventListener('pointercancel', cancel);
  element.addEventListener('keydown', key);
  return () => {
    element.removeEventListener('pointerdown', down);
    element.removeEventListener('pointermove', move);
    element.removeEventListener('pointerup', up);
    element.removeEventListener('pointercancel', cancel);
    element.removeEventListener('keydown', key);
  };
}

/** A hundredth of a picture's pixel is finer than any hand. */
function round(x: number): number {
  return Math.round(x * 100) / 100;
}

interface ShapesProps {
  steps: readonly Step[];
  marks: MarkSet;
  chosen: Chosen | null;
  /** Length of a CSS pixel in the picture's. */
  unit: number;
}

/** The marks: a cross for root and scale, a ring for toes, dots along lines. Each drawn twice, so that it shows on light and dark metal. */
export function MarkShapes({ steps, marks, chosen, unit }: ShapesProps) {
  return (
    <g class="marksset">
      {steps.map((step) => {
        const points = pointsOf(marks, step.id);
        const line = step.joined && points.length > 1 ? inLine(points) : null;
        return (
          <g key={step.id} data-step={step.id}>
            {line && <Twice d={`M${line.map((p) => `${p.x} ${p.y}`).join('L')}`} unit={unit} thin />}
            {points.map((p, i) => (
              <g key={`${step.id}${i.toString()}`}>
                <Twice d={shape(step.shape, p, unit)} unit={unit} />
                {chosen?.step === step.id && chosen.index === i && (
                  <circle
                    class="chosen"
                    cx={p.x}
                    cy={p.y}
                    r={13 * unit}
                    stroke-width={1.4 * unit}
                    stroke-dasharray={3 * unit}
                  />
                )}
              </g>
            ))}
          </g>
        );
      })}
    </g>
  );
}

function Twice({ d, unit, thin }: { d: string; unit: number; thin?: boolean }) {
  const width = (thin ? 1 : 1.8) * unit;
  return (
    <>
      <path class="under" d={d} stroke-width={width + 2.4 * unit} />
      <path class="over" d={d} stroke-width={width} />
    </>
  );
}

function shape(kind: Step['shape'], p: PictureSpot, unit: number): string {
  const r = (kind === 'dot' ? 2.6 : kind === 'ring' ? 5.5 : 9) * unit;
  if (kind === 'cross') return `M${p.x - r} ${p.y}h${2 * r}M${p.x} ${p.y - r}v${2 * r}`;
  return `M${p.x - r} ${p.y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0z`;
}

/** What lies under the chosen mark, larger. */
export function Loupe({
  picture,
  steps,
  marks,
  chosen,
  children,
}: Omit<Props, 'foot' | 'active' | 'fixed' | 'place' | 'change'>) {
  const at = chosen ? pointsOf(marks, chosen.step)[chosen.index] : undefined;
  if (!at) return null;
  const half = Math.max(picture.width, picture.height) / 24;
  return (
    <figure class="loupe">
      <svg viewBox={`${at.x - half} ${at.y - half} ${2 * half} ${2 * half}`} aria-label={real.board.loupe} role="img">
        {picture.href && <image href={picture.href} width={picture.width} height={picture.height} />}
        {children}
        <MarkShapes steps={steps} marks={marks} chosen={null} unit={half / 70} />
      </svg>
    </figure>
  );
}

import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { PictureSpot } from '../../../scoring/index.ts';
import { real } from '../../locale/real-words.ts';
import { BoardHand, type BoardNow } from './board-hand.ts';
import { type Chosen, inLine, type MarkSet, pointsOf, type Step } from './marks.ts';

interface BoardPicture {
  href: string | null;
  width: number;
  height: number;
}

interface Props extends Omit<BoardNow, 'scale'> {
  picture: BoardPicture;
  steps: readonly Step[];
  /** Lines laid over the picture, in its pixels. */
  children?: ComponentChildren;
  /** Shown under the picture, at the right. */
  foot?: ComponentChildren;
}

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
    return new BoardHand(element, around, now).listen();
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

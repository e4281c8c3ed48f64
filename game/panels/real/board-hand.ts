import type { PictureSpot } from '../../../scoring/index.ts';
import { apart, type Chosen, type MarkSet, movePoint, pointsOf, removePoint } from './marks.ts';

/** A press this near a mark takes hold of it, CSS pixels. */
const HOLD_PX = 12;
/** A press that moves farther than this drags the mark or pans the picture instead of setting a mark. */
const MOVE_PX = 4;

/** The board as it stands, read anew at every event. */
export interface BoardNow {
  marks: MarkSet;
  /** Step whose points are being set. */
  active: string;
  chosen: Chosen | null;
  /** Marks are looked at, not set. */
  fixed: boolean;
  /** CSS pixels a picture's pixel. */
  scale: number;
  place: (at: PictureSpot) => void;
  change: (marks: MarkSet, chosen: Chosen | null) => void;
}

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

/** Pointer and keys on a board: click to set, drag to move, drag beside the marks to pan, arrow keys to nudge. */
export class BoardHand {
  private press: Press | null = null;

  constructor(
    private readonly sheet: SVGSVGElement,
    private readonly around: HTMLElement,
    private readonly now: { readonly current: BoardNow },
  ) {}

  /** Listens until the function returned is called. */
  listen(): () => void {
    const off = new AbortController();
    const { signal } = off;
    this.sheet.addEventListener('pointerdown', (event) => this.down(event), { signal });
    this.sheet.addEventListener('pointermove', (event) => this.move(event), { signal });
    this.sheet.addEventListener('pointerup', (event) => this.up(event), { signal });
    this.sheet.addEventListener('pointercancel', () => this.letGo(), { signal });
    this.sheet.addEventListener('keydown', (event) => this.key(event), { signal });
    return () => off.abort();
  }

  private spot(event: PointerEvent): PictureSpot {
    const box = this.sheet.getBoundingClientRect();
    const { scale } = this.now.current;
    return { x: round((event.clientX - box.left) / scale), y: round((event.clientY - box.top) / scale) };
  }

  private near(at: PictureSpot): Chosen | null {
    const { marks, scale } = this.now.current;
    let found: Chosen | null = null;
    let least = HOLD_PX / scale;
    for (const [step, points] of Object.entries(marks))
      for (const [index, point] of points.entries())
        if (apart(point, at) < least) {
          least = apart(point, at);
          found = { step, index };
        }
    return found;
  }

  private down(event: PointerEvent): void {
    if (event.button !== 0) return;
    this.sheet.setPointerCapture(event.pointerId);
    const { fixed, marks } = this.now.current;
    const at = this.spot(event);
    const held = fixed ? null : this.near(at);
    const mark = held && pointsOf(marks, held.step)[held.index];
    this.press = {
      x: event.clientX,
      y: event.clientY,
      left: this.around.scrollLeft,
      top: this.around.scrollTop,
      moved: false,
      held,
      // A mark keeps its distance from the finger that drags it.
      off: mark ? { x: mark.x - at.x, y: mark.y - at.y } : { x: 0, y: 0 },
    };
  }

  private move(event: PointerEvent): void {
    const { press } = this;
    if (!press) return;
    if (Math.hypot(event.clientX - press.x, event.clientY - press.y) > MOVE_PX) press.moved = true;
    if (!press.moved) return;
    if (press.held) {
      const { marks, change } = this.now.current;
      const at = this.spot(event);
      const to = { x: round(at.x + press.off.x), y: round(at.y + press.off.y) };
      change(movePoint(marks, press.held, to), press.held);
      return;
    }
    this.around.scrollLeft = press.left - (event.clientX - press.x);
    this.around.scrollTop = press.top - (event.clientY - press.y);
  }

  private up(event: PointerEvent): void {
    const { press } = this;
    const { fixed, active, place, change, marks } = this.now.current;
    // A click on a mark of the same kind chooses it; beside a mark of another kind it sets a new one, however near.
    if (press && !press.moved && !fixed) {
      if (press.held?.step === active) change(marks, press.held);
      else place(this.spot(event));
    }
    this.letGo();
  }

  private letGo(): void {
    this.press = null;
  }

  private key(event: KeyboardEvent): void {
    const { chosen, marks, fixed, scale, change } = this.now.current;
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
  }
}

/** A hundredth of a picture's pixel is finer than any hand. */
function round(x: number): number {
  return Math.round(x * 100) / 100;
}

/** Speeds of the torch under the arrow keys, mm/s: across as fast as a weave crosses, up as slow as a weld climbs. */
const ACROSS_MMPS = 14;
const UP_MMPS = 5;
const FINE = 0.4;

const ARROWS = ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown'] as const;
type Arrow = (typeof ARROWS)[number];

export interface KeyboardHost {
  /** Space went down or up. */
  trigger(down: boolean): void;
  finish(): void;
  /** The keys moved the torch by this much. */
  nudge(du_mm: number, dy_mm: number): void;
}

/** Arrow keys move the torch, space is the trigger, Enter ends the attempt, Shift moves finely. */
export class KeyboardTorch {
  private readonly down = new Set<Arrow>();
  private fine = false;

  constructor(private readonly host: KeyboardHost) {}

  attach(pane: HTMLElement): () => void {
    const keyDown = (event: KeyboardEvent): void => {
      this.fine = event.shiftKey;
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      if (isArrow(event.key)) this.down.add(event.key);
      else if (event.key === ' ' && !event.repeat) this.host.trigger(true);
      else if (event.key === 'Enter') this.host.finish();
      else if (event.key !== ' ') return;
      event.preventDefault();
    };
    const keyUp = (event: KeyboardEvent): void => {
      this.fine = event.shiftKey;
      if (isArrow(event.key)) this.down.delete(event.key);
      else if (event.key === ' ') {
        this.host.trigger(false);
        event.preventDefault();
      }
    };
    const blur = (): void => {
      this.down.clear();
      this.host.trigger(false);
    };
    pane.addEventListener('keydown', keyDown);
    pane.addEventListener('keyup', keyUp);
    pane.addEventListener('blur', blur);
    return () => {
      pane.removeEventListener('keydown', keyDown);
      pane.removeEventListener('keyup', keyUp);
      pane.removeEventListener('blur', blur);
    };
  }

  get moving(): boolean {
    return this.down.size > 0;
  }

  tick(dt_s: number): void {
    if (!this.moving) return;
    const pace = this.fine ? FINE : 1;
    const across = Number(this.down.has('ArrowRight')) - Number(this.down.has('ArrowLeft'));
    const up = Number(this.down.has('ArrowUp')) - Number(this.down.has('ArrowDown'));
    this.host.nudge(across * ACROSS_MMPS * pace * dt_s, up * UP_MMPS * pace * dt_s);
  }
}

function isArrow(key: string): key is Arrow {
  return (ARROWS as readonly string[]).includes(key);
}

import type { Pose } from '../../../engine/index.ts';
import { type Exercise, handAlone } from '../../../scoring/index.ts';
import { PoseClock } from '../bench/pose-clock.ts';
import type { TorchSample } from '../hand/sample.ts';

/** A look is taken twice a second, at the last six seconds: some five cycles. */
const LOOK = 50;
const WINDOW = 600;
/** Looks in a row that hold before the guides go, and that do not before they come back. */
const HELD = 2;
const LOST = 2;
/** The band widens by this share each time the hand holds on without guides, and to no more than this many times its width. */
const WIDENS = 1.1;
const WIDEST = 2;

/** What the seen guides are about. */
const GUIDED = ['beat', 'width', 'pause A', 'pause B'] as const;

/**
 * Guides by bandwidth: shown while the hand is outside the band, gone while it is inside, and the longer it holds the farther it may stray before they
 * come back (bandwidth feedback: Sherwood, Percept. Mot. Skills 66, 1988, 535-542; Winstein and Schmidt 1990; from memory). Told by the hand alone, so that no lucky
 * bead takes a guide away. A hand that is not weaving yet is outside.
 */
export class Bandwidth {
  private readonly clock: PoseClock;
  private readonly poses: Pose[] = [];
  private since = 0;
  private row = 0;
  private widen = 1;
  shown = true;

  constructor(
    private readonly exercise: Exercise,
    start_ms: number,
  ) {
    this.clock = new PoseClock(start_ms);
  }

  /** Readings of the hand as they come. Returns whether guides are to be seen. */
  add(samples: readonly TorchSample[], until_ms: number): boolean {
    this.clock.add(samples, until_ms);
    for (let pose = this.clock.take(); pose; pose = this.clock.take()) {
      this.poses.push(pose);
      this.since += 1;
    }
    if (this.poses.length > WINDOW) this.poses.splice(0, this.poses.length - WINDOW);
    if (this.since >= LOOK && this.poses.length >= WINDOW) {
      this.since = 0;
      this.look();
    }
    return this.shown;
  }

  private look(): void {
    const inside = this.inside();
    if (this.shown) {
      this.row = inside ? this.row + 1 : 0;
      if (this.row < HELD) return;
      this.shown = false;
      this.row = 0;
      return;
    }
    if (inside) {
      this.row = 0;
      this.widen = Math.min(WIDEST, this.widen * WIDENS);
      return;
    }
    this.row += 1;
    if (this.row < LOST) return;
    this.shown = true;
    this.row = 0;
    this.widen = 1;
  }

  private inside(): boolean {
    const readings = handAlone(this.poses, this.exercise, this.widen);
    const asked = GUIDED.filter((m) => bandOf(this.exercise, m));
    return asked.every((m) => readings.find((r) => r.measure === m)?.inside === true);
  }
}

function bandOf({ target }: Exercise, measure: (typeof GUIDED)[number]): boolean {
  const bands = {
    beat: target.cyclesPerSecond,
    width: target.width_mm,
    'pause A': target.pauseA_s,
    'pause B': target.pauseB_s,
  };
  return bands[measure] !== null;
}

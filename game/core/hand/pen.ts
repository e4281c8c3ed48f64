/** How the torch is held where the device cannot tell. */
export interface Hold {
  tipToWork_mm: number;
  workAngle_deg: number;
  travelAngle_deg: number;
}

const EVEN_WORK_ANGLE = 45;
/** Poses beyond this make no weld and no sense; the engine would refuse them. */
const MOST_LEAN_DEG = 40;

/**
 * A pen's tilt as torch angles. tiltX is the lean to the right: the torch leans over the right plate, so its angle from that plate's
 * face falls below 45. tiltY is the lean towards the hand, below the joint: the wire points up, which is push.
 */
export function penAngles(tiltX_deg: number, tiltY_deg: number): Omit<Hold, 'tipToWork_mm'> {
  const clamp = (x: number): number => Math.max(-MOST_LEAN_DEG, Math.min(MOST_LEAN_DEG, x));
  return { workAngle_deg: EVEN_WORK_ANGLE - clamp(tiltX_deg), travelAngle_deg: clamp(tiltY_deg) };
}

/** Lean the check asks for in each direction before it believes the pen, degrees. */
const CHECK_LEAN_DEG = 15;

interface PenCheckState {
  left: boolean;
  right: boolean;
  towards: boolean;
  away: boolean;
}

/** Watches a pen being leaned four ways. Many pens report tilt as 0 for ever; those never pass. */
export class PenCheck {
  readonly seen: PenCheckState = { left: false, right: false, towards: false, away: false };

  see(tiltX_deg: number, tiltY_deg: number): boolean {
    this.seen.left ||= tiltX_deg <= -CHECK_LEAN_DEG;
    this.seen.right ||= tiltX_deg >= CHECK_LEAN_DEG;
    this.seen.towards ||= tiltY_deg >= CHECK_LEAN_DEG;
    this.seen.away ||= tiltY_deg <= -CHECK_LEAN_DEG;
    return this.passed;
  }

  get passed(): boolean {
    const { left, right, towards, away } = this.seen;
    return left && right && towards && away;
  }
}

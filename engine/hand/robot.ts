/** The robot hand: follows a weave, perfectly or with seeded faults of a human kind. Marked as a robot wherever it is recorded. */

import type { Pose } from '../input/pose.ts';
import { POSE_RATE_HZ } from '../input/pose.ts';
import { createRandom, type Random } from '../numerics/random.ts';
import { type WeaveOptions, weaveAt } from './weave.ts';

/** Imperfections of the robot hand; all zero is a perfect follower. */
export interface HandFaults {
  seed: number;
  /** RMS of aim wander, mm. */
  tremor_mm: number;
  /** Sideways drift per 100 mm climbed, mm. */
  driftU_mm: number;
  /** Tip-to-work grown per 100 mm climbed, mm. */
  driftTip_mm: number;
  /** Travel angle grown per 100 mm climbed, degrees. */
  driftTravel_deg: number;
  /** First-order lag of the hand, s. */
  lag_s: number;
  /** Relative spread of cycle durations and pauses. */
  timing: number;
  /** Relative spread of the pauses at one toe, the beat kept: what is not waited is spent crossing. Left out: even. */
  pauseSpreadA?: number;
  pauseSpreadB?: number;
  /** Offset of the aim up the joint at the root crossings (negative: crosses back in the puddle), mm. */
  lead_mm: number;
}

/** Hand tremor wanders with about this time constant (physiological tremor and corrections, no source). */
const TREMOR_TIME_S = 0.15;
/** Time without trigger at the end, so that the last of the puddle freezes in the recording. */
const TAIL_S = 1.5;
/** A re-strike: out for so long that the crater sets at its edge, on for a moment, a little under where the arc went out. Common practice, no source. */
const RE_STRIKE = { off_s: 0.8, on_s: 0.5, under_mm: 1 } as const;
/** Added to the seed for the pauses' own random numbers, so that they leave every other fault as it was. */
const PAUSE_SEED = 7919;
/** Hands do not aim farther off the joint than this. */
const FURTHEST_MM = 14;

/** A hand that follows its weave exactly; the seed matters once faults are added. */
export function noFaults(seed = 1): HandFaults {
  return { seed, tremor_mm: 0, driftU_mm: 0, driftTip_mm: 0, driftTravel_deg: 0, lag_s: 0, timing: 0, lead_mm: 0 };
}

/**
 * Faults of one overall amount, 0 (none) to 1 (a beginner), in fixed proportion; what `--hand seed:amount` means.
 */
export function handOfAmount(seed: number, amount: number): HandFaults {
  return {
    seed,
    tremor_mm: 0.6 * amount,
    driftU_mm: 1.5 * amount,
    driftTip_mm: 4 * amount,
    driftTravel_deg: 6 * amount,
    lag_s: 0.05 * amount,
    timing: 0.25 * amount,
    lead_mm: -0.8 * amount,
  };
}

/** Poses of a whole attempt at POSE_RATE_HZ: trigger, shelf, weave up to the length, trigger off, short re-strikes where the weave asks for them. */
export function* weaveHand(w: WeaveOptions, faults: HandFaults = noFaults()): Generator<Pose> {
  const random = createRandom(faults.seed);
  const waits = createRandom(faults.seed + PAUSE_SEED);
  const dt = 1 / POSE_RATE_HZ;
  const top = w.start_mm + w.length_mm;
  let phase = 0;
  let stretch = cycleStretch(random.normal(), faults.timing);
  let cycle = unevenPauses(w, faults, waits);
  let wanderU = 0;
  let wanderY = 0;
  let handU = 0;
  let handY = w.start_mm;
  let started = false;
  const keep = dt / TREMOR_TIME_S;
  const kick = faults.tremor_mm * Math.sqrt(2 * keep);
  let y = w.start_mm;
  let t = 0;
  const pose = (trigger: boolean): Pose => {
    const climbed = Math.max(0, y - w.start_mm) / 100;
    return {
      u_mm: clampTo(handU, FURTHEST_MM),
      y_mm: handY,
      tipToWork_mm: w.tipToWork_mm + faults.driftTip_mm * climbed,
      workAngle_deg: w.workAngle_deg,
      travelAngle_deg: w.travelAngle_deg + faults.driftTravel_deg * climbed,
      trigger,
    };
  };
  while (y < top) {
    const point = weaveAt(cycle, phase);
    wanderU += -keep * wanderU + kick * random.normal();
    wanderY += -keep * wanderY + kick * random.normal();
    const climbed = Math.max(0, y - w.start_mm) / 100;
    const aimU = point.u_mm + wanderU + faults.driftU_mm * climbed;
    const aimY = y + point.ahead_mm + wanderY + (t >= w.shelf_s ? faults.lead_mm * (1 - point.away) : 0);
    const follow = faults.lag_s > 0 && started ? dt / (dt + faults.lag_s) : 1;
    handU += follow * (aimU - handU);
    handY += follow * (aimY - handY);
    started = true;
    yield pose(true);
    t += dt;
    if (t >= w.shelf_s) y += w.travel_mmps * dt;
    phase += (w.cyclesPerSecond * dt) / stretch;
    if (phase >= 1) {
      phase -= 1;
      stretch = cycleStretch(random.normal(), faults.timing);
      cycle = unevenPauses(w, faults, waits);
    }
  }
  if (w.reStrikes !== undefined && w.reStrikes > 0) {
    handU = 0;
    handY -= RE_STRIKE.under_mm;
    for (let k = 0; k < w.reStrikes; k++) {
      for (let n = 0; n < RE_STRIKE.off_s * POSE_RATE_HZ; n++) yield pose(false);
      for (let n = 0; n < RE_STRIKE.on_s * POSE_RATE_HZ; n++) yield pose(true);
    }
  }
  for (let n = 0; n < TAIL_S * POSE_RATE_HZ; n++) yield pose(false);
}

function cycleStretch(normal: number, timing: number): number {
  return Math.max(0.4, 1 + timing * normal);
}

/** The weave of one cycle: each toe's pause drawn by itself where a spread is asked, never below none. */
function unevenPauses(w: WeaveOptions, faults: HandFaults, waits: Random): WeaveOptions {
  const { pauseSpreadA = 0, pauseSpreadB = 0 } = faults;
  if (pauseSpreadA === 0 && pauseSpreadB === 0) return w;
  const a = Math.max(0, 1 + pauseSpreadA * waits.normal());
  const b = Math.max(0, 1 + pauseSpreadB * waits.normal());
  return { ...w, pauseA_s: w.pauseA_s * a, pauseB_s: w.pauseB_s * b };
}

function clampTo(x: number, limit: number): number {
  return x > limit ? limit : Math.max(x, -limit);
}

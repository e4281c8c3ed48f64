import type { Exercise, HandTarget } from '../schema/exercise.ts';
import type { Band } from '../schema/leeway.ts';

/**
 * What every exercise of the Tern Dock workshop starts from. Tern Dock, a community boatyard school whose trainees weld brackets for
 * floating walkways, its people and its readings are invented.
 */

type Joint = Exercise['joint'];
type Process = Exercise['process'];
type Weave = Exercise['demonstration'];

const bench: Joint = {
  kind: 'tee',
  plateA_mm: 6,
  plateB_mm: 6,
  plateWidth_mm: 75,
  length_mm: 90,
  gap_mm: 0,
  startTemp_C: 20,
  ambient_C: 20,
  sink_WpmmK: 0.0005,
  tabs: false,
};

const machine: Process = {
  wire_mm: 0.9,
  feed_mpmin: 5.8,
  volts_V: 20.5,
  gas: 'M21-ArC-18',
  tip_mm: 0,
  nozzle_mm: 16,
};

export const vee: Weave = {
  pattern: 'inverted-v',
  cyclesPerSecond: 0.9,
  width_mm: 5.5,
  travel_mmps: 2.7,
  pauseA_s: 0.25,
  pauseB_s: 0.25,
  apex_mm: 2.5,
  firstToe: 'A',
  tipToWork_mm: 12,
  workAngle_deg: 45,
  travelAngle_deg: 8,
  // Held longer, the metal stands up over the settled face before it has wetted in.
  shelf_s: 0.4,
  start_mm: 2,
  length_mm: 86,
};

/** Symmetric band. */
function around(middle: number, give: number): Band {
  return { from: round2(middle - give), to: round2(middle + give) };
}

function round2(x: number): number {
  return Math.round(x * 100) / 100;
}

/**
 * Bands for a hand that welds like the demonstration: tempo 0.6 to 1.2 cycles a second as taught, travel angle 0 to 15° push allowed
 * (common practice, no source), tip-to-work ±3 mm, work angle ±10°.
 */
export function targetFor(weave: Weave): HandTarget {
  const straight = weave.pattern === 'straight';
  return {
    cyclesPerSecond: straight ? null : { from: 0.6, to: 1.2 },
    width_mm: straight ? null : around(weave.width_mm, 1),
    pauseA_s: straight ? null : around(weave.pauseA_s, 0.12),
    pauseB_s: straight ? null : around(weave.pauseB_s, 0.12),
    lead_mm: leadFor(weave.pattern),
    travel_mmps: around(weave.travel_mmps, 0.4),
    tipToWork_mm: around(weave.tipToWork_mm, 3),
    workAngle_deg: around(weave.workAngle_deg, 10),
    travelAngle_deg: { from: 0, to: 15 },
  };
}

/**
 * Where the arc belongs on the puddle when it crosses the root: on its front, or ahead of it. A weave that reaches ahead gets to the edge, a
 * flat zigzag a little behind it, and a straight run pushes its front before it. From the model's own robot welds: 3 mm back reads -1.3 to -2.
 */
function leadFor(pattern: Weave['pattern']): Band {
  const from = pattern === 'straight' ? -2.5 : pattern === 'zigzag' ? -1.6 : -1.2;
  return { from, to: pattern === 'triangle' ? 2.5 : 1.5 };
}

/** Length left out at each end: the cold start and shelf at the bottom, the crater at the top. */
const ENDS = { bottom_mm: 22, top_mm: 10 } as const;

/** The judged length of a joint: all but the ends. */
export function judgedOf(length_mm: number): Exercise['judged'] {
  const from = Math.min(ENDS.bottom_mm, Math.floor(length_mm / 3));
  const to = Math.max(from + 1, length_mm - ENDS.top_mm);
  return { from_mm: from, to_mm: to };
}

/** Three cuts fixed before welding: at a quarter, a half and three quarters of the judged length. */
export function thirds(judged: Exercise['judged']): number[] {
  const span = judged.to_mm - judged.from_mm;
  return [0.25, 0.5, 0.75].map((share) => Math.round(judged.from_mm + share * span));
}

export interface Recipe {
  name: string;
  title: string;
  story: string;
  teaches: string;
  joint?: Partial<Joint>;
  process?: Partial<Process>;
  weave?: Partial<Weave>;
  settings?: Exercise['settings'];
  asked: Exercise['asked'];
  profile: string;
  aids?: Partial<Exercise['aids']>;
}

/** A short arc or two into the crater as it sets: every demonstration of the workshop leaves it filled. */
const FILL = { reStrikes: 2 } as const;

/** A ready exercise of the workshop. */
export function workshopExercise(recipe: Recipe): Exercise {
  return exercise({ ...recipe, weave: { ...FILL, ...recipe.weave } });
}

/** Fills a recipe up to a complete exercise. */
export function exercise(recipe: Recipe): Exercise {
  const joint = { ...bench, ...recipe.joint };
  const weave = { ...vee, length_mm: joint.length_mm - 4, ...recipe.weave };
  const judged = judgedOf(joint.length_mm);
  return {
    format: 'toehold-exercise',
    version: 2,
    name: recipe.name,
    title: recipe.title,
    story: recipe.story,
    teaches: recipe.teaches,
    joint,
    process: { ...machine, ...recipe.process },
    settings: recipe.settings ?? 'fixed',
    asked: recipe.asked,
    judged,
    cuts_mm: thirds(judged),
    passes: 1,
    profile: recipe.profile,
    target: targetFor(weave),
    demonstration: weave,
    aids: { pacer: false, beat: true, toeMarks: true, handRig: true, ...recipe.aids },
    hold: {
      tipToWork_mm: weave.tipToWork_mm,
      workAngle_deg: weave.workAngle_deg,
      travelAngle_deg: weave.travelAngle_deg,
    },
  };
}

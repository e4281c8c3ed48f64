/** An attempt in the making: one `step` per pose, each the same list of stages. */
import { burn, createArcTick, quench } from './arc/arc.ts';
import { createFootprint, reachAlong } from './arc/footprint.ts';
import { createAxis, placeTorch } from './arc/torch.ts';
import { arcRadius } from './arc/wire.ts';
import { layColdPiece, type StateChoices } from './cold-piece.ts';
import { closeFineRegion, openFineRegion } from './heat/active-region.ts';
import { joinEnds } from './heat/coarse-step.ts';
import { tickHeat } from './heat/step.ts';
import type { SimulationOptions } from './input/options.ts';
import { between, checkPose, copyPose, createPose, POSE_RATE_HZ, type Pose } from './input/pose.ts';
import { type Accounts, accounts } from './output/balance.ts';
import { cutSection, type RootStrip, rootStrip, type Section } from './output/section.ts';
import { createView, fillView, type SurfaceView } from './output/surface-view.ts';
import { addTick, createTrace, endTrace, startTrace, type TraceSample } from './output/trace.ts';
import { createPoolWork, settleNear } from './pool/settle.ts';
import { arrayOf } from './state/allocate.ts';
import { FIELD_NAMES, FIELDS } from './state/fields.ts';
import { hashState } from './state/hash.ts';
import { restoreState, snapshotState } from './state/snapshot.ts';
import type { State } from './state/state.ts';

/** An attempt in the making, from the first pose to the last; cut it, photograph it, balance its accounts at any time. */
export interface Simulation {
  readonly options: SimulationOptions;
  /** Time welded so far, s, and poses stepped. */
  readonly time_s: number;
  readonly steps: number;
  /** Which kernel runs. */
  readonly kernel: 'reference' | 'simd';
  /**
   * Steps one pose interval (10 ms). The returned object is reused: copy what you keep.
   * @throws EngineError 'bad-pose' for a pose that is not finite; the attempt stays as it was.
   */
  step(pose: Pose): TraceSample;
  /** The surface now; arrays are reused by the next call. */
  surface(): SurfaceView;
  /** A cut square to the joint at a height, mm; off the joint, at its nearest end. Fresh arrays each time. */
  section(y_mm: number): Section;
  /** The root opened along its whole length. */
  rootStrip(): RootStrip;
  /** Where metal and energy went so far, and how far the accounts close. */
  accounts(): Accounts;
  /** Check number of the whole state. */
  hash(): string;
  /** The arrays of the state, by name (live views: do not write). */
  fields(): Record<string, ArrayLike<number>>;
  /** Everything needed to go on from here, bit for bit. */
  snapshot(): ArrayBuffer;
  /**
   * Goes back, or on, to a snapshot.
   * @throws EngineError 'bad-snapshot' when the bytes belong to another layout or version.
   */
  restore(snapshot: ArrayBuffer): void;
}

/** What the stages write into, made once. */
interface Stages {
  asked: Pose;
  from: Pose;
  at: Pose;
  axis: ReturnType<typeof createAxis>;
  foot: ReturnType<typeof createFootprint>;
  arc: ReturnType<typeof createArcTick>;
  pool: ReturnType<typeof createPoolWork>;
  trace: TraceSample;
}

function createStages(s: State, choices: StateChoices): Stages {
  return {
    asked: createPose(),
    from: createPose(),
    at: createPose(),
    axis: createAxis(),
    foot: createFootprint(s),
    arc: createArcTick(),
    pool: createPoolWork(s, choices.kernel ?? 'auto'),
    trace: createTrace(),
  };
}

/** How far along the joint a leaning torch may throw its arc from where it aims, mm. */
function throwOf(s: State, axis: Stages['axis'], pose: Pose): number {
  placeTorch(axis, pose, s.options.process, s.plan);
  return reachAlong(axis, arcRadius(s.options.process, s.cal), s.cal);
}

/** One pose interval. */
function stepPose(s: State, { asked, from, at, axis, foot, arc, pool, trace }: Stages, pose: Pose): TraceSample {
  checkPose(pose);
  copyPose(asked, pose);
  // Striking somewhere else is no drag across the joint.
  copyPose(from, s.lastPose.trigger ? s.lastPose : asked);
  startTrace(trace);
  openFineRegion(s, from, asked, Math.max(throwOf(s, axis, from), throwOf(s, axis, asked)));
  for (let t = 1; t <= s.ticksPerPose; t++) {
    between(at, from, asked, t / s.ticksPerPose);
    placeTorch(axis, at, s.options.process, s.plan);
    s.tick++;
    if (asked.trigger) burn(arc, s, foot, axis, at.u_mm, at.y_mm);
    else quench(arc, s);
    addTick(trace, s, arc);
    tickHeat(s, joinEnds);
  }
  s.steps++;
  settleNear(s, pool, arc.on ? s.footY : at.y_mm, 1 / POSE_RATE_HZ);
  closeFineRegion(s, asked);
  copyPose(s.lastPose, asked);
  s.posed = true;
  return endTrace(trace, s, arc, axis, at, pool.dripped_g);
}

/**
 * The joint clamped and cold, ready for the first pose. Same options and poses, same bits, on every machine.
 * @throws EngineError when an option is out of range.
 */
export function createSimulation(options: SimulationOptions, choices: StateChoices = {}): Simulation {
  const s = layColdPiece(options, choices);
  const stages = createStages(s, choices);
  let view: SurfaceView | null = null;
  return {
    options: s.options,
    get time_s() {
      return s.steps / POSE_RATE_HZ;
    },
    get steps() {
      return s.steps;
    },
    kernel: s.heat.kernel.name,
    step: (pose) => stepPose(s, stages, pose),
    surface() {
      view ??= createView(s);
      fillView(view, s);
      return view;
    },
    section: (y_mm) => cutSection(s, y_mm),
    rootStrip: () => rootStrip(s),
    accounts: () => accounts(s),
    hash: () => hashState(s),
    fields: () => namedFields(s),
    snapshot: () => snapshotState(s),
    restore: (bytes) => restoreState(s, bytes),
  };
}

function namedFields(s: State): Record<string, ArrayLike<number>> {
  const state = FIELD_NAMES.filter((name) => FIELDS[name].role !== 'scratch');
  return Object.fromEntries(state.map((name) => [name, arrayOf(s, name)]));
}

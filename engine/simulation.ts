/**
 * An attempt in the making: one `step` per pose, each the same list of stages.
 *
 *     torch -> (footprint -> arc -> heat) x ticks -> puddle -> trace
 */
import { accounts, surfaceVolume, workEnergy } from './accounts.ts';
import { burn, createArcTick } from './arc.ts';
import { BLOCK } from './calm.ts';
import { joinEnds } from './calm-step.ts';
import { createFootprint, reachAlong } from './footprint.ts';
import { hashState } from './hash.ts';
import { tickHeat } from './heat.ts';
import { PAD } from './kernel/layout.ts';
import { lookup } from './material.ts';
import { clamp } from './math.ts';
import { topCell } from './metal.ts';
import { EngineError } from './options.ts';
import { wireState } from './process.ts';
import { createPuddleWork, settle } from './puddle.ts';
import { cutSection, rootStrip } from './section.ts';
import { namedArrays, restoreState, snapshotState } from './snapshot.ts';
import { allocate, POSE_RATE_HZ, type State, type StateChoices } from './state.ts';
import { createAxis, POSE_LIMITS, placeTorch } from './torch.ts';
import { createTrace, surfaceLiquid, tracePuddle } from './trace.ts';
import type { Accounts, Pose, RootStrip, Section, SimulationOptions, SurfaceView, TraceSample } from './types.ts';
import { closeWindow, openWindow } from './window.ts';

/** An attempt in the making, from the first pose to the last; cut it, photograph it, balance its books at any time. */
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
  /** Where metal and energy went so far, and how far the books close. */
  accounts(): Accounts;
  /** Check number of the whole state. */
  hash(): string;
  /** The arrays that decide the future, by name (live views: do not write). */
  fields(): Record<string, ArrayLike<number>>;
  /** Everything needed to go on from here, bit for bit. */
  snapshot(): ArrayBuffer;
  /**
   * Goes back, or on, to a snapshot.
   * @throws EngineError 'bad-snapshot' when the bytes belong to another layout or version.
   */
  restore(snapshot: ArrayBuffer): void;
}

const FIELDS = ['u_mm', 'y_mm', 'tipToWork_mm', 'workAngle_deg', 'travelAngle_deg'] as const;
/** Aim points farther off the joint than this are brought to this distance: still off the joint, never a huge number. */
const FAR_MM = 1000;
/** Metal melts within the arc's reach or beside liquid: only there new liquid is looked for. */
const RECENT_COLUMNS_MM = 4.5;

function checkPose(pose: Pose): void {
  for (const field of FIELDS) {
    if (!Number.isFinite(pose[field]))
      throw new EngineError('bad-pose', `pose.${field}`, pose[field], 'a finite number');
  }
  if (typeof pose.trigger !== 'boolean')
    throw new EngineError('bad-pose', 'pose.trigger', pose.trigger, 'true or false');
}

/**
 * The joint clamped and cold, ready for the first pose. Same options and poses, same bits, on every machine.
 * @throws EngineError when an option is out of range.
 */
export function createSimulation(options: SimulationOptions, choices: StateChoices = {}): Simulation {
  const s = allocate(structuredCloneOptions(options), choices);
  s.ledger.start_J = workEnergy(s);
  s.ledger.start_mm3 = surfaceVolume(s);
  const axis = createAxis();
  const foot = createFootprint();
  const arc = createArcTick();
  const work = createPuddleWork(s.w.length, choices.kernel ?? 'auto');
  const trace = createTrace();
  const at: Pose = { u_mm: 0, y_mm: 0, tipToWork_mm: 12, workAngle_deg: 45, travelAngle_deg: 0, trigger: false };
  let last: Pose | null = null;
  let view: SurfaceView | null = null;

  const radius = wireState(s.options.process, 0, s.cal).arcRadius_mm;
  const reachOf = (pose: Pose): number => {
    placeTorch(axis, pose, s.options.process, s.plan);
    return reachAlong(axis, radius);
  };

  const step = (asked: Pose): TraceSample => {
    checkPose(asked);
    const pose: Pose = { ...asked, u_mm: clamp(asked.u_mm, -FAR_MM, FAR_MM), y_mm: clamp(asked.y_mm, -FAR_MM, FAR_MM) };
    // Striking somewhere else is no drag across the joint.
    const from = last?.trigger ? last : pose;
    trace.dripped_g = 0;
    trace.spatter_g = 0;
    // A jump passes over everything between: all of it has to be fine while it does, and wherever a leaning torch throws the arc.
    const throws = pose.trigger ? Math.max(reachOf(from), reachOf(pose)) : 0;
    openWindow(
      s,
      pose.trigger ? Math.min(from.y_mm, pose.y_mm) : null,
      pose.trigger ? Math.max(from.y_mm, pose.y_mm) : null,
      throws,
    );
    let power = 0;
    let burning = 0;
    for (let t = 1; t <= s.ticksPerPose; t++) {
      const f = t / s.ticksPerPose;
      between(at, from, pose, f);
      placeTorch(axis, at, s.options.process, s.plan);
      s.tick++;
      if (pose.trigger) {
        burn(arc, s, foot, axis, at.u_mm, at.y_mm);
        trace.dripped_g += arc.dripped_g;
        trace.spatter_g += arc.spatter_g;
        power += arc.power_W / s.ticksPerPose;
        if (arc.on) burning++;
      } else {
        arc.on = false;
        s.arcOn = false;
        s.current = 0;
      }
      tickHeat(s, joinEnds);
    }
    s.steps++;
    const near = arc.on ? s.footY : at.y_mm;
    const j0 = Math.floor((near - RECENT_COLUMNS_MM - s.plan.y0) / s.plan.dy);
    const j1 = Math.ceil((near + RECENT_COLUMNS_MM - s.plan.y0) / s.plan.dy);
    settle(s, work, clamp(j0, 0, s.plan.ny), clamp(j1, 0, s.plan.ny), 1 / POSE_RATE_HZ);
    closeWindow(s, pose.trigger ? pose.y_mm : null);
    trace.dripped_g += work.dripped_g;
    last = { ...pose };

    trace.t_s = s.steps / POSE_RATE_HZ;
    trace.trigger = pose.trigger;
    trace.arcOn = burning > 0;
    trace.regime = arc.on && arc.wire ? arc.wire.regime : 'off';
    trace.aimU_mm = at.u_mm;
    trace.aimY_mm = at.y_mm;
    trace.footU_mm = arc.on ? s.footU : at.u_mm;
    trace.footY_mm = arc.on ? s.footY : at.y_mm;
    trace.tipToWork_mm = arc.on ? arc.tipToWork : axis.reach;
    trace.workAngle_deg = clamp(at.workAngle_deg, ...POSE_LIMITS.workAngle_deg);
    trace.travelAngle_deg = clamp(at.travelAngle_deg, ...POSE_LIMITS.travelAngle_deg);
    trace.current_A = s.arcOn ? s.current : 0;
    trace.power_W = power;
    trace.nozzleTouching = axis.nozzleTouching;
    tracePuddle(trace, s, trace.footU_mm, trace.footY_mm);
    return trace;
  };

  return {
    options: s.options,
    get time_s() {
      return s.steps / POSE_RATE_HZ;
    },
    get steps() {
      return s.steps;
    },
    kernel: s.heat.kernel.name,
    step,
    surface() {
      view ??= createView(s);
      fillView(view, s);
      return view;
    },
    section: (y_mm) => cutSection(s, y_mm),
    rootStrip: () => rootStrip(s),
    accounts: () => accounts(s),
    hash: () => hashState(s, work.pressure, last),
    fields: () => namedArrays(s, work.pressure),
    snapshot: () => snapshotState(s, work.pressure, last),
    restore(bytes) {
      last = restoreState(s, work.pressure, bytes);
    },
  };
}

/** The pose a share `f` of the way; written out, because it runs every tick. */
function between(at: Pose, from: Pose, to: Pose, f: number): void {
  at.u_mm = from.u_mm + (to.u_mm - from.u_mm) * f;
  at.y_mm = from.y_mm + (to.y_mm - from.y_mm) * f;
  at.tipToWork_mm = from.tipToWork_mm + (to.tipToWork_mm - from.tipToWork_mm) * f;
  at.workAngle_deg = from.workAngle_deg + (to.workAngle_deg - from.workAngle_deg) * f;
  at.travelAngle_deg = from.travelAngle_deg + (to.travelAngle_deg - from.travelAngle_deg) * f;
}

function structuredCloneOptions(o: SimulationOptions): SimulationOptions {
  return { joint: { ...o.joint }, process: { ...o.process }, cell_mm: o.cell_mm };
}

function createView(s: State): SurfaceView {
  const { plan } = s;
  const n = plan.nu * plan.ny;
  const plate = new Float32Array(n);
  for (let c = 0; c < plan.nu; c++) plate.fill(plan.plate[c]!, c * plan.ny, (c + 1) * plan.ny);
  return {
    nu: plan.nu,
    ny: plan.ny,
    u0_mm: -plan.kMax * plan.du,
    du_mm: plan.du,
    y0_mm: plan.y0,
    dy_mm: plan.dy,
    height_mm: new Float32Array(n),
    plate_mm: plate,
    temp_C: new Float32Array(n),
    liquid: new Float32Array(n),
    peak_C: new Float32Array(n),
    frozen_s: new Float32Array(n),
  };
}

/** Enthalpy of a cell, from its tile where the block is coarse. */
function surfaceEnthalpy(s: State, cell: number, j: number): number {
  const block = Math.floor(j / BLOCK);
  if (!s.calm.coarse[block]) return s.heat.H[cell]!;
  const rod = Math.floor(cell / s.heat.layout.stride);
  return s.calm.H[block * s.calm.tiles.count + s.calm.tiles.of[rod]!]!;
}

function fillView(view: SurfaceView, s: State): void {
  const { plan, heat } = s;
  for (let c = 0; c < plan.nu; c++) {
    for (let j = 0; j < plan.ny; j++) {
      const i = c * plan.ny + j;
      const m = topCell(s, c, s.w[i]!);
      const cell = plan.stack[plan.stackStart[c]! + m]! * heat.layout.stride + PAD + j;
      view.height_mm[i] = s.w[i]!;
      const h = surfaceEnthalpy(s, cell, j);
      view.temp_C[i] = lookup(heat.table.temperature, h);
      view.peak_C[i] = lookup(heat.table.temperature, heat.peak[cell]!);
      view.liquid[i] = surfaceLiquid(s, i, h);
      view.frozen_s[i] = s.frozenTick[i]! < 0 ? Number.NaN : s.frozenTick[i]! * s.dt;
    }
  }
}

/** Saves and restores a whole state, bit for bit: a header that names the layout, then every array in a fixed order. */

import { refreshFlags } from './heat-state.ts';
import { locateAll } from './metal.ts';
import { EngineError } from './options.ts';
import type { State } from './state.ts';
import type { Pose } from './types.ts';

const MAGIC = 0x544f4548;
const VERSION = 2;
const HEADER_WORDS = 8;

/** Every array that decides the future, by name, in the order of a snapshot. */
export function namedArrays(s: State, pressure: Float64Array): Record<string, StateArray> {
  const { heat } = s;
  return {
    height: s.w,
    equilibrium: s.wEq,
    response: s.response,
    bottom: s.bottom,
    'skin pressure': s.skinPressure,
    'flow potential': s.flowPotential,
    'contact line': s.edge,
    'wet level': s.wetLevel,
    pressure: pressure,
    enthalpy: heat.H,
    residual: heat.residual,
    fill: heat.fill,
    peak: heat.peak,
    'not full': heat.notFull,
    holding: heat.holding,
    'wet until': s.wetUntil,
    'wet stamp': s.wetTick,
    'freeze stamp': s.frozenTick,
    puddle: s.puddle,
    liquid: s.liquid,
    'tile enthalpy': s.calm.H,
    'tile mass': s.calm.mass,
    'tile area': s.calm.area,
    'tile face': s.calm.face,
    'tile conductance': s.calm.conduct,
    'tile gap, open': s.calm.gapOpen,
    'tile gap, melted': s.calm.gapMelted,
    'tile crossing': s.calm.crossing,
    'tile potential': s.calm.potential,
    'coarse blocks': s.calm.coarse,
    'blocks awake': s.calm.awake,
  };
}

type StateArray = Float64Array | Float32Array | Int32Array | Uint8Array;

const SCALARS = 12;

function scalars(s: State, last: Pose | null): number[] {
  return [
    s.steps,
    s.tick,
    s.current,
    s.arcOn ? 1 : 0,
    s.footU,
    s.footY,
    s.arcRadius,
    s.window.from,
    s.window.to,
    last ? 1 : 0,
    s.fine.from,
    s.fine.to,
    ...(last
      ? [last.u_mm, last.y_mm, last.tipToWork_mm, last.workAngle_deg, last.travelAngle_deg, last.trigger ? 1 : 0]
      : [0, 0, 0, 0, 0, 0]),
    ...(Object.values(s.ledger) as number[]),
  ];
}

const align8 = (n: number): number => (n + 7) & ~7;

export function snapshotState(s: State, pressure: Float64Array, last: Pose | null): ArrayBuffer {
  const views = Object.values(namedArrays(s, pressure));
  const numbers = scalars(s, last);
  const size = views.reduce((n, v) => n + align8(v.byteLength), HEADER_WORDS * 4 + numbers.length * 8);
  const out = new ArrayBuffer(size);
  const header = new Uint32Array(out, 0, HEADER_WORDS);
  header.set([MAGIC, VERSION, size, s.plan.rods.count, s.plan.ny, s.plan.nu, s.ticksPerPose, numbers.length]);
  new Float64Array(out, HEADER_WORDS * 4, numbers.length).set(numbers);
  let at = HEADER_WORDS * 4 + numbers.length * 8;
  for (const view of views) {
    new Uint8Array(out, at, view.byteLength).set(new Uint8Array(view.buffer, view.byteOffset, view.byteLength));
    at += align8(view.byteLength);
  }
  return out;
}

export function restoreState(s: State, pressure: Float64Array, bytes: ArrayBuffer): Pose | null {
  if (bytes.byteLength < HEADER_WORDS * 4)
    throw new EngineError(
      'bad-snapshot',
      'snapshot',
      `${bytes.byteLength} bytes`,
      `at least ${HEADER_WORDS * 4} bytes`,
    );
  const [magic, version, size, rods, ny, nu, ticks, count] = new Uint32Array(bytes, 0, HEADER_WORDS);
  if (magic !== MAGIC) throw new EngineError('bad-snapshot', 'snapshot', magic, 'a snapshot of this engine');
  if (version !== VERSION) throw new EngineError('bad-snapshot', 'snapshot.version', version, `version ${VERSION}`);
  const own = [s.plan.rods.count, s.plan.ny, s.plan.nu, s.ticksPerPose];
  const got = [rods, ny, nu, ticks];
  if (own.some((v, i) => v !== got[i]) || size !== bytes.byteLength)
    throw new EngineError(
      'bad-snapshot',
      'snapshot',
      got.join(' x '),
      `the layout of these options, ${own.join(' x ')}`,
    );
  const numbers = new Float64Array(bytes, HEADER_WORDS * 4, count!);
  let at = HEADER_WORDS * 4 + count! * 8;
  for (const view of Object.values(namedArrays(s, pressure))) {
    new Uint8Array(view.buffer, view.byteOffset, view.byteLength).set(new Uint8Array(bytes, at, view.byteLength));
    at += align8(view.byteLength);
  }
  const n = [...numbers];
  s.steps = n[0]!;
  s.tick = n[1]!;
  s.current = n[2]!;
  s.arcOn = n[3] === 1;
  s.footU = n[4]!;
  s.footY = n[5]!;
  s.arcRadius = n[6]!;
  s.window.from = n[7]!;
  s.window.to = n[8]!;
  s.fine.from = n[10]!;
  s.fine.to = n[11]!;
  const keys = Object.keys(s.ledger) as (keyof State['ledger'])[];
  keys.forEach((key, i) => {
    s.ledger[key] = n[SCALARS + 6 + i]!;
  });
  locateAll(s);
  refreshFlags(s.heat);
  if (n[9] !== 1) return null;
  return {
    u_mm: n[SCALARS]!,
    y_mm: n[SCALARS + 1]!,
    tipToWork_mm: n[SCALARS + 2]!,
    workAngle_deg: n[SCALARS + 3]!,
    travelAngle_deg: n[SCALARS + 4]!,
    trigger: n[SCALARS + 5] === 1,
  };
}

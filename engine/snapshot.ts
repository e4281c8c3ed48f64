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
    skinPressure: s.skinPressure,
    flowPotential: s.flowPotential,
    contactLine: s.edge,
    wetLevel: s.wetLevel,
    pressure: pressure,
    enthalpy: heat.H,
    residual: heat.residual,
    fill: heat.fill,
    peak: heat.peak,
    notFull: heat.notFull,
    holding: heat.holding,
    wetUntil: s.wetUntil,
    wetStamp: s.wetTick,
    freezeStamp: s.frozenTick,
    pool: s.puddle,
    liquid: s.liquid,
    tileEnthalpy: s.calm.H,
    tileMass: s.calm.mass,
    tileArea: s.calm.area,
    tileFace: s.calm.face,
    tileConductance: s.calm.conduct,
    tileGapOpen: s.calm.gapOpen,
    tileGapMelted: s.calm.gapMelted,
    tileCrossing: s.calm.crossing,
    tilePotential: s.calm.potential,
    coarse: s.calm.coarse,
    active: s.calm.awake,
  };
}

type StateArray = Float64Array | Float32Array | Int32Array | Uint8Array;

/** Every number that decides the future or stands in the books, by name, in the order of a snapshot. */
export function namedNumbers(s: State, last: Pose | null): Record<string, number> {
  return {
    steps: s.steps,
    tick: s.tick,
    current: s.current,
    arcOn: s.arcOn ? 1 : 0,
    footU: s.footU,
    footY: s.footY,
    arcRadius: s.arcRadius,
    'liquidSlices.from': s.window.from,
    'liquidSlices.to': s.window.to,
    'fine.from': s.fine.from,
    'fine.to': s.fine.to,
    lastPose: last ? 1 : 0,
    'lastPose.u': last?.u_mm ?? 0,
    'lastPose.y': last?.y_mm ?? 0,
    'lastPose.tipToWork': last?.tipToWork_mm ?? 0,
    'lastPose.workAngle': last?.workAngle_deg ?? 0,
    'lastPose.travelAngle': last?.travelAngle_deg ?? 0,
    'lastPose.trigger': last?.trigger ? 1 : 0,
    ...s.ledger,
  };
}

const align8 = (n: number): number => (n + 7) & ~7;

export function snapshotState(s: State, pressure: Float64Array, last: Pose | null): ArrayBuffer {
  const views = Object.values(namedArrays(s, pressure));
  const numbers = Object.values(namedNumbers(s, last));
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
  return restoreNumbers(s, numbers);
}

function restoreNumbers(s: State, numbers: Float64Array): Pose | null {
  const named = Object.fromEntries(Object.keys(namedNumbers(s, null)).map((name, i) => [name, numbers[i]!]));
  const of = (name: string): number => named[name]!;
  s.steps = of('steps');
  s.tick = of('tick');
  s.current = of('current');
  s.arcOn = of('arcOn') === 1;
  s.footU = of('footU');
  s.footY = of('footY');
  s.arcRadius = of('arcRadius');
  s.window.from = of('liquidSlices.from');
  s.window.to = of('liquidSlices.to');
  s.fine.from = of('fine.from');
  s.fine.to = of('fine.to');
  for (const key of Object.keys(s.ledger) as (keyof State['ledger'])[]) s.ledger[key] = of(key);
  locateAll(s);
  refreshFlags(s.heat);
  if (of('lastPose') !== 1) return null;
  return {
    u_mm: of('lastPose.u'),
    y_mm: of('lastPose.y'),
    tipToWork_mm: of('lastPose.tipToWork'),
    workAngle_deg: of('lastPose.workAngle'),
    travelAngle_deg: of('lastPose.travelAngle'),
    trigger: of('lastPose.trigger') === 1,
  };
}

/** Saves and restores a whole state, bit for bit: a header that names the layout, then every number and array that fields.ts says is saved. */
import { EngineError } from '../input/error.ts';
import { firstCell } from '../kernel/layout.ts';
import { arrayOf, scalarOf, setScalar } from './allocate.ts';
import { SAVED, SCALAR_NAMES } from './fields.ts';
import { locateAll } from './metal.ts';
import type { HeatState, State } from './state.ts';

const MAGIC = 0x544f4548;
const VERSION = 3;
const HEADER_WORDS = 8;

const align8 = (n: number): number => (n + 7) & ~7;

const bytesOf = (view: ArrayBufferView): Uint8Array => new Uint8Array(view.buffer, view.byteOffset, view.byteLength);

export function snapshotState(s: State): ArrayBuffer {
  const views = SAVED.map((name) => arrayOf(s, name));
  const numbers = SCALAR_NAMES.map((name) => scalarOf(s, name));
  const size = views.reduce((n, v) => n + align8(v.byteLength), HEADER_WORDS * 4 + numbers.length * 8);
  const out = new ArrayBuffer(size);
  const header = new Uint32Array(out, 0, HEADER_WORDS);
  header.set([MAGIC, VERSION, size, s.plan.rods.count, s.plan.ny, s.plan.nu, s.ticksPerPose, numbers.length]);
  new Float64Array(out, HEADER_WORDS * 4, numbers.length).set(numbers);
  let at = HEADER_WORDS * 4 + numbers.length * 8;
  for (const view of views) {
    new Uint8Array(out, at, view.byteLength).set(bytesOf(view));
    at += align8(view.byteLength);
  }
  return out;
}

/** @throws EngineError 'bad-snapshot' for bytes of another layout or version; the state stays as it was */
export function restoreState(s: State, bytes: ArrayBuffer): void {
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
  SCALAR_NAMES.forEach((name, i) => {
    setScalar(s, name, numbers[i]!);
  });
  let at = HEADER_WORDS * 4 + count! * 8;
  for (const name of SAVED) {
    const view = arrayOf(s, name);
    bytesOf(view).set(new Uint8Array(bytes, at, view.byteLength));
    at += align8(view.byteLength);
  }
  rebuild(s);
}

/** Fields that follow from the others. The kernels' flags are chosen anew before they are next used. */
function rebuild(s: State): void {
  countFills(s.heat, s.plan.ny);
  s.heat.flagsStale = true;
  s.puddle.fill(-1);
  locateAll(s);
}

function countFills(heat: HeatState, ny: number): void {
  const { fill, notFull, holding, layout } = heat;
  for (let r = 0; r < layout.count; r++) {
    notFull[r] = 0;
    holding[r] = 0;
    const first = firstCell(layout, r);
    for (let cell = first; cell < first + ny; cell++) {
      if (fill[cell]! < 1) notFull[r]! += 1;
      if (fill[cell]! > 0) holding[r]! += 1;
    }
  }
}

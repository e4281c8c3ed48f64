/** Makes every array of a weld, once, by the list in fields.ts; and finds it again by name. */
import type { JointPlan } from '../grid/joint.ts';
import { type KernelLayout, PROGRAM_WORDS } from '../kernel/layout.ts';
import {
  type Arrays,
  type Dims,
  FIELD_NAMES,
  FIELDS,
  type FieldArray,
  type FieldName,
  type Part,
  SCALARS,
  type ScalarName,
} from './fields.ts';
import type { State } from './state.ts';

/** Sizes of a joint with its tiles left out. */
export function dimsOf(plan: Pick<JointPlan, 'nu' | 'ny'>, layout: Pick<KernelLayout, 'count' | 'stride'>): Dims {
  return {
    rods: layout.count,
    cells: layout.count * layout.stride,
    columns: plan.nu * plan.ny,
    blocks: 0,
    tiles: 0,
    pairs: 0,
    gaps: 0,
  };
}

const MAKERS = { f32: Float32Array, f64: Float64Array, i32: Int32Array, u8: Uint8Array } as const;

/**
 * The arrays of one part. Fields that a kernel works on lie in its memory, where its layout says.
 *
 * What holds them beside other things names each one in its own literal and does not spread this object: a spread may give every weld a
 * hidden class of its own, and from the fifth weld of a process on whatever reads one would look its properties up by name.
 */
export function makeArrays<P extends Part>(
  part: P,
  dims: Dims,
  shared: { memory: ArrayBuffer; layout: KernelLayout } | null = null,
): Arrays<P> {
  const made: Record<string, FieldArray> = {};
  for (const name of FIELD_NAMES) {
    const field = FIELDS[name];
    if (field.part !== part) continue;
    const length = field.length(dims);
    const at = shared?.layout[name as keyof KernelLayout];
    const array: FieldArray =
      shared && at !== undefined ? new MAKERS[field.kind](shared.memory, at, length) : new MAKERS[field.kind](length);
    made[field.key] = array.fill(field.start);
  }
  return made as unknown as Arrays<P>;
}

/** What the kernels run by, in their memory. */
export function makeProgram(memory: ArrayBuffer, layout: KernelLayout): Int32Array {
  return new Int32Array(memory, layout.program, layout.count * PROGRAM_WORDS);
}

/** The array of a name, as it hangs in the state. */
export function arrayOf(s: State, name: FieldName): FieldArray {
  const { part, key } = FIELDS[name];
  const owner: unknown = part === 'heat' ? s.heat : part === 'coarse' ? s.coarse : s;
  return (owner as Record<string, FieldArray>)[key]!;
}

function ownerOf(s: State, name: ScalarName): Record<string, number | boolean> {
  const { liquidSlices, fine, lastPose, ledger } = s;
  const owners = { state: s, liquidSlices, fine, lastPose, ledger };
  return owners[SCALARS[name][0]] as unknown as Record<string, number | boolean>;
}

/** A number of the state; flags as 0 and 1. */
export function scalarOf(s: State, name: ScalarName): number {
  return Number(ownerOf(s, name)[SCALARS[name][1]]);
}

export function setScalar(s: State, name: ScalarName, value: number): void {
  const owner = ownerOf(s, name);
  const key = SCALARS[name][1];
  // A whole number out of a float array comes as a float; kept as one, counts and slices would slow every loop over them down.
  const whole = value | 0;
  owner[key] = typeof owner[key] === 'boolean' ? value === 1 : Object.is(whole, value) ? whole : value;
}

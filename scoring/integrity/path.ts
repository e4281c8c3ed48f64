/** A hand's way as numbers that two files can be compared by: aim across and up the joint while the trigger is down, 20 times a second. */

/** Poses as a recording keeps them: whole hundredths of a millimetre, one each 1/100 s. */
export interface PoseColumns {
  u: readonly number[];
  y: readonly number[];
  trigger: readonly number[];
}

export interface HandPath {
  /** mm, one entry each 1/20 s of trigger time. */
  u: Float32Array;
  y: Float32Array;
  /** Times at which the aim crossed the middle of its own weave, s of trigger time. */
  crossings: Float32Array;
}

const QUANTA_PER_MM = 100;
const POSES_PER_SECOND = 100;
const EVERY = 5;
/** Samples a second. */
export const PATH_RATE = POSES_PER_SECOND / EVERY;
/** The aim must have been this far out, mm, for a change of side to count: tremor round a straight run's middle is no weave. */
const LEAST_SWING_MM = 0.5;

export function pathOf({ u, y, trigger }: PoseColumns): HandPath {
  const burning: number[] = [];
  for (let n = 0; n < u.length; n++) if (trigger[n] === 1) burning.push(n);
  const count = Math.floor(burning.length / EVERY);
  const path = { u: new Float32Array(count), y: new Float32Array(count) };
  for (let n = 0; n < count; n++) {
    const at = burning[n * EVERY]!;
    path.u[n] = u[at]! / QUANTA_PER_MM;
    path.y[n] = y[at]! / QUANTA_PER_MM;
  }
  return { ...path, crossings: crossingsOf(u, burning) };
}

/** The last change of sign before the aim was clearly on the other side is the crossing. */
function crossingsOf(u: readonly number[], burning: readonly number[]): Float32Array {
  let sum = 0;
  for (const n of burning) sum += u[n]!;
  const middle = burning.length === 0 ? 0 : sum / burning.length;
  const times: number[] = [];
  let sign = 0;
  let changed = 0;
  let side = 0;
  burning.forEach((n, k) => {
    const out_mm = (u[n]! - middle) / QUANTA_PER_MM;
    const now = Math.sign(out_mm);
    if (now !== 0 && now !== sign) {
      sign = now;
      changed = k / POSES_PER_SECOND;
    }
    if (Math.abs(out_mm) <= LEAST_SWING_MM || now === side) return;
    if (side !== 0) times.push(changed);
    side = now;
  });
  return Float32Array.from(times);
}

/** First divergence: at which pose, and in which field, two attempts part. For hunting a platform or a change that moves bits. */
import type { Pose } from '../input/pose.ts';
import type { Simulation } from '../simulation.ts';

/** Where two attempts part that are stepped through the same poses. */
export interface Divergence {
  /** Pose after which the states differ, from 1; null if they never do. */
  step: number | null;
  /** Name of the first field that differs, with both values. */
  field: string | null;
  index: number | null;
  a: number | null;
  b: number | null;
}

/**
 * Steps both attempts through the same poses and compares their states by hash, then finds the field.
 * Both must be at the same step to begin with.
 */
export function firstDivergence(a: Simulation, b: Simulation, poses: Iterable<Pose>): Divergence {
  const none: Divergence = { step: null, field: null, index: null, a: null, b: null };
  for (const pose of poses) {
    a.step(pose);
    b.step(pose);
    if (a.hash() === b.hash()) continue;
    return { ...none, ...compareFields(a, b), step: a.steps };
  }
  return none;
}

function compareFields(a: Simulation, b: Simulation): Partial<Divergence> {
  const fieldsA = a.fields();
  const fieldsB = b.fields();
  for (const name of Object.keys(fieldsA)) {
    const x = fieldsA[name]!;
    const y = fieldsB[name];
    if (!y || y.length !== x.length) return { field: name };
    for (let i = 0; i < x.length; i++) if (!Object.is(x[i], y[i])) return { field: name, index: i, a: x[i]!, b: y[i]! };
  }
  return { field: 'account or clock' };
}

import type { Pose, SimulationOptions } from '../../../engine/index.ts';
import { createSimulation } from '../../../engine/index.ts';
import { restoreState } from '../../../engine/snapshot.ts';
import { allocate, type State } from '../../../engine/state.ts';

/** The inner state of an attempt after these poses: for timing what the public surface hides. */
export function createSimulationState(options: SimulationOptions, poses: Iterable<Pose>): State {
  const sim = createSimulation(options, { fineEverywhere: true });
  for (const pose of poses) sim.step(pose);
  const state = allocate(options, { fineEverywhere: true });
  restoreState(state, new Float64Array(state.w.length), sim.snapshot());
  return state;
}

import { layColdPiece } from '../../../engine/cold-piece.ts';
import type { Pose, SimulationOptions } from '../../../engine/index.ts';
import { createSimulation } from '../../../engine/index.ts';
import { restoreState } from '../../../engine/state/snapshot.ts';
import type { State } from '../../../engine/state/state.ts';

/** The inner state of an attempt after these poses: for timing what the public surface hides. */
export function createSimulationState(options: SimulationOptions, poses: Iterable<Pose>): State {
  const sim = createSimulation(options, { fineEverywhere: true });
  for (const pose of poses) sim.step(pose);
  const state = layColdPiece(options, { fineEverywhere: true });
  restoreState(state, sim.snapshot());
  return state;
}

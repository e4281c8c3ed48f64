/** Public surface of the engine: re-exports only. */

export { minTipToWork_mm, POSE_LIMITS } from './arc/torch.ts';
export {
  GASES,
  jointHolds_mm2,
  metalLaid_mm2,
  steadyVolts,
  type WireState,
  wireArea_mm2,
  wireState,
} from './arc/wire.ts';
export { handOfAmount, noFaults, weaveHand } from './hand/robot.ts';
export { cycleShares, defaultWeave, PATTERNS, type WeavePoint, weaveAt } from './hand/weave.ts';
export {
  checkOptions,
  defaultJoint,
  defaultOptions,
  defaultProcess,
  EngineError,
  type OptionProblem,
} from './input/options.ts';
export { createRandom, type Random } from './numerics/random.ts';
export { type Calibration, calibration, PARAMETERS, type Parameter } from './physics/calibration.ts';
export { AC1_C, conductivity, DENSITY_GPMM3, LIQUIDUS_C, SOLIDUS_C, specificHeat } from './physics/steel.ts';
export { type ChainFinding, checkChain, Seconds } from './replay/chain.ts';
export { type Divergence, firstDivergence } from './replay/divergence.ts';
export {
  type AttemptMeta,
  createRecorder,
  LONGEST_POSES,
  poses,
  QUANTUM,
  type Recorder,
  type RecordingMeta,
  recordPoses,
  replay,
  verifyRecording,
} from './replay/recording.ts';
export { createSimulation, type Simulation } from './simulation.ts';
export * from './solvers/index.ts';
export type { KernelChoice } from './state/heat-fields.ts';
export { POSE_RATE_HZ, type StateChoices } from './state/state.ts';
export * from './types.ts';
export { ENGINE_VERSION } from './version.ts';

/** Public surface of the engine: re-exports only. */
export * from './alone/index.ts';
export { type Calibration, calibration, PARAMETERS, type Parameter } from './calibration.ts';
export { type ChainFinding, checkChain, Seconds } from './chain.ts';
export { type Divergence, firstDivergence } from './divergence.ts';
export { handOfAmount, noFaults, weaveHand } from './hand.ts';
export type { KernelChoice } from './heat-state.ts';
export { AC1_C, conductivity, DENSITY_GPMM3, LIQUIDUS_C, SOLIDUS_C, specificHeat } from './material.ts';
export {
  checkOptions,
  defaultJoint,
  defaultOptions,
  defaultProcess,
  EngineError,
  type OptionProblem,
} from './options.ts';
export {
  GASES,
  jointHolds_mm2,
  metalLaid_mm2,
  steadyVolts,
  type WireState,
  wireArea_mm2,
  wireState,
} from './process.ts';
export { createRandom, type Random } from './random.ts';
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
} from './recording.ts';
export { createSimulation, type Simulation } from './simulation.ts';
export { POSE_RATE_HZ, type StateChoices } from './state.ts';
export { minTipToWork_mm, POSE_LIMITS } from './torch.ts';
export * from './types.ts';
export { ENGINE_VERSION } from './version.ts';
export { cycleShares, defaultWeave, PATTERNS, type WeavePoint, weaveAt } from './weave.ts';

/** Public surface of the engine: re-exports only. */

export { minTipToWork_mm } from './arc/torch.ts';
export {
  GASES,
  jointHolds_mm2,
  metalLaid_mm2,
  steadyVolts,
  type TransferRegime,
  type WireState,
  wireArea_mm2,
  wireState,
} from './arc/wire.ts';
export type { StateChoices } from './cold-piece.ts';
export { TAB_MM } from './grid/joint.ts';
export { PART } from './grid/rods.ts';
export { type HandFaults, handOfAmount, noFaults, weaveHand } from './hand/robot.ts';
export {
  cycleShares,
  defaultWeave,
  PATTERNS,
  type PatternName,
  type WeaveOptions,
  type WeavePoint,
  weaveAt,
} from './hand/weave.ts';
export { EngineError } from './input/error.ts';
export {
  checkOptions,
  defaultJoint,
  defaultOptions,
  defaultProcess,
  type FilletOptions,
  type GasName,
  type JointKind,
  type JointOptions,
  type OptionProblem,
  type PieceKind,
  type ProcessOptions,
  RANGES as OPTION_RANGES,
  type Rule as OptionRule,
  type SimulationOptions,
} from './input/options.ts';
export { POSE_LIMITS, POSE_RATE_HZ, type Pose } from './input/pose.ts';
export type { KernelChoice } from './kernel/layout.ts';
export { createRandom, type Random } from './numerics/random.ts';
export type { Accounts } from './output/balance.ts';
export type { RootStrip, Section } from './output/section.ts';
export type { SurfaceView } from './output/surface-view.ts';
export type { TraceSample } from './output/trace.ts';
export { type Calibration, calibration, PARAMETERS } from './physics/calibration.ts';
export { NUMERICAL, type NumericalName } from './physics/numerical.ts';
export type { Parameter } from './physics/parameter.ts';
export { AC1_C, conductivity, DENSITY_GPMM3, LIQUIDUS_C, SOLIDUS_C, specificHeat } from './physics/steel.ts';
export { type ChainFinding, checkChain, Seconds } from './replay/chain.ts';
export { type Divergence, firstDivergence } from './replay/divergence.ts';
export {
  type AidsInUse,
  type DeviceInfo,
  ENDINGS,
  type Ending,
  type Origin,
  type Recording,
  type Trainee,
} from './replay/format.ts';
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
export { type Work, workOf } from './replay/work.ts';
export { createSimulation, type Simulation } from './simulation.ts';
export * from './solvers/index.ts';
export { ENGINE_VERSION } from './version.ts';

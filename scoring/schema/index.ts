export { type BeadStart, type BeadStop, beadStartSchema, beadStopSchema, type Flaw } from './ends.ts';
export { type Asked, type Band, type Exercise, exerciseSchema, type HandTarget } from './exercise.ts';
export { type JsonSchemaName, jsonSchema, jsonSchemaNames } from './json-schema.ts';
export {
  type Crossing,
  type Motion,
  motionSchema,
  type Restart,
  type StartMotion,
  type Stop,
  type ToeVisit,
} from './motion.ts';
export { describeFound, InputError, type Problem, parseWith } from './problem.ts';
export {
  type CraterMeasure,
  craterMeasures,
  type Extent,
  type Limit,
  type Profile,
  profileSchema,
  type Rule,
  type RuleMeasure,
  ruleMeasures,
} from './profile.ts';
export {
  type Cut,
  type ProvedAdvice,
  type ProvedResult,
  provedAdviceSchema,
  provedResultSchema,
  type Trial,
} from './proved.ts';
export { readExercise, readProfile, readRecording } from './read.ts';
export {
  type AttemptRecording,
  checkRecording,
  MOST_POSES,
  MOST_RECORDING_TEXT,
  recordingSchema,
} from './recording.ts';
export {
  type Advice,
  type AdviceCode,
  adviceCodes,
  type Change,
  type ExerciseInResult,
  type Line,
  type LineVerdict,
  type Note,
  type Reason,
  type Result,
  reasonCodes,
  resultSchema,
  type Verdict,
  verdicts,
} from './result.ts';
export { type Consistency, consistencySchema, type Station, type StationMeasure, stationSchema } from './station.ts';
export { exerciseVersions, recordingVersions, type Step, upToCurrent, type Versions } from './version.ts';

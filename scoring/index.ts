/** Scoring: reads attempts, measures bead and hand, judges against acceptance profiles, and says what to change first. */

export { type Attempt, attemptOf } from './attempt/attempt.ts';
export { type Span, spanBetween, Trace } from './attempt/trace.ts';
export { type SectionSvgOptions, sectionSvg } from './draw/section-svg.ts';
export { standingSvg } from './draw/standing-svg.ts';
export { type StripSvgOptions, stripSvg } from './draw/strip-svg.ts';
export { type Place, zoneOutlines } from './draw/zones.ts';
export * from './exercises/ready.ts';
export { compare, type Sense } from './lines/limit.ts';
export { type ByHandName, byHand, byHandOn, MARK_PX, type PictureScale } from './macro/by-hand.ts';
export { type Coupon, checkCoupon, couponSchema, couponVersions, readCoupon } from './macro/coupon.ts';
export { type CouponReport, couponReport } from './macro/coupon-report.ts';
export { type CutFrame, cutFrame, type EtchedCut, etchedCut } from './macro/etched.ts';
export { type JointFrame, jointFrame, placeMarks, placeOf, scaleOf } from './macro/joint-frame.ts';
export { type PictureMarks, type PictureSpot, type PlacedMarks, pictureMarksSchema } from './macro/marks.ts';
export {
  compareOwn,
  type LineMet,
  type OwnMark,
  type OwnMarks,
  type OwnReading,
  type OwnRow,
  type OwnSide,
} from './macro/own-reading.ts';
export {
  MOST_PICTURE_BYTES,
  MOST_PICTURE_PX,
  PICTURE_HEAD_BYTES,
  PICTURE_TAIL_BYTES,
  type PictureHead,
  pictureEnds,
  pictureHead,
} from './macro/picture.ts';
export { type MarkedReadings, readMarks } from './macro/read-marks.ts';
export { openedRoot, type RootPlace, SLICE_MM, Survey } from './measures/bead/survey.ts';
export { type HandQuestion, type HandReading, readHand } from './measures/hand/motion.ts';
export { type PlusMinusName, plusMinus, plusMinusAt } from './measures/precision.ts';
export { HEAT_INPUT_RULE } from './measures/process.ts';
export { type Outline, outlineOf, type Toe } from './measures/section/outline.ts';
export { type FreezeStamps, type Reading, readSection } from './measures/section/station.ts';
export { attemptHtml } from './papers/attempt-html.ts';
export { type AttemptPaper, attemptPaper, type PaperLine, type PaperOptions } from './papers/attempt-paper.ts';
export * from './profiles/ready.ts';
export { mapOf, middleSentences, RANGE_CAUTION, RANGE_LABEL, type RangeMap, workingRange } from './range/map.ts';
export type { Middle } from './range/middle.ts';
export { type Axis, axes, MOST_POINTS, pointsOf, type RangePlan, type RangePoint } from './range/plan.ts';
export { rangeSvg } from './range/range-svg.ts';
export { type RangeRow, rangeCsv, rangeRows } from './range/table.ts';
export { type RangeResult, weldPoint } from './range/weld-point.ts';
export { type BeadStart, type BeadStop, beadStartSchema, beadStopSchema, type Flaw } from './schema/ends.ts';
export { type Asked, type Band, type Exercise, exerciseSchema, type HandTarget } from './schema/exercise.ts';
export { type JsonSchemaName, jsonSchema, jsonSchemaNames } from './schema/json-schema.ts';
export {
  type Crossing,
  type Motion,
  motionSchema,
  type Restart,
  type StartMotion,
  type Stop,
  type ToeVisit,
} from './schema/motion.ts';
export { describeFound, InputError, type Problem, parseWith } from './schema/problem.ts';
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
} from './schema/profile.ts';
export {
  type Cut,
  type ProvedAdvice,
  type ProvedResult,
  provedAdviceSchema,
  provedResultSchema,
  type Trial,
} from './schema/proved.ts';
export { readExercise, readProfile, readRecording } from './schema/read.ts';
export {
  type AttemptRecording,
  checkRecording,
  MOST_POSES,
  MOST_RECORDING_TEXT,
  recordingSchema,
} from './schema/recording.ts';
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
} from './schema/result.ts';
export {
  type Consistency,
  consistencySchema,
  type Station,
  type StationMeasure,
  stationSchema,
} from './schema/station.ts';
export { exerciseVersions, recordingVersions, type Step, upToCurrent, type Versions } from './schema/version.ts';
export { judgeAttempt, type ScoreOptions, scoreAttempt } from './score.ts';
export { applyChange } from './trials/apply.ts';
export { ENOUGH, type ProveOptions, proveAdvice, RERUNS } from './trials/prove-advice.ts';
export { steps } from './trials/steps.ts';
export { endSentences } from './words/ends.ts';
export { measureName, plateName, said, toeName } from './words/names.ts';
export { CAUTIONS, NOT_MODELLED } from './words/statements.ts';
export { changeSaid } from './words/trials.ts';

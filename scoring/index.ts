/** Scoring: reads attempts, measures bead and hand, judges against acceptance profiles, and says what to change first. */

export { AGREEMENT_RULE, type Agreement, agreementOf } from './agreement/agreement.ts';
export { readingRow } from './agreement/coupon-rows.ts';
export {
  blankReadings,
  type ReadingRow,
  type ReadingsTable,
  readReadings,
  tableOf,
} from './agreement/readings-table.ts';
export { type Attempt, attemptOf } from './attempt/attempt.ts';
export { Trace } from './attempt/trace.ts';
export {
  checkWork,
  MOST_WORK_S,
  type MuchWork,
  workOver,
  workSaid,
  workTimeSaid,
} from './attempt/work.ts';
export { type CutOfFile, cutOfFile, resultOfFile, resultText } from './class/attempt-file.ts';
export { type Entry, LATEST, type TraineeRow } from './class/entry.ts';
export { faultName } from './class/faults.ts';
export { type AttemptName, attemptFileName, personSaid, readAttemptName, wordsInName } from './class/file-name.ts';
export { FIRST_RULE, type First } from './class/first-three.ts';
export { type KnownPieces, platesOf } from './class/pieces.ts';
export { type OnRoster, person, readRoster } from './class/roster.ts';
export { rowsCsv, rowsJsonl } from './class/rows.ts';
export { mismatchesSaid, notCountedSaid } from './class/said.ts';
export { keptScore, scoreKey } from './class/score-key.ts';
export {
  type Answer,
  answerFor,
  type BadFile,
  byFile,
  type Judge,
  type OtherFile,
  type Scored,
  scoreBytes,
} from './class/scored.ts';
export { type ClassSheet, classSheet } from './class/sheet.ts';
export { sheetCsv } from './class/sheet-csv.ts';
export { commonSaid, headline, sheetText, TABLE_HEAD, tableCells } from './class/sheet-text.ts';
export { isTaken, MOST_FILES, refusePacked } from './class/taken.ts';
export { WEEKS_RULE, type Week, weeksOf, weekTable } from './class/weeks.ts';
export { classWordsIn, faultSaid } from './class/words-in.ts';
export { type SectionSvgOptions, sectionSvg } from './draw/section-svg.ts';
export { type StripSvgOptions, stripSvg } from './draw/strip-svg.ts';
export { digest, exerciseDigest } from './exercises/digest.ts';
export { FREE_NAME, type FreeChoice, freeExercise } from './exercises/free.ts';
export {
  checkMade,
  draftFrom,
  exerciseFileName,
  ownLimits,
  profileFileName,
  usualLengths,
  withConsequences,
  withOptions,
} from './exercises/made.ts';
export { dealPiece, MOST_PLATES, pieceSeed } from './exercises/piece.ts';
export { exerciseNamed, exercises } from './exercises/ready.ts';
export { loadLanguage } from './load-language.ts';
export { byHandOn, type PictureScale } from './macro/by-hand.ts';
export { type Coupon, checkCoupon, readCoupon } from './macro/coupon.ts';
export { type CouponReport, couponReport } from './macro/coupon-report.ts';
export { type CutFrame, cutFrame, type EtchedCut, etchedCut } from './macro/etched.ts';
export { jointFrame, scaleOf, scalesOf, type TwoScales } from './macro/joint-frame.ts';
export type { PictureMarks, PictureSpot } from './macro/marks.ts';
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
export type { MarkedReadings } from './macro/read-marks.ts';
export { openedRoot, type RootPlace, Survey, tiedIn } from './measures/bead/survey.ts';
export { type HandMeasure, type HandReading, handAlone, handMeasures } from './measures/hand/alone.ts';
export { accountsOpen } from './measures/open-accounts.ts';
export { type PlusMinusName, plusMinus, plusMinusAt, type RunKind, runKindOf } from './measures/precision.ts';
export { type Reading, readSection } from './measures/section/station.ts';
export { agreementHtml } from './papers/agreement-html.ts';
export { attemptHtml } from './papers/attempt-html.ts';
export {
  type AttemptPaper,
  attemptPaper,
  attemptPaperOf,
  type Judged,
  type PaperLine,
  type PaperOptions,
} from './papers/attempt-paper.ts';
export { boothHtml } from './papers/booth-html.ts';
export { type BoothPaper, boothPaper } from './papers/booth-paper.ts';
export { classHtml } from './papers/class-html.ts';
export {
  type ClassPaper,
  classPaper,
  classPaperWith,
  type FirstCut,
  type FirstOnPaper,
  firstCut,
  type OpenFile,
} from './papers/class-paper.ts';
export { exerciseHtml } from './papers/exercise-html.ts';
export { type ExercisePaper, exercisePaper } from './papers/exercise-paper.ts';
export {
  EXERCISE_PRINTS,
  type ExercisePrint,
  exercisePrintHtml,
  exercisePrintPdf,
} from './papers/exercise-prints.ts';
export { macroHtml } from './papers/macro-html.ts';
export { type MacroPaper, macroPaper } from './papers/macro-paper.ts';
export type { PaperFonts } from './papers/paper-fonts.ts';
export { attemptPdf, boothPdf, classPdf, exercisePdf, macroPdf } from './papers/pdf-later.ts';
export { profileOf } from './profiles/of-exercise.ts';
export { profileNamed, profiles } from './profiles/ready.ts';
export { rangeAround } from './range/around.ts';
export { mapOf, middleSentences, RANGE_CAUTION, RANGE_LABEL, type RangeMap, workingRange } from './range/map.ts';
export { pointsOf, type RangePlan, type RangePoint } from './range/plan.ts';
export { rangeSvg } from './range/range-svg.ts';
export { type RangeRow, rangeCsv, rangeRows } from './range/table.ts';
export { type RangeResult, weldPoint } from './range/weld-point.ts';
export { withoutPiece } from './schema/asked.ts';
export { textOf } from './schema/bytes.ts';
export { clean } from './schema/clean.ts';
export type { BeadStart, BeadStop, Flaw } from './schema/ends.ts';
export { type Asked, type Exercise, exerciseSchema, type HandTarget, sizeAsked } from './schema/exercise.ts';
export { WEAVE_RANGES } from './schema/exercise-check.ts';
export { type JsonSchemaName, jsonSchema, jsonSchemaNames } from './schema/json-schema.ts';
export { type Band, FREE_IN_HAND, type FreeSetting, isLeft, type Leeway } from './schema/leeway.ts';
export type { Crossing, Motion, Restart, StartMotion, Stop, ToeVisit } from './schema/motion.ts';
export { InputError, type Problem, parseWith } from './schema/problem.ts';
export {
  type Extent,
  type Limit,
  type LineMeasure,
  lineMeasures,
  type Profile,
  profileSchema,
  type Rule,
  ruleMeasures,
} from './schema/profile.ts';
export { type Cut, type ProvedAdvice, type ProvedResult, provedResultSchema, type Trial } from './schema/proved.ts';
export { parseJson, readExercise, readProfile, readRecording } from './schema/read.ts';
export { type AttemptRecording, checkRecording, recordingSchema } from './schema/recording.ts';
export {
  type Advice,
  type AdviceCode,
  adviceCodes,
  type Change,
  type ExerciseInResult,
  type Line,
  type LineVerdict,
  lineVerdicts,
  type Note,
  type NoteCode,
  noteCodes,
  type Reason,
  type ReasonCode,
  type Result,
  reasonCodes,
  resultSchema,
  type Verdict,
  verdicts,
} from './schema/result.ts';
export type { Consistency, Station } from './schema/station.ts';
export { type FileKind, fileKinds, type OwnKind, whatIs } from './schema/what-is.ts';
export { type JudgeOptions, judgeAttempt, judgementOf, type ScoreOptions, scoreAttempt } from './score.ts';
export type { TechniqueRow } from './techniques/rows.ts';
export { type OnOneCoupon, type TwoTechniques, twoTechniques } from './techniques/two-techniques.ts';
export { applyChange, knobsOf } from './trials/apply.ts';
export {
  faultHand,
  type Proof,
  type ProofFault,
  type ProofHand,
  type ProofRow,
  proofFaults,
  proofHands,
  proofOf,
  weldProof,
} from './trials/exercise-proof.ts';
export { canBeProved, type FirstProof, proofSaid, proveFirst } from './trials/first-proof.ts';
export { type ProveOptions, proveAdvice } from './trials/prove-advice.ts';
export { inSteps, type Knob, steps as knobSteps } from './trials/steps.ts';
export type { ScoringWords } from './words/en.ts';
export { endSentences } from './words/ends.ts';
export { inInches, type MetricUnit, withInches } from './words/inches.ts';
export { type Judgement, resultOf } from './words/judgement.ts';
export { type Language, languages } from './words/language.ts';
export { leftToTrainee } from './words/left-free.ts';
export { tiedInShares, weldedDown, wholePercent } from './words/root.ts';
export { CAUTIONS, NOT_MODELLED } from './words/statements.ts';
export { wordsIn } from './words/words.ts';

import {
  type Answer,
  type AttemptRecording,
  answerFor,
  type CutOfFile,
  cutOfFile,
  type Exercise,
  type First,
  type FirstCut,
  type FirstProof,
  firstCut,
  type Judge,
  type Language,
  type OnOneCoupon,
  type ProofHand,
  type ProofRow,
  proveFirst,
  type RangePlan,
  type RangePoint,
  type RangeResult,
  type Result,
  resultOfFile,
  type TwoTechniques,
  twoTechniques,
  weldPoint,
  weldProof,
} from '../../../scoring/index.ts';
import { messageOf } from '../session/problem.ts';

/** What a helping hand is asked. */
export type HandTask =
  /** Scores a file. */
  | { type: 'score'; file: string; bytes: Uint8Array; judge: Judge }
  /** Welds one of those to see first again and cuts it. `place`: which of the three, from 0. */
  | { type: 'cut'; first: First; place: number; bytes: Uint8Array; language: Language }
  /** Welds an exercise with a robot hand and judges it. */
  | { type: 'prove'; exercise: Exercise; hand: ProofHand }
  /** Welds an attempt again to prove the first sentence said of it. */
  | { type: 'prove first'; recording: AttemptRecording; result: Result }
  /** Welds one combination of a sweep. */
  | { type: 'range'; plan: RangePlan; point: RangePoint }
  /** Welds an attempt again for one of the files that are made of it. `cut`: the result that says where to cut; null: its result is wanted. */
  | { type: 'file'; file: string; bytes: Uint8Array; cut: Result | null }
  /** Compares two techniques on one coupon. */
  | { type: 'techniques'; coupon: OnOneCoupon };

/** What comes back. A task that cannot be done answers why. */
export type HandAnswer =
  | { type: 'score'; answer: Answer }
  | { type: 'cut'; cut: FirstCut }
  | { type: 'file'; made: string | CutOfFile }
  | { type: 'file'; reason: string }
  | { type: 'prove'; row: ProofRow }
  | { type: 'prove'; reason: string }
  | { type: 'prove first'; proof: FirstProof | null }
  | { type: 'range'; result: RangeResult }
  | { type: 'range'; reason: string }
  | { type: 'techniques'; both: TwoTechniques }
  | { type: 'techniques'; reason: string };

/** Does a task. */
export function doTask(task: HandTask): HandAnswer {
  switch (task.type) {
    case 'score':
      return { type: 'score', answer: answerFor(task.bytes, task.file, task.judge) };
    case 'cut':
      return { type: 'cut', cut: firstCut(task.first, task.place, () => task.bytes, task.language) };
    case 'file':
      try {
        const { file, bytes, cut } = task;
        return { type: 'file', made: cut === null ? resultOfFile(bytes, file) : cutOfFile(bytes, file, cut) };
      } catch (error) {
        return { type: 'file', reason: messageOf(error) };
      }
    case 'prove':
      try {
        return { type: 'prove', row: weldProof(task.exercise, task.hand) };
      } catch (error) {
        return { type: 'prove', reason: messageOf(error) };
      }
    case 'prove first':
      return { type: 'prove first', proof: proveFirst(task.recording, task.result) };
    case 'range':
      try {
        return { type: 'range', result: weldPoint(task.plan, task.point) };
      } catch (error) {
        return { type: 'range', reason: messageOf(error) };
      }
    case 'techniques':
      try {
        return { type: 'techniques', both: twoTechniques(task.coupon) };
      } catch (error) {
        return { type: 'techniques', reason: messageOf(error) };
      }
  }
}

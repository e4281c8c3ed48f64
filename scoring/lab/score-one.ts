import { EngineError } from '../../engine/index.ts';
import { InputError, type Result } from '../index.ts';
import { scoreBytes } from '../node/index.ts';
import { readJudge } from './judge.ts';

/** Work for a scoring thread. */
export interface ScoreTask {
  attempt: string;
  bytes: Uint8Array;
  judge: string;
}

/** What came of it: a result, or the sentence why there can be none. Either is the same whoever scores it and however often. */
export type ScoreOutcome =
  | { result: Result; hand: string; motion: string; fault: null }
  | { result: null; hand: null; motion: null; fault: string };

/** Welds an attempt and judges it. Nothing that the file says of its own result is believed. */
export function scoreOne({ attempt, bytes, judge }: ScoreTask): ScoreOutcome {
  try {
    const { result, hand, motion } = scoreBytes(bytes, attempt, readJudge(judge));
    return { result, hand, motion, fault: null };
  } catch (error) {
    if (error instanceof InputError || error instanceof EngineError) {
      return { result: null, hand: null, motion: null, fault: error.message };
    }
    throw error;
  }
}

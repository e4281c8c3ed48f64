import { dealPiece, type Exercise, pieceSeed } from '../index.ts';
import { exerciseDigest } from '../node/index.ts';
import { type JudgeCopy, judgeOf, readJudge } from './judge.ts';

/** The piece a file says it was welded on. */
export interface Carried {
  number: number;
  seed: string;
}

/** What the lab deals by: the assignment's judge and start word, and the number on the trainee's plate. */
interface Deal {
  judge: JudgeCopy;
  startWord: string | null;
  plate: number | null;
}

/** The exercise on the piece dealt to one trainee; the same for all where it lets nothing vary or nobody was given a plate. */
export function dealtTo(exercise: Exercise, { startWord, plate }: Omit<Deal, 'judge'>): Exercise {
  return startWord === null || plate === null ? exercise : dealPiece(exercise, startWord, plate);
}

/** What a trainee's attempt is judged by. Welded on another piece, joint and cuts are not this judge's, and the result says so. */
export function dealtJudge(deal: Deal): JudgeCopy {
  if (deal.startWord === null || deal.plate === null) return deal.judge;
  const { exercise, profile } = readJudge(deal.judge.content);
  return exercise.vary === undefined ? deal.judge : judgeOf(dealtTo(exercise, deal), profile);
}

/** A trainee of the class with a plate. */
export interface Plate {
  name: string;
  plate: number;
}

/**
 * What is wrong with the piece a file was welded on, in a sentence; null: it is the one dealt, or none is.
 * @param others who has which plate of the class
 */
export function pieceFault(
  exercise: Exercise,
  { startWord, plate }: Omit<Deal, 'judge'>,
  carried: Carried | null,
  others: readonly Plate[],
): { code: 'no-piece' | 'other-piece'; text: string } | null {
  if (startWord === null || plate === null || exercise.vary === undefined) return null;
  if (carried === null) {
    return {
      code: 'no-piece',
      text: `It was welded on no plate of one's own, though the exercise deals everybody one: plate ${plate} to this trainee.`,
    };
  }
  const asked = exerciseDigest(exercise);
  if (asked === null) return null;
  if (carried.seed === pieceSeed(asked, startWord, plate)) return null;
  const dealt = carried.seed === pieceSeed(asked, startWord, carried.number);
  const owner = others.find((o) => o.plate === carried.number)?.name;
  const whose = dealt && owner !== undefined ? `, which is ${owner}'s` : '';
  const from = dealt ? '' : ', as another start word or nobody deals it';
  return {
    code: 'other-piece',
    text: `It was welded on plate ${carried.number}${whose}${from}; the lab deals plate ${plate} to this trainee.`,
  };
}

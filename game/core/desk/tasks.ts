import type { Answer, First, FirstCut, Judge } from '../../../scoring/index.ts';
import { answerFor, firstCut } from '../../../scoring/index.ts';

/** What a helping hand is asked. */
export type HandTask =
  /** Scores a file. */
  | { type: 'score'; file: string; bytes: Uint8Array; judge: Judge }
  /** Welds one of those to see first again and cuts it. `place`: which of the three, from 0. */
  | { type: 'cut'; first: First; place: number; bytes: Uint8Array };

/** What comes back. A task that cannot be done answers why. */
export type HandAnswer = { type: 'score'; answer: Answer } | { type: 'cut'; cut: FirstCut };

/** Does a task. */
export function doTask(task: HandTask): HandAnswer {
  switch (task.type) {
    case 'score':
      return { type: 'score', answer: answerFor(task.bytes, task.file, task.judge) };
    case 'cut':
      return { type: 'cut', cut: firstCut(task.first, task.place, () => task.bytes) };
  }
}

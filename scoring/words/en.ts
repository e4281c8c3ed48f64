import { adviceSaid } from './advice.ts';
import { drawingWords } from './drawing.ts';
import { gapSaid } from './gaps.ts';
import { leftWords } from './left-free.ts';
import { measureName, plateName, said, toeName } from './names.ts';
import { tiedInSaid } from './root.ts';
import { rootSaid } from './seen.ts';
import { CAUTIONS, NOT_MODELLED } from './statements.ts';
import { changeSaid, proofSentences } from './trials.ts';
import { noteSaid, reasonSaid } from './verdict.ts';

/** What scoring says, in English. It is the type of every other language: one that leaves something out does not compile. */
export const english = {
  said,
  plateName,
  toeName,
  measureName,
  rootSaid,
  tiedInSaid,
  changeSaid,
  left: leftWords,
  proof: proofSentences,
  drawing: drawingWords,
  advice: (found: Parameters<typeof adviceSaid>[0]) => adviceSaid(found),
  reason: (found: Parameters<typeof reasonSaid>[0]) => reasonSaid(found),
  note: (found: Parameters<typeof noteSaid>[0]) => noteSaid(found),
  gap: gapSaid,
  /** A text of the ready exercises or profiles, by what it is in English; any other text is somebody's own and stays as it is. */
  ready: (text: string): string => text,
  /** A text that was said in English where it was found out (`phrases/`), in the language. */
  phrase: (text: string): string => text,
  /** The message of an `InputError` in the language. */
  refusal: (message: string): string => message,
  /** Of a PDF. @param list what each number in brackets stands for, by code points */
  unset: (list: string): string =>
    `In brackets: letters that the typeface of this PDF does not have (${list}). The same sheet saved as a page, or printed from one, shows them.`,
  notModelled: NOT_MODELLED,
  cautions: CAUTIONS,
};
/** Everything scoring says, in one language. */
export type ScoringWords = typeof english;

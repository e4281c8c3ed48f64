import { classWords } from './class/de/class-words.ts';
import { faultNames } from './class/de/faults.ts';
import { spokenOfClass } from './class/words-in.ts';
import { attemptWords } from './papers/de/attempt-words.ts';
import { sheetWords } from './papers/de/sheet-words.ts';
import { spokenOnPaper } from './papers/words-in.ts';
import { german } from './words/de/words.ts';
import { scoringWords } from './words/words.ts';

/** Everything scoring says in German. */
export function speakGerman(): void {
  scoringWords.add('de', german);
  spokenOfClass.add('de', { sheet: classWords, fault: (code) => faultNames[code] });
  spokenOnPaper.add('de', { attempt: attemptWords, sheets: sheetWords });
}

/** What of scoring needs Node: folders on worker threads, class sheets, reports as PDF and PNG. The rest is in index.ts and runs anywhere. */

export { copySaid, type Entry, LATEST, OF_THE_FILE, PRACTICE, type TraineeRow } from '../class/entry.ts';
export { faultName } from '../class/faults.ts';
export { type AttemptName, readAttemptName } from '../class/file-name.ts';
export { FIRST_RULE, type First } from '../class/first-three.ts';
export { rowsCsv, rowsJsonl } from '../class/rows.ts';
export { type BadFile, type Judge, type Scored, scoreBytes } from '../class/scored.ts';
export { type ClassSheet, classSheet } from '../class/sheet.ts';
export { sheetCsv } from '../class/sheet-csv.ts';
export { sheetText } from '../class/sheet-text.ts';
export { exerciseDigest } from '../exercises/digest.ts';
export { classHtml } from '../papers/class-html.ts';
export type { ClassPaper, FirstOnPaper } from '../papers/class-paper.ts';
export type { ExercisePrint } from '../papers/exercise-prints.ts';
export { MOST_BYTES, textOf } from '../schema/bytes.ts';
export { type MotionPath, pathOfText } from '../verdict/motion-path.ts';
export { type Copy, copyOf } from '../verdict/twins.ts';
export { JOURNAL_NAME } from './journal.ts';
export { attemptPdf, classPaper, classPdf, exercisePrintPdf, pngOf } from './papers.ts';
export { type FolderOptions, type FolderScores, MOST_WORKERS, type Progress, scoreFolder } from './score-folder.ts';

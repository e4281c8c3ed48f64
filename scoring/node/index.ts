/** What of scoring needs Node: folders on worker threads, class sheets, reports as PDF and PNG. The rest is in index.ts and runs anywhere. */

export { type Entry, entriesOf, LATEST } from '../class/entry.ts';
export { faultName } from '../class/faults.ts';
export { type AttemptName, exerciseMeant, personSaid, readAttemptName } from '../class/file-name.ts';
export { FIRST_RULE, type First, firstThree } from '../class/first-three.ts';
export { csvText, type Row, rowOf, rowsCsv, rowsJsonl } from '../class/rows.ts';
export { type Judge, type Scored, scoreBytes } from '../class/scored.ts';
export { type ClassSheet, classSheet, type TraineeRow } from '../class/sheet.ts';
export { sheetCsv } from '../class/sheet-csv.ts';
export { sheetText } from '../class/sheet-text.ts';
export { attemptPdf } from '../papers/attempt-pdf.ts';
export { classHtml } from '../papers/class-html.ts';
export { type ClassPaper, classPaper, type FirstOnPaper } from '../papers/class-paper.ts';
export { classPdf } from '../papers/class-pdf.ts';
export { MOST_BYTES, readBytes, textOf, writeText } from './files.ts';
export { type FolderList, listFolder, readInFolder } from './folder.ts';
export { JOURNAL_NAME } from './journal.ts';
export { pngOf } from './png.ts';
export {
  type BadFile,
  type FolderOptions,
  type FolderScores,
  MOST_WORKERS,
  type Progress,
  scoreFolder,
} from './score-folder.ts';

/** Scoring of whole folders, for Node: worker threads, journal, rows. */

export { writeText } from './atomic.ts';
export { MOST_BYTES, readBytes, textOf } from './bytes.ts';
export { type AttemptName, exerciseMeant, personSaid, readAttemptName } from './file-name.ts';
export { type FolderList, listFolder, readInFolder } from './folder.ts';
export { JOURNAL_NAME } from './journal.ts';
export { csvText, type Row, rowOf, rowsCsv, rowsJsonl } from './rows.ts';
export {
  type BadFile,
  type FolderOptions,
  type FolderScores,
  MOST_WORKERS,
  type Progress,
  scoreFolder,
} from './score-folder.ts';
export { type Judge, type Scored, scoreBytes } from './scored.ts';

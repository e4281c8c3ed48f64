/** Scoring of whole folders, for Node: worker threads, journal, rows. */

export { type AttemptName, exerciseMeant, personSaid, readAttemptName } from '../class/file-name.ts';
export { csvText, type Row, rowOf, rowsCsv, rowsJsonl } from '../class/rows.ts';
export { type Judge, type Scored, scoreBytes } from '../class/scored.ts';
export { writeText } from './atomic.ts';
export { MOST_BYTES, readBytes, textOf } from './files.ts';
export { type FolderList, listFolder, readInFolder } from './folder.ts';
export { JOURNAL_NAME } from './journal.ts';
export {
  type BadFile,
  type FolderOptions,
  type FolderScores,
  MOST_WORKERS,
  type Progress,
  scoreFolder,
} from './score-folder.ts';

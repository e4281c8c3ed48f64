/** The class sheet: who does what now, what the class has in common, whom to see first. */

export { type ClassSheet, classSheet, type TraineeRow } from './class-sheet.ts';
export { type Entry, entriesOf, LATEST } from './entry.ts';
export { faultName } from './fault-names.ts';
export { FIRST_RULE, type First, firstThree } from './first-three.ts';
export { sheetCsv } from './sheet-csv.ts';
export { sheetText } from './sheet-text.ts';

/** The class sheet: who does what now, what the class has in common, whom to see first. */

export { type Entry, entriesOf, LATEST } from './entry.ts';
export { faultName } from './faults.ts';
export { FIRST_RULE, type First, firstThree } from './first-three.ts';
export { type ClassSheet, classSheet, type TraineeRow } from './sheet.ts';
export { sheetCsv } from './sheet-csv.ts';
export { sheetText } from './sheet-text.ts';

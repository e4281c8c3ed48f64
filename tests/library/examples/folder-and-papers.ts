// Score a folder on worker threads, lay the class sheet, print the report of one attempt. Names and readings are invented.
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { attemptPaper } from 'toehold/scoring';
import { attemptPdf, classSheet, rowsCsv, scoreFolder, sheetText } from 'toehold/scoring/node';
import { recording } from './weld-and-score.ts';

const folder = mkdtempSync(join(tmpdir(), 'toehold-class-'));
const file = '2026-03-14_b2_ines-calder_inverted-v-tee_01.json';
writeFileSync(join(folder, file), JSON.stringify(recording));
writeFileSync(join(folder, 'half.json'), JSON.stringify(recording).slice(0, 5000));

export const scores = await scoreFolder(folder, { workers: 2, journal: null });
export const csv = rowsCsv(scores.scored);
export const sheet = sheetText(classSheet(scores));
export const pdf = await attemptPdf(attemptPaper(recording, file));

console.log(sheet);
console.log(`The report has ${pdf.length} bytes.`);

// A class scored in a page, as a school's own site might: only what browsers have (File, and a link to save by), no server, nothing from Node.
// Names and readings are invented.
import {
  answerFor,
  attemptHtml,
  attemptPaper,
  byFile,
  classSheet,
  readRecording,
  sheetCsv,
  sheetText,
} from 'toehold/scoring';
import { recording } from './weld-and-score.ts';

/** What a file input or a drop hands over. A page would do this in a Worker, a file at a time. */
export async function classOf(files: Iterable<File>) {
  const scored = [];
  const bad = [];
  for (const file of files) {
    const answer = answerFor(new Uint8Array(await file.arrayBuffer()), file.name, { exercise: null, profile: null });
    if (answer.ok) scored.push(answer.scored);
    else bad.push({ file: file.name, reason: answer.reason });
  }
  return classSheet({ scored: scored.sort(byFile), bad: bad.sort(byFile) });
}

const text = JSON.stringify(recording);
const name = '2026-03-14_b2_ines-calder_inverted-v-tee_01.json';
export const sheet = await classOf([new File([text], name), new File([text.slice(0, 5000)], 'half.json')]);
export const csv = sheetCsv(sheet);
/** A page to print: put it into an iframe's srcdoc, or a window of its own. */
export const report = attemptHtml(attemptPaper(readRecording(text, name), name));

console.log(sheetText(sheet));

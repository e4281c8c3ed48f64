import { classPaper, InputError } from '../index.ts';
import { classPdf, classSheet, type Scored } from '../node/index.ts';

/** What the class sheet is drawn from. */
export interface ClassPaperTask {
  scored: Scored[];
  bad: { file: string; reason: string }[];
  /** Digests of the exercises that count. */
  asked: string[];
  /** Bytes of the recordings whose cuts are drawn, by their files' names. */
  recordings: Record<string, Uint8Array>;
}

/** The class sheet as a PDF, by the code of `toehold sheet --out class.pdf`: the same scores give the same bytes. The three to see first are welded again. */
export function classPaperOf({ scored, bad, asked, recordings }: ClassPaperTask): Promise<Uint8Array> {
  const sheet = classSheet({ scored, bad }, new Set(asked));
  const paper = classPaper(sheet, (file) => {
    const bytes = recordings[file];
    if (bytes === undefined)
      throw new InputError(file, [
        { path: '', found: 'no file of that name', allowed: 'a recording in the data folder' },
      ]);
    return bytes;
  });
  return classPdf(paper);
}

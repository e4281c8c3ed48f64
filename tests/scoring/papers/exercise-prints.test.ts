/** An exercise's sheet, macro sheet and booth card: on the command line and from the page, as page and as PDF, the same bytes, one A4 each. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { EXERCISE_PRINTS, exerciseNamed, exercises } from '../../../scoring/index.ts';
import { exercisePrintPdf } from '../../../scoring/node/index.ts';
import { TestBench } from '../../game/support/test-bench.ts';
import { toehold } from '../../support/toehold.ts';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'toehold-prints-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

/** Pages of a PDF of ours, which is not compressed: its page objects (ISO 32000-1, 7.7.3.3). */
const pagesIn = (pdf: Uint8Array): number =>
  Buffer.from(pdf)
    .toString('latin1')
    .match(/\/Type \/Page\b/g)?.length ?? 0;

describe('papers of an exercise', () => {
  it('come from the page as the command line writes them', async () => {
    const bench = new TestBench();
    const { desk } = bench.session;
    desk.editor.begin(exerciseNamed('lap-5')!);
    desk.editor.save();
    const [{ name, content }] = bench.saved;
    const file = join(folder, name);
    writeFileSync(file, JSON.stringify(content));
    for (const what of EXERCISE_PRINTS) {
      const [html, pdf] = ['html', 'pdf'].map((end) => join(folder, `${what}.${end}`)) as [string, string];
      expect((await toehold('exercise', file, `--${what}`, html)).code).toBe(0);
      expect((await toehold('exercise', file, `--${what}`, pdf)).code).toBe(0);
      desk.printOf(what);
      expect(bench.printed.at(-1)).toBe(readFileSync(html, 'utf8'));
      await desk.savePdfOf(what);
      const saved = bench.saved.at(-1)!;
      expect(saved.name).toBe(`lap-2-${what}.pdf`);
      expect(readFileSync(pdf).equals(Buffer.from(saved.content as Uint8Array))).toBe(true);
    }
  });

  it.each([exercises[0]!, exercises.at(-1)!].map((e) => [e.name, e] as const))(
    'of %s are one A4 each',
    async (_, e) => {
      for (const what of EXERCISE_PRINTS) expect(pagesIn(await exercisePrintPdf(e, what))).toBe(1);
    },
  );

  it('are refused by name: no exercise, no kind of paper, and nothing is written', async () => {
    const not = join(folder, 'not.json');
    writeFileSync(not, '{"format":"toehold-profile"}');
    const { code, err } = await toehold('exercise', not, '--sheet', join(folder, 'never.pdf'));
    expect([code, err]).toEqual([2, expect.stringContaining('toehold-profile')]);
    const kind = await toehold('exercise', 'lap-5', '--sheet', join(folder, 'sheet.docx'));
    expect(kind.err).toMatch(/--sheet: found ".*sheet.docx", allowed: a file name ending in .html or .pdf/);
    expect(() => readFileSync(join(folder, 'never.pdf'))).toThrow(/ENOENT/);
  });
});

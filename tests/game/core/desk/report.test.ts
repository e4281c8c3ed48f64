import { describe, expect, it } from 'vitest';
import { attemptHtml, attemptPaper, checkRecording } from '../../../../scoring/index.ts';
import { TestBench } from '../../support/test-bench.ts';

describe('printing an attempt', () => {
  it('gives the command line’s report of its file, byte for byte, by button and by the browser’s own key', async () => {
    const bench = new TestBench({ length_mm: 25 });
    bench.printKey();
    expect(bench.printed).toEqual(['the page as it stands']);
    bench.session.trainees.next('Inés Calder', 'b2');
    bench
      .wait(0.1)
      .press(0, 4)
      .follow((t_s) => ({ u_mm: 0, y_mm: 4 + 2 * t_s }), 2)
      .release();
    bench.session.finish();
    await bench.result();
    await bench.until(() => bench.state.paper.value !== null, 'the report');
    bench.session.desk.printReport();
    bench.printKey();
    bench.session.save();
    const [{ name, content }] = bench.saved;
    const wanted = attemptHtml(attemptPaper(checkRecording(content, name), name));
    expect(wanted).toContain('Inés Calder');
    expect(bench.printed[1]).toBe(wanted);
    expect(bench.printed[2]).toBe(wanted);
    bench.session.again();
    expect(bench.state.paper.value).toBeNull();
  });
});

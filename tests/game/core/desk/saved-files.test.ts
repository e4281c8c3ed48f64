/** What the page saves of an attempt besides its recording: the command line's bytes, from the bench and from a class. Everybody is invented. */
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { shortTee } from '../../../scoring/class/short-tee.ts';
import { toehold } from '../../../support/toehold.ts';
import { chosen, TestBench } from '../../support/test-bench.ts';

const NAME = '2026-03-12_b1_ines-calder_short-tee_01';
const recording = shortTee(3.6);
const folder = mkdtempSync(join(tmpdir(), 'toehold-saved-'));
const path = join(folder, `${NAME}.json`);
const text = JSON.stringify(recording);
writeFileSync(path, text);

async function drawnByCommand(at_mm: number): Promise<string> {
  const svg = join(folder, 'cut.svg');
  await toehold('section', path, '--at', String(at_mm), '--svg', svg);
  return readFileSync(svg, 'utf8');
}

describe('saved beside the recording', () => {
  it('result and cut have the command line’s bytes, from the bench and from the class', async () => {
    const bench = new TestBench({ preferences: { exercises: [recording.exercise], language: 'de' } });
    const { session, saved } = bench;
    session.saver.result();
    session.saver.cut();
    expect(saved).toEqual([]);

    await session.opener.file(chosen(`${NAME}.json`, text));
    await bench.result();
    session.cutAt(4.5);
    session.saver.result();
    session.saver.cut();
    await bench.until(() => saved.length === 2, 'both files');
    const result = (await toehold('score', path, '--json')).out;
    expect(saved[0]).toEqual({ name: `${NAME}.result.json`, content: result });
    expect(saved[1]).toEqual({ name: `${NAME}.cut-4.5mm.svg`, content: await drawnByCommand(4.5) });

    await session.desk.addClass({ files: [chosen(`${NAME}.json`, text)], folders: [] });
    const { attempts } = session.desk.classRoom.view.value.sheet!.rows[0]!;
    await session.desk.saveOfClass(attempts[0]!, 'result');
    await session.desk.saveOfClass(attempts[0]!, 'cut');
    expect(saved[2]).toEqual(saved[0]);
    const at_mm = Number(/cut-([\d.]+)mm/.exec(saved[3]!.name)![1]);
    expect(saved[3]!.content).toBe(await drawnByCommand(at_mm));
    expect(at_mm).toBeCloseTo((JSON.parse(result).advice[0]?.y_mm ?? at_mm) as number, 1);
    expect(bench.hands.every((hand) => hand.closed)).toBe(true);
  });

  it('says which file it was where that is gone', async () => {
    const bench = new TestBench({ preferences: { exercises: [recording.exercise] } });
    let gone = false;
    const file = { ...chosen(`${NAME}.json`, text) };
    const stick = { ...file, arrayBuffer: () => (gone ? Promise.reject(new Error('pulled out')) : file.arrayBuffer()) };
    await bench.session.desk.addClass({ files: [stick], folders: [] });
    gone = true;
    await bench.session.desk.saveOfClass(bench.session.desk.classRoom.view.value.sheet!.rows[0]!.attempts[0]!, 'cut');
    const problem = bench.state.problem.value;
    expect(problem?.code === 'input' && problem.error.message).toMatch(
      `${NAME}.json: found a file that can no longer be`,
    );
    expect(bench.saved).toEqual([]);
  });
});

/** What else lies on a stick beside the attempts: named as what it is, and no reason to fail. Everybody is invented. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { classPaperWith, profileNamed } from '../../../scoring/index.ts';
import { classSheet } from '../../../scoring/node/index.ts';
import { toehold } from '../../support/toehold.ts';
import { shortTee } from '../class/short-tee.ts';

const WHOLE: Record<string, string> = {
  'bracket.exercise.json': 'an exercise',
  'limits.json': 'acceptance limits',
  'monday.logbook.json': 'a logbook',
  'macro.coupon.json': 'marks of a real coupon',
  'result.json': 'a result',
};
let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'toehold-kinds-'));
  const recording = shortTee(3);
  const put = (name: string, content: unknown): void => writeFileSync(join(folder, name), JSON.stringify(content));
  put('2026-03-10_b1_ines-calder_short-tee_01.json', recording);
  put('bracket.exercise.json', recording.exercise);
  put('limits.json', profileNamed('iso-5817-c'));
  put('monday.logbook.json', { format: 'toehold-logbook', version: 1, attempts: [] });
  put('macro.coupon.json', { format: 'toehold-coupon', version: 1 });
  put('result.json', { format: 'toehold-result', version: 1 });
  writeFileSync(join(folder, 'class.csv'), 'name,plate\nInes Calder,7\n');
});
afterAll(() => rmSync(folder, { recursive: true }));

describe('files of other kinds in a folder of attempts', () => {
  it('are named and left alone: the sheet is done, and the attempt counts', async () => {
    const exercise = join(folder, 'bracket.exercise.json');
    const said = await toehold('sheet', folder, '--count', exercise, '--no-journal', '--workers', '1');
    expect(said.code).toBe(0);
    expect(said.out).toContain('1 trainee, 1 file, 2026-03-10: 1 counted.');
    expect(said.out).not.toContain('Could not be read');
    for (const [name, kind] of Object.entries(WHOLE)) {
      expect(said.out).toContain(`  ${name}: ${kind}`);
      expect(said.err).toContain(`${name}: ${kind}, no attempt; left alone`);
    }
    expect(said.err).toContain('Passed over, not .json: class.csv');
  });

  it('stand on the printed sheet, in either language', () => {
    const sheet = classSheet({ scored: [], bad: [], others: [{ file: 'bracket.exercise.json', kind: 'exercise' }] });
    const lists = (language: 'en' | 'de') => Object.fromEntries(classPaperWith(sheet, [], language).lists);
    expect(lists('en')['No attempts, left alone']).toEqual(['bracket.exercise.json: an exercise']);
    expect(lists('de')['Keine Versuche, liegen gelassen']).toEqual(['bracket.exercise.json: eine Übung']);
  });
});

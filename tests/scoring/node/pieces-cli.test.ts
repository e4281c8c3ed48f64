/** A piece for everybody, by the command line: dealt, named on the sheet, refused where it is asked for by half. Everybody is invented. */
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { dealPiece, readRecording } from '../../../scoring/index.ts';
import { toehold } from '../../support/toehold.ts';
import { exerciseOf } from '../welds.ts';

const base = exerciseOf({ joint: { length_mm: 30 }, weave: { length_mm: 3, shelf_s: 0 } });
const varied = {
  ...base,
  name: 'bracket',
  vary: { gap_mm: { from: 0, to: 1 }, startTemp_C: null, cuts_mm: 2 },
};
let folder: string;
let exercise: string;
let roster: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'toehold-pieces-'));
  exercise = join(folder, 'bracket.exercise.json');
  roster = join(folder, 'class.csv');
  mkdirSync(join(folder, 'stick'));
  writeFileSync(exercise, JSON.stringify(varied));
  writeFileSync(roster, 'name,plate\nInes Calder,7\nWren Hollis,3\n');
});
afterAll(() => rmSync(folder, { recursive: true }));

describe('a piece by the command line', () => {
  it('is the one the game deals, and the sheet names whoever welded on another’s', async () => {
    const stick = join(folder, 'stick');
    const weave = ['weave', '--exercise', exercise, '--start-word', 'HERON', '--plate-number', '7', '--trainee'];
    const { code } = await toehold(...weave, 'Wren Hollis', '--bench', 'b1', '--out', stick);
    expect(code).toBe(0);
    const [file] = readdirSync(stick);
    const recording = readRecording(readFileSync(join(stick, file!), 'utf8'), file);
    expect(recording.exercise).toEqual(dealPiece(varied, 'heron', 7));
    const sheet = ['sheet', stick, '--count', exercise, '--no-journal', '--workers', '1', '--roster', roster];
    const { out } = await toehold(...sheet, '--start-word', 'heron');
    expect(out).toContain("welded on plate 7, which is Ines Calder's; the roster gives plate 3");
    expect(out).not.toContain('is not what the start word deals');
  });

  it.each([
    [['--start-word', 'heron'], /--start-word: found it alone, allowed: both/],
    [['--plate-number', '7'], /--plate-number: found it alone/],
    [['--start-word', 'heron', '--plate-number', '0'], /found "0", allowed: a whole number, 1 to 999/],
  ])('is refused where it is asked for by half: %j', async (flags, why) => {
    const { code, err } = await toehold('weave', '--exercise', exercise, ...flags, '--out', join(folder, 'no.json'));
    expect(code).toBe(2);
    expect(err).toMatch(why);
  });

  it('is refused of an exercise that deals none', async () => {
    const flags = ['--start-word', 'heron', '--plate-number', '7', '--out', join(folder, 'no.json')];
    expect((await toehold('weave', '--exercise', 'tee-inverted-v', ...flags)).err).toMatch(
      /no exercise that deals pieces/,
    );
  });
});

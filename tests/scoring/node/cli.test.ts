import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readAttemptName, readRecording, resultSchema, scoreAttempt } from '../../../scoring/index.ts';
import { toehold } from '../../support/toehold.ts';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'toehold-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

describe('toehold', () => {
  it('teaches with --help', async () => {
    const { code, out } = await toehold('--help');
    expect(code).toBe(0);
    expect(out).toContain('toehold weave --out robot.json');
    for (const command of ['weave', 'score', 'section'])
      expect((await toehold(command, '--help')).out).toContain(`$ toehold ${command}`);
  });

  it('refuses what it does not know with 2', async () => {
    expect((await toehold('polish')).code).toBe(2);
    expect((await toehold('score', '--nonsense')).code).toBe(2);
    expect((await toehold('weave')).err).toContain('--out');
  });
});

describe('weave, score, section', () => {
  const file = (name: string): string => join(folder, name);
  // The command line as the work order has it.
  const asked =
    '--joint tee --size 5 --plate 5 --plate-width 75 --wire 0.9 --volts 18 --feed 4.6 --tip-to-work 12 --pattern inverted-v --cycles-per-second 0.9 --width 5 --pause 0.25 --travel 2.0 --length 40 --start-temp 20 --gap 0';

  it('go round: weld, score, cut', async () => {
    const welded = await toehold('weave', ...asked.split(' '), '--out', file('robot.json'));
    expect(welded).toMatchObject({ code: 0, err: '' });
    expect(welded.out).toMatch(/Laying 2\d mm², the joint holds 13/);
    const scored = await toehold('score', file('robot.json'));
    expect(scored.code).toBe(0);
    expect(scored.out).toMatch(/^First: /m);
    expect(scored.out).toMatch(/past the corner at the root/);
    expect(scored.out).toContain('Not modelled');
    const cut = await toehold('section', file('robot.json'), '--at', '25', '--svg', file('cut.svg'));
    expect(cut.code).toBe(0);
    expect(readFileSync(file('cut.svg'), 'utf8')).toMatch(/^<svg [^>]*>.*<\/svg>$/s);
    expect(readdirSync(folder).filter((name) => name.endsWith('.part'))).toEqual([]);
  });

  it('print the library’s own digits as JSON', async () => {
    const { out } = await toehold('score', file('robot.json'), '--json');
    const recording = readRecording(readFileSync(file('robot.json'), 'utf8'));
    expect(JSON.parse(out)).toEqual(scoreAttempt(recording));
    resultSchema.parse(JSON.parse(out));
    const section = JSON.parse((await toehold('section', file('robot.json'), '--at', '25', '--json')).out) as {
      station: { y_mm: number };
    };
    expect(section.station).toEqual(scoreAttempt(recording).bead.stations.find((s) => s.y_mm === 25));
  });

  it('leave with 1 under --strict when a line is not within', async () => {
    await toehold('weave', '--pattern', 'straight', '--length', '30', '--out', file('straight.json'));
    expect((await toehold('score', file('straight.json'))).code).toBe(0);
    expect((await toehold('score', file('straight.json'), '--strict')).code).toBe(1);
  });

  it('name a trainee inside the recording and, into a folder, in the name of its file, counting on', async () => {
    const weld = ['weave', '--length', '20', '--trainee', 'Inés Calder', '--bench', 'B 2', '--out', folder];
    const made = [await toehold(...weld), await toehold(...weld)].map(({ out }) => /Written to (.*)/.exec(out)![1]!);
    expect(made.map((path) => readAttemptName(basename(path)))).toMatchObject([
      { bench: 'b-2', trainee: 'inés-calder', exercise: 'free-attempt', attempt: 1 },
      { bench: 'b-2', trainee: 'inés-calder', exercise: 'free-attempt', attempt: 2 },
    ]);
    expect(readRecording(readFileSync(made[0]!, 'utf8')).trainee).toEqual({ name: 'Inés Calder', bench: 'B 2' });
  });

  it('judge by another profile or exercise when told to', async () => {
    const { out } = await toehold('score', file('straight.json'), '--profile', 'iso-5817-b', '--json');
    const result = resultSchema.parse(JSON.parse(out));
    expect(result.profile!.name).toBe('iso-5817-b');
    expect(result.notes.map((n) => n.code)).toContain('profile-changed');
    expect((await toehold('score', file('straight.json'), '--exercise', 'test-piece')).out).toContain('no verdict');
  });

  it.each([
    ['volts out of range', ['weave', '--volts', '99', '--out', 'x.json'], /--volts.*found "99", allowed: 12 to 30 V/],
    ['a trainee without a letter', ['weave', '--trainee', '!!', '--out', 'x.json'], /weave: name: found "!!"/],
    ['a bench without anybody', ['weave', '--bench', 'b2', '--out', 'x.json'], /--bench: found no --trainee/],
    ['a joint nobody has', ['weave', '--joint', 'butt', '--out', 'x.json'], /--joint.*tee, lap, corner/],
    ['a hand without an amount', ['weave', '--hand', 'seven', '--out', 'x.json'], /--hand.*seed:amount/],
    [
      'a profile that is not there',
      ['weave', '--profile', 'mine', '--out', 'x.json'],
      /--profile: found "mine", allowed: aws-d11/,
    ],
    ['an exercise that is not there', ['weave', '--exercise', 'mine', '--out', 'x.json'], /--exercise: found "mine"/],
    [
      'a place that cannot be written',
      ['weave', '--length', '30', '--out', '/nowhere/at/all.json'],
      /\/nowhere\/at\/all\.json: found no such file or folder/,
    ],
    ['a file that is not there', ['score', 'gone.json'], /gone\.json: found no such file/],
    ['a folder', ['section', '.', '--at', '20'], /\.: found a folder/],
    ['a device', ['score', '/dev/zero'], /\/dev\/zero: found a device/],
  ])('refuse %s with 2, naming what was found and what is allowed', async (_name, args, message) => {
    const { code, err } = await toehold(...args);
    expect(code).toBe(2);
    expect(err).toMatch(message);
  });

  it('refuse a cut off the joint and a truncated file, and leave what was there', async () => {
    expect((await toehold('section', file('robot.json'), '--at', '41')).err).toMatch(
      /--at: found 41, allowed: 0 to 40 mm/,
    );
    writeFileSync(file('half.json'), readFileSync(file('robot.json'), 'utf8').slice(0, 4000));
    const { code, err } = await toehold('score', file('half.json'));
    expect(code).toBe(2);
    expect(err).toContain('half.json: found text that is not JSON');
    const before = readFileSync(file('robot.json'), 'utf8');
    expect((await toehold('section', file('half.json'), '--at', '20', '--svg', file('robot.json'))).code).toBe(2);
    expect(readFileSync(file('robot.json'), 'utf8')).toBe(before);
  });

  it('stay marked as a robot, with weave and faults in the file', async () => {
    await toehold('weave', '--length', '30', '--hand', '7:0.4', '--lead', '-1', '--out', file('hand.json'));
    const { origin } = readRecording(readFileSync(file('hand.json'), 'utf8'));
    expect(origin.kind).toBe('robot');
    expect(origin.faults!.seed).toBe(7);
    expect(origin.faults!.tremor_mm).toBeGreaterThan(0);
    expect(origin.faults!.lead_mm).toBeLessThan(-1);
    expect((await toehold('score', file('hand.json'))).out).toContain('Welded by the robot hand');
  });
});

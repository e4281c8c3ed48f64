import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  type AttemptRecording,
  jsonSchema,
  jsonSchemaNames,
  type Problem,
  type ProvedResult,
  type RangeMap,
  type Result,
} from '../../scoring/index.ts';
import type { FolderScores } from '../../scoring/node/index.ts';
import { packedSize_kB } from '../support/budget.ts';
import { compileExamples, type Packed, packAndInstall, run, runExample, typeFaultsOf } from './packed.ts';
import { publintOf, typesWrongIn } from './published.ts';

/** The package as somebody else would get it: packed, unpacked, run in plain Node, type-checked against its own declarations. */

const EXAMPLES = readdirSync(new URL('./examples/', import.meta.url)).map((file) => file.replace(/\.ts$/, ''));

const temp = mkdtempSync(join(tmpdir(), 'toehold-packed-'));
let packed: Packed;
/** What each example exports, run once for all tests. */
const exported = new Map<string, Record<string, unknown>>();
/** What the type check found fault with: the one mistake put there to be found, if all is well. */
let typeFaults: string[];
const MISTAKE = `import { defaultOptions } from 'toehold/engine';
export const volts: string = defaultOptions().process.volts_V;
`;

beforeAll(async () => {
  packed = await packAndInstall(temp);
  compileExamples(packed);
  writeFileSync(join(packed.project, 'examples', 'wrong.ts'), MISTAKE);
  const examples = EXAMPLES.map(async (name) => exported.set(name, await runExample(packed, name)));
  [typeFaults] = await Promise.all([typeFaultsOf(packed), ...examples]);
}, 240_000);

afterAll(() => rmSync(temp, { recursive: true, force: true }));

describe('the package', () => {
  it('has compiled code with types for every way in', () => {
    const { exports } = JSON.parse(readFileSync(join(packed.home, 'package.json'), 'utf8'));
    const ways = Object.values(exports).flatMap((way) =>
      typeof way === 'string' ? [way] : Object.values(way as object),
    );
    expect(ways.length).toBeGreaterThan(8);
    for (const way of ways as string[]) {
      const names = way.includes('*') ? jsonSchemaNames.map((name) => way.replace('*', name)) : [way];
      for (const name of names) expect(packed.files).toContain(name.replace('./', ''));
    }
  });

  it('has schemas and readmes, and nothing of tests, game or sources', () => {
    for (const name of ['README.md', 'engine/README.md', 'scoring/README.md', 'package.json'])
      expect(packed.files).toContain(name);
    const strange = packed.files.filter(
      (file) =>
        !/^dist\/(engine|scoring)\/.*(\.js|\.js\.map|\.d\.ts)$/.test(file) &&
        !/^dist\/schema\/[a-z]+\.json$/.test(file) &&
        !/^((engine|engine\/solvers|scoring)\/)?README\.md$/.test(file) &&
        file !== 'package.json' &&
        file !== 'LICENSE',
    );
    expect(strange).toEqual([]);
  });

  it('carries its licence, and of no one else any code that would need a notice', () => {
    expect(readFileSync(join(packed.home, 'LICENSE'), 'utf8')).toMatch(/^MIT License\n/);
    expect(packed.files.filter((file) => file.includes('node_modules'))).toEqual([]);
  });

  it('carries the schemas the readers check with', () => {
    expect(jsonSchemaNames).toEqual(['recording', 'exercise', 'profile', 'result']);
    for (const name of jsonSchemaNames) {
      const file = join(packed.home, 'dist', 'schema', `${name}.json`);
      expect(JSON.parse(readFileSync(file, 'utf8'))).toEqual(JSON.parse(JSON.stringify(jsonSchema(name))));
    }
  });

  it('has declarations a strict project can check its code by', () => {
    expect(typeFaults).toEqual([expect.stringMatching(/^examples\/wrong\.ts\(2,14\): error TS2322/)]);
  });

  it('has nothing that publint or arethetypeswrong would complain of, and they would', async () => {
    expect(await publintOf(packed)).toEqual([]);
    expect(await typesWrongIn(packed)).toEqual([]);
    const gone = packed.files.filter((file) => file !== 'dist/scoring/index.d.ts');
    expect(await typesWrongIn({ ...packed, files: gone })).toContain('UntypedResolution node16-esm');
  });

  it.each([
    // A page that welds and judges loads the first two, and the language it speaks; what is over is what a library coming in by the back door
    // would show in.
    ['engine', /^dist\/engine\/.*\.js$/, 110],
    ['scoring', /^dist\/scoring\/(?!node\/|german\.|(.*\/)?de\/).*\.js$/, 310],
    ['scoring in German', /^dist\/scoring\/(german|(.*\/)?de\/.*)\.js$/, 50],
    ['scoring in Node', /^dist\/scoring\/node\/.*\.js$/, 45],
  ])('carries no more code in %s than is meant', (_, which, most_kB) => {
    const code = packed.files.filter((file) => which.test(file)).map((file) => join(packed.home, file));
    const size_kB = packedSize_kB(code);
    expect(size_kB).toBeLessThan(most_kB);
    expect(size_kB).toBeGreaterThan(most_kB / 2);
  });

  it('brings a command that works without the rest of the repository', async () => {
    const command = join(packed.home, 'dist', 'scoring', 'node', 'cli', 'main.js');
    expect(await run(process.execPath, [command, '--help'], packed.project)).toContain('Usage: toehold');
    expect(existsSync(join(packed.home, 'node_modules'))).toBe(false);
  });
});

describe('the examples', () => {
  const of = <T>(name: string): T => exported.get(name) as T;

  it('weld a tee that ties in, with its books closed', () => {
    const { result, recording, cut } = of<{ result: Result; recording: AttemptRecording; cut: string }>(
      'weld-and-score',
    );
    expect(result.verdict).toBe('within');
    expect(result.stateHash).toBe(recording.stateHash);
    expect(result.books.massError).toBeLessThan(1e-6);
    expect(result.books.energyError).toBeLessThan(1e-4);
    expect(result.bead.worst!.rootFusion_mm).toBeGreaterThan(0);
    expect(cut).toMatch(/^<svg /);
    expect(cut).toContain('throat');
  });

  it('lay what the wire brought, on a puddle that follows the hand', () => {
    const { front_mm, onTheCut_mm2, fed_mm2, accounts } = of<{
      front_mm: number;
      onTheCut_mm2: number;
      fed_mm2: number;
      accounts: { massError: number; energyError: number };
    }>('step-by-step');
    expect(front_mm).toBeGreaterThan(33);
    expect(front_mm).toBeLessThan(40);
    expect(onTheCut_mm2 / fed_mm2).toBeGreaterThan(0.85);
    expect(onTheCut_mm2 / fed_mm2).toBeLessThan(1.1);
    expect(accounts.massError).toBeLessThan(1e-6);
    expect(accounts.energyError).toBeLessThan(1e-4);
  });

  it('keep every joule that went into the block, hotter nearer the source', () => {
    const { peaks, account, time_s } = of<{
      peaks: number[];
      account: { put_J: number; lost_J: number; gained_J: number; error: number };
      time_s: number;
    }>('heat-solver');
    expect(account.put_J).toBeCloseTo(1200 * time_s, 3);
    expect(account.error).toBeLessThan(1e-6);
    expect(account.lost_J).toBeGreaterThan(0);
    expect(peaks[0]).toBeGreaterThan(1500);
    expect(peaks[0]!).toBeGreaterThan(peaks[1]!);
    expect(peaks[1]!).toBeGreaterThan(peaks[2]!);
    expect(peaks[2]).toBeGreaterThan(200);
  });

  it('meet the closed form of a pinned strip', () => {
    const { middle_mm, closedForm_mm, converged } = of<Record<string, number>>('surface-solver');
    expect(converged).toBe(true);
    expect(middle_mm! / closedForm_mm!).toBeCloseTo(1, 2);
  });

  it('prove the change that mends a far tip', () => {
    const { before, proved } = of<{ before: Result; proved: ProvedResult }>('prove-advice');
    expect(before.verdict).not.toBe('within');
    expect(before.bead.worst!.rootFusion_mm).toBeLessThan(0);
    const first = proved.advice[0]!;
    expect(first.proved).toBe(true);
    expect(first.change).toMatchObject({ what: 'tipToWork_mm' });
    expect(first.change!.by).toBeLessThan(0);
    expect(first.after!.reading).toBeGreaterThan(0);
    expect(first.before!.reading).toBeLessThan(0);
  });

  it('name file, field, what was found and what is allowed', () => {
    const read = of<{ recording: AttemptRecording; sound: Problem[]; outOfRange: Problem[]; cutOff: Problem[] }>(
      'read-recording',
    );
    expect(read.recording.poses.u).toHaveLength(1);
    expect(read.sound).toEqual([]);
    expect(read.outOfRange).toEqual([{ path: 'simulation.process.volts_V', found: '180', allowed: '12 to 30 V' }]);
    expect(read.cutOff).toHaveLength(1);
    expect(read.cutOff[0]!.found).toContain('cut off');
  });

  it('map three feeds: too cold, within, so much that it drops out', () => {
    const { map } = of<{ map: RangeMap }>('working-range');
    expect(map.results.map((r) => r.verdict)).toEqual(['outside', 'within', 'no verdict']);
    const fusion = map.results.map((r) => r.rootFusion_mm!);
    expect(fusion[0]!).toBeLessThan(0);
    expect(fusion[1]!).toBeGreaterThan(0);
    expect(fusion[2]!).toBeGreaterThan(fusion[1]!);
    expect(map.middle!.point.at.feed_mpmin).toBe(5);
  });

  it('score a folder on worker threads, name the broken file, print a report', () => {
    const { scores, csv, sheet, pdf } = of<{ scores: FolderScores; csv: string; sheet: string; pdf: number[] }>(
      'folder-and-papers',
    );
    expect(scores.scored.map((s) => s.result.stateHash)).toEqual([
      of<{ result: Result }>('weld-and-score').result.stateHash,
    ]);
    expect(scores.bad.map((b) => b.file)).toEqual(['half.json']);
    expect(scores.bad[0]!.reason).toContain('cut off');
    expect(csv.trim().split('\n')).toHaveLength(2);
    expect(sheet).toContain('half.json');
    expect(String.fromCharCode(...pdf.slice(0, 5))).toBe('%PDF-');
  });
});

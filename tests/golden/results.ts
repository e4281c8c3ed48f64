/**
 * The golden results: what the command line makes of a few attempts, file by file. Results are kept readable, so that a digit that moves
 * shows as a digit; drawings, papers and tables as digests. Versions and check numbers are taken out: the golden welds hold those.
 */
import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ENGINE_VERSION } from '../../engine/index.ts';
import { run } from '../../scoring/node/cli/run.ts';
import { SCORING_VERSION } from '../../scoring/version.ts';

export const RESULTS_FILE = new URL('./results.json', import.meta.url);

export interface GoldenResults {
  engine: string;
  scoring: string;
  files: Record<string, unknown>;
}

const TEE = '--joint tee --size 5 --plate 5 --length 40';
/** Names as the class sheet reads them; whole exercises where the exercise matters, short pieces where only the measuring does. */
const ATTEMPTS: Record<string, string> = {
  '2026-03-02_b1_ines-calder_tee-inverted-v_01': '--exercise tee-inverted-v --hand 7:0.8',
  '2026-03-02_b2_tom-aske_lap-5_01': '--exercise lap-5 --lead -2',
  '2026-03-02_b1_ines-calder_free_01': `${TEE} --volts 18 --feed 4.6`,
  '2026-03-03_b1_ines-calder_free_02': `${TEE} --pattern crescent --hand 3:0.4 --volts 18 --feed 4.6`,
  '2026-03-02_b3_mara-voss_free_01': `${TEE} --pattern straight --volts 19.5 --feed 5.5 --travel 2.6`,
  '2026-03-02_b3_mara-voss_free_02': `${TEE} --gap 1.5 --travel 1.4 --profile aws-d11-static-si`,
  '2026-03-02_b4_jon-reed_free_01':
    '--joint lap --plate 6 --size 6 --wire 0.8 --feed 6.5 --volts 18.5 --pattern triangle --length 40 --profile aws-d11-static-inch',
};

/** What `npm test` makes again each time: every kind of answer, on a lap. The slow suite makes all. */
const QUICK = ['2026-03-02_b4_jon-reed_free_01'];

async function toehold(...args: string[]): Promise<string> {
  let text = '';
  const take = (more: string): void => {
    text += more;
  };
  await run(args, { out: take, err: take });
  return text;
}

const digest = (text: string): string => createHash('sha256').update(text).digest('hex').slice(0, 24);

/** What this scoring makes of the golden attempts. `whole`: of all of them, with rows and sheet of the folder they lie in. */
export async function resultsNow(whole: boolean): Promise<GoldenResults> {
  const folder = mkdtempSync(join(tmpdir(), 'toehold-golden-'));
  const at = (name: string): string => join(folder, name);
  const files: Record<string, unknown> = {};
  // Which state it was welded to is the golden welds' matter: here only what was made of it.
  const hashes: string[] = [];
  const plain = (text: string): string =>
    hashes
      .reduce((t, hash) => t.replaceAll(hash, '#'), text)
      .replaceAll(folder, '.')
      .replaceAll(ENGINE_VERSION, 'v')
      .replaceAll(SCORING_VERSION, 'v');
  const read = (name: string): string => plain(readFileSync(at(name), 'utf8'));
  try {
    for (const [name, flags] of Object.entries(ATTEMPTS)) {
      if (!whole && !QUICK.includes(name)) continue;
      const file = at(`${name}.json`);
      await toehold('weave', ...flags.split(' '), '--out', file);
      const recording = JSON.parse(readFileSync(file, 'utf8'));
      hashes.push(recording.stateHash, ...(recording.chain ?? []));
      files[`${name} result`] = readable(JSON.parse(plain(await toehold('score', file, '--json'))));
      if (flags.includes('--exercise')) continue;
      await toehold('section', file, '--at', '25.3', '--svg', at('cut.svg'));
      files[`${name} cut`] = digest(read('cut.svg'));
      files[`${name} sentences`] = plain(await toehold('score', file)).split('\n');
      await toehold('report', file, '--out', at('paper.html'));
      files[`${name} paper`] = digest(read('paper.html'));
    }
    if (!whole) return { engine: ENGINE_VERSION, scoring: SCORING_VERSION, files };
    writeFileSync(at('2026-03-02_b5_cut-off_straight_01.json'), '{"format":');
    await toehold('score', folder, '--workers', '2', '--out', at('rows.csv'));
    files.rows = read('rows.csv')
      .replaceAll(/\b[0-9a-f]{16,64}\b/g, '#')
      .split('\n');
    // The journal of the run before holds the scores.
    files['class sheet'] = plain(await toehold('sheet', folder)).split('\n');
  } finally {
    rmSync(folder, { recursive: true });
  }
  return { engine: ENGINE_VERSION, scoring: SCORING_VERSION, files };
}

/** A result with its stations, the long part, as one digest. */
function readable(result: { bead: { stations: unknown }; [key: string]: unknown }): unknown {
  const { engine: _engine, scoring: _scoring, stateHash: _state, ...rest } = result;
  return { ...rest, bead: { ...result.bead, stations: digest(JSON.stringify(result.bead.stations)) } };
}

export function storedResults(): GoldenResults {
  return JSON.parse(readFileSync(RESULTS_FILE, 'utf8'));
}

/** As for the golden welds; a new engine version may move results too. `share`: `now` holds a share of the stored ones. */
export function resultsQuarrel(stored: GoldenResults, now: GoldenResults, share = false): string | null {
  const moved = Object.keys(share ? now.files : { ...stored.files, ...now.files }).filter(
    (name) => JSON.stringify(stored.files[name]) !== JSON.stringify(now.files[name]),
  );
  const sameVersions = stored.engine === now.engine && stored.scoring === now.scoring;
  if (sameVersions && moved.length > 0)
    return `results moved and SCORING_VERSION stayed at ${now.scoring}: ${moved.map((name) => `${name} (${firstDifference(stored.files[name], now.files[name])})`).join('; ')}`;
  if (stored.scoring !== now.scoring && moved.length === 0 && !share)
    return `SCORING_VERSION went from ${stored.scoring} to ${now.scoring} and no result moved`;
  if (!sameVersions)
    return `the golden results are of engine ${stored.engine}, scoring ${stored.scoring}: record them with npm run golden`;
  return null;
}

/** Path and values of the first place where two pieces of JSON differ. */
function firstDifference(a: unknown, b: unknown, path = ''): string {
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null)
    return `${path || 'all'}: ${JSON.stringify(a)} is now ${JSON.stringify(b)}`;
  for (const key of Object.keys({ ...a, ...b })) {
    const x = (a as Record<string, unknown>)[key];
    const y = (b as Record<string, unknown>)[key];
    if (JSON.stringify(x) !== JSON.stringify(y)) return firstDifference(x, y, path ? `${path}.${key}` : key);
  }
  return path;
}

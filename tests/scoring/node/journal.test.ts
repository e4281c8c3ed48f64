/** The journal of a folder: a row is taken over for the very bytes it was made of and by nobody's word but its seal's. */
import { chmodSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { digest } from '../../../scoring/exercises/digest.ts';
import { run } from '../../../scoring/node/cli/run.ts';
import { JOURNAL_NAME, type Scored, scoreBytes } from '../../../scoring/node/index.ts';
import { Journal } from '../../../scoring/node/journal.ts';
import { byMouse, weld } from '../welds.ts';

let root: string;
let folder: string;
let journal: string;
let scored: Scored;
/** The journal after one honest run, without a secret and with one. */
let plain: string;
let keyed: string;
const secret = new TextEncoder().encode('the owner of the folder alone');
const JUDGE = { exercise: null, profile: null };

const open = (key: Uint8Array | null = null): Journal =>
  new Journal({ path: journal, judge: JUDGE, fresh: false, secret: key });
/** Whether the score is taken over, and if not, why the row is not believed. */
function taken(rows: string, key: Uint8Array | null = null): string | null | true {
  writeFileSync(journal, rows);
  const j = open(key);
  return j.find('a.json', scored.sha256) !== undefined || j.whyAgain(scored.sha256);
}

beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), 'toehold-journal-'));
  folder = mkdtempSync(join(root, 'class-'));
  journal = join(folder, JOURNAL_NAME);
  const made = weld({ joint: { length_mm: 30 }, weave: { length_mm: 3, shelf_s: 0 }, ...byMouse(4) });
  writeFileSync(join(folder, 'a.json'), JSON.stringify(made));
  scored = scoreBytes(readFileSync(join(folder, 'a.json')), 'a.json', JUDGE);
  expect(scored.result.verdict).toBe('no verdict');
  [plain, keyed] = [null, secret].map((key) => {
    open(key).add(scored);
    const text = readFileSync(journal, 'utf8');
    rmSync(journal);
    return text;
  }) as [string, string];
});
afterAll(() => rmSync(root, { recursive: true }));

interface Line {
  seal: string;
  row: { engine: string; scoring: string; judge: string; scored: { sha256: string; result: { verdict: string } } };
}

/** A row as somebody with an editor makes it, under the plain digest that anybody can reckon. */
function forged(line: string, change: (row: Line['row']) => void): string {
  const { row } = JSON.parse(line) as Line;
  change(row);
  return `${JSON.stringify({ seal: `sha256:${digest(JSON.stringify(row))}`, row })}\n`;
}
const within = (row: Line['row']): void => {
  row.scored.result.verdict = 'within';
};
/** The verdict rewritten in place, the seal left. */
const rewritten = (line: string): string => line.replace(/"verdict":"no verdict"/, '"verdict":"within"');

describe('a journal', () => {
  it('knows a file by its content, whatever it is called now', () => {
    expect(taken(plain)).toBe(true);
    expect(taken(keyed, secret)).toBe(true);
    expect(open(secret).find('b.json', scored.sha256)).toEqual({ ...scored, file: 'b.json' });
    expect(open(secret).find('a.json', digest('other bytes'))).toBeUndefined();
  });

  it('takes over nothing that was changed without its seal', () => {
    expect(rewritten(plain)).not.toBe(plain);
    expect(taken(rewritten(plain))).toMatch(/does not bear its seal/);
    expect(taken(rewritten(keyed), secret)).toMatch(/does not bear its seal/);
    // What is then scored again stands beside it, and is believed.
    expect(taken(rewritten(plain) + plain)).toBe(true);
  });

  it('with a secret takes over no row of anybody who has not got it', () => {
    expect(taken(forged(plain, within), secret)).toMatch(/sealed without this secret/);
    expect(taken(keyed + forged(plain, within), secret)).toBe(true);
    expect(open(secret).find('a.json', scored.sha256)?.result.verdict).toBe('no verdict');
    expect(taken(keyed, new TextEncoder().encode('somebody else altogether'))).toMatch(/does not bear its seal/);
    expect(taken(keyed)).toMatch(/a secret that was not given/);
  });

  it('without a secret believes neither of two rows that differ', () => {
    const other = forged(plain, within);
    for (const rows of [plain + other, other + plain, plain + other + plain, other + plain + other])
      expect(taken(rows)).toMatch(/two different scores/);
    expect(taken(plain + plain)).toBe(true);
  });

  it('scores again what another engine or scoring made, or what scoring never writes, and says so', () => {
    expect(taken(forged(plain, (row) => (row.engine = '0.0.1')))).toMatch(/of engine 0\.0\.1 and scoring/);
    expect(taken(forged(plain, (row) => (row.scoring = '0.0.2')))).toMatch(/and scoring 0\.0\.2/);
    expect(taken(forged(plain, (row) => (row.scored.result.verdict = 'splendid')))).toMatch(
      /not one that scoring writes/,
    );
    // Another judge's row is no fault: it stands for another question.
    expect(taken(forged(plain, (row) => (row.judge = digest('other'))))).toBeNull();
  });

  it('counts lines that are no rows, not the one that an interruption cut off', () => {
    expect(taken(`{"seal":1}\nnull\n[]\n"x"\n\u0000\n${plain}${plain.slice(0, 700)}`)).toBe(true);
    expect(open().spoilt).toBe(6);
    expect(taken(`${plain}${plain.slice(0, 700)}`)).toBe(true);
    open().add({ ...scored, sha256: digest('next') });
    expect(open().find('n.json', digest('next'))).toBeDefined();
  });
});

describe('the secret of a folder', () => {
  async function toehold(...args: string[]): Promise<{ code: number; out: string; err: string }> {
    const said = { out: '', err: '' };
    const code = await run(args, {
      out: (text) => {
        said.out += text;
      },
      err: (text) => {
        said.err += text;
      },
    });
    return { code, ...said };
  }

  it('is made where it is not there, for its owner alone, and seals the rows', async () => {
    const file = join(root, 'secret');
    rmSync(journal, { force: true });
    const args = ['score', folder, '--workers', '1', '--journal-secret', file];
    expect((await toehold(...args)).code).toBe(0);
    expect(statSync(file).mode & 0o777).toBe(0o600);
    expect(readFileSync(journal, 'utf8')).toMatch(/^\{"seal":"hmac-sha256:[0-9a-f]{64}"/);
    writeFileSync(journal, forged(plain, within));
    const again = await toehold(...args);
    expect(again.err).toBe('a.json: scored again, its row in the journal is sealed without this secret\n');
    expect(again.out).toMatch(/^a\.json: no verdict\./);
  });

  it('is refused where others may read it, where it lies in the folder, and where it is none', async () => {
    const shared = join(root, 'shared');
    writeFileSync(shared, 'x'.repeat(40));
    chmodSync(shared, 0o644);
    const short = join(root, 'short');
    writeFileSync(short, 'x', { mode: 0o600 });
    for (const [file, why] of [
      [shared, /others may read or write, allowed: .*chmod 600/],
      [short, /1 bytes, allowed: a secret of 16 to 4096/],
      [join(folder, 'secret'), /the very folder it is to guard/],
      [join(root, 'gone', 'secret'), /no such file or folder/],
    ] as const) {
      const { code, err } = await toehold('score', folder, '--journal-secret', file);
      expect(code).toBe(2);
      expect(err).toMatch(why);
    }
  });
});

import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createRandom } from '../../engine/index.ts';
import { digest } from '../../scoring/exercises/digest.ts';
import { type Scored, scoreBytes } from '../../scoring/node/index.ts';
import { Journal } from '../../scoring/node/journal.ts';
import { byMouse, weld } from '../scoring/welds.ts';
import type { Attack, Try } from './attack.ts';

const JUDGE = { exercise: null, profile: null };
const SECRET = new TextEncoder().encode('the owner of the folder alone');

let honest: { scored: Scored; keyed: string; plain: string } | null = null;
function base(path: string): NonNullable<typeof honest> {
  if (honest !== null) return honest;
  const short = weld({ joint: { length_mm: 30 }, weave: { length_mm: 3, shelf_s: 0 }, ...byMouse(8) });
  const scored = scoreBytes(new TextEncoder().encode(JSON.stringify(short)), 'a.json', JUDGE);
  const line = (secret: Uint8Array | null): string => {
    writeFileSync(path, '');
    new Journal({ path, judge: JUDGE, fresh: false, secret }).add(scored);
    return readFileSync(path, 'utf8');
  };
  honest = { scored, keyed: line(SECRET), plain: line(null) };
  return honest;
}

/** A journal line as somebody without the secret can make it. */
function forged(line: string, n: number): string {
  const random = createRandom(n + 1);
  const entry = JSON.parse(line);
  const { row } = entry;
  switch (n % 6) {
    case 0:
      row.scored.result.verdict = 'within';
      break;
    case 1:
      row.scored.result = { ...row.scored.result, verdict: 'within', reasons: [], score: 99, notes: [] };
      entry.seal = `sha256:${digest(JSON.stringify(row))}`;
      break;
    case 2:
      row.scored.result.reasons = [];
      entry.seal = `hmac-sha256:${digest(JSON.stringify(row))}`;
      break;
    case 3:
      entry.seal = entry.seal.slice(0, -1) + (entry.seal.endsWith('0') ? '1' : '0');
      break;
    case 4: {
      const bytes = new TextEncoder().encode(line);
      for (let k = 0; k < 3; k++)
        bytes[Math.floor(random.next() * (bytes.length - 1))]! ^= 1 << Math.floor(random.next() * 7);
      return `${new TextDecoder().decode(bytes).replaceAll('\n', ' ')}\n`;
    }
    default:
      delete row[['judge', 'engine', 'scoring'][Math.floor(random.next() * 3)]!];
      entry.seal = undefined;
  }
  return `${JSON.stringify(entry)}\n`;
}

/** Rows made up in a folder's journal are never taken for scores where its owner has a secret. */
export const forgedJournals: Attack = {
  name: 'forged journals',
  says: "rows of a folder's journal rewritten, resealed with what anybody can reckon, with bits flipped or parts left out; with the owner's secret none is taken over, none hides the honest row beside it, and none ends the run",
  share: 60,
  whole: 1200,
  tries: (n): Try => {
    const folder = mkdtempSync(join(tmpdir(), 'toehold-forged-'));
    try {
      const path = join(folder, 'journal');
      const { scored, keyed, plain } = base(path);
      const made = forged(n % 2 === 0 ? keyed : plain, n);
      const open = (text: string): Journal => {
        writeFileSync(path, text);
        return new Journal({ path, judge: JUDGE, fresh: false, secret: SECRET });
      };
      const faults: string[] = [];
      const alone = open(made).find('a.json', scored.sha256);
      if (alone !== undefined) faults.push(`taken over: ${made.slice(0, 120)}`);
      for (const text of [keyed + made, made + keyed]) {
        const found = open(text).find('a.json', scored.sha256);
        if (JSON.stringify(found) !== JSON.stringify(scored)) faults.push('the honest row is not found beside it');
      }
      return { inputs: 3, faults };
    } finally {
      rmSync(folder, { recursive: true });
    }
  },
};

/**
 * Checks against published answers. Each is asserted where it is made and entered in a table; the tables together are README.md, which
 * the tests compare with what they have just measured. `npm run reference:update` writes it anew.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { WHOLE } from '../support/share.ts';

export const README = fileURLToPath(new URL('README.md', import.meta.url));

/** Sections of the README in order; each belongs to one test file. */
export const SECTIONS = [
  'steel',
  'instantaneous',
  'order',
  'moving',
  'stefan',
  'cooling',
  'surface',
  'groove',
  'wire',
  'mass',
  'finders',
  'fine',
] as const;
export type SectionName = (typeof SECTIONS)[number];

/**
 * What an answer may be off by: a share of the expected value, an amount in its own unit, or a band it must lie in. `notHeld` says that
 * it cannot be kept and between which shares (or amounts) the error really lies: the table shows it as missed, and the test fails when the
 * error leaves that span either way, so that neither a loss nor a gain goes unseen.
 */
export type Tolerance =
  | { share: number; notHeld?: readonly [number, number] }
  | { amount: number; notHeld?: readonly [number, number] }
  | { band: readonly [number, number] }
  | 'shown beside';

interface Check {
  check: string;
  /** Where the expected value comes from; "memory" where no published page could be read. */
  source: string;
  unit: string;
  expected: number;
  got: number;
  tolerance: Tolerance;
  /** Significant digits in the table. */
  digits?: number;
}

interface Report {
  /** Enters a check in the table and asserts it. */
  check(c: Check): void;
  /** Text under the section's heading. */
  note(text: string): void;
  /** Call last in a test file: adds the test that the committed table is what was measured. */
  readme(): void;
}

const round = (x: number, digits: number): string => {
  if (Math.abs(x) < 1e-12) return '0';
  const places = Math.max(0, digits - 1 - Math.floor(Math.log10(Math.abs(x))));
  return x.toFixed(Math.min(places, 12));
};

const percent = (share: number): string => `${round(100 * share, 2)} %`;

function errorOf(c: Check): string {
  if (typeof c.tolerance === 'object' && 'band' in c.tolerance) return 'inside';
  const off = Math.abs(c.got - c.expected);
  if (c.expected === 0 && c.tolerance === 'shown beside') return '-';
  if (typeof c.tolerance === 'object' && 'amount' in c.tolerance) return `${round(off, 2)} ${c.unit}`.trim();
  return off < 5e-7 * Math.abs(c.expected) ? '0' : `${((100 * off) / Math.abs(c.expected)).toFixed(2)} %`;
}

function toleranceOf(c: Check): string {
  if (c.tolerance === 'shown beside') return 'shown beside';
  if ('band' in c.tolerance) return `${c.tolerance.band[0]} to ${c.tolerance.band[1]} ${c.unit}`.trim();
  const asked = 'amount' in c.tolerance ? `${c.tolerance.amount} ${c.unit}`.trim() : percent(c.tolerance.share);
  return c.tolerance.notHeld ? `**not held:** ${asked}` : asked;
}

function assertCheck(c: Check): void {
  const what = `${c.check}: got ${c.got} ${c.unit}, expected ${c.expected}`;
  expect(Number.isFinite(c.got), what).toBe(true);
  if (c.tolerance === 'shown beside') return;
  if ('band' in c.tolerance) {
    expect(c.got, what).toBeGreaterThanOrEqual(c.tolerance.band[0]);
    expect(c.got, what).toBeLessThanOrEqual(c.tolerance.band[1]);
    return;
  }
  const off = Math.abs(c.got - c.expected);
  const scale = 'share' in c.tolerance ? Math.abs(c.expected) : 1;
  if (c.tolerance.notHeld) {
    const [least, most] = c.tolerance.notHeld;
    expect(off / scale, what).toBeGreaterThanOrEqual(least);
    expect(off / scale, what).toBeLessThanOrEqual(most);
    return;
  }
  const limit = 'share' in c.tolerance ? c.tolerance.share * Math.abs(c.expected) : c.tolerance.amount;
  expect(off, what).toBeLessThanOrEqual(limit);
}

const begin = (name: string): string => `<!-- begin ${name} -->`;
const end = (name: string): string => `<!-- end ${name} -->`;

const HEADER = `# Checks against published answers

Made from the rows in rows/ by one runner (run.ts), from what it measures: \`npm run reference:update\` writes it, and a test fails where it is not what
the run gave. The engine's two solvers run on their own here (\`engine/solvers/\`): heat on the rods and kernels of an attempt, the liquid
surface with an attempt's own relaxation. Formulas are in \`formulas/\`, written apart from the engine. "Memory" after a source means that
no copy of it was at hand and the value was written down from memory. The last section comes from \`npm run test:slow\`
(\`npm run reference:update -- --fine\`).

Not here: the shape of beads against published fillets. No published table was found that gives measured legs, throats or convexities of
short-circuit GMAW fillets together with feed, volts and travel, so nothing is claimed.

Plots: [temperature against time](../../assets/reference/histories.svg), [round a moving source](../../assets/reference/moving.svg),
[freezing front](../../assets/reference/stefan.svg), [cooling time](../../assets/reference/cooling.svg),
[liquid surfaces](../../assets/reference/surfaces.svg), [wire](../../assets/reference/wire.svg), [balance from cold to hot](../../assets/reference/balance.svg),
[tendencies as cuts](../../assets/reference/tendencies.svg).
`;

/** The README's sections by name, as they stand on disk. */
export function readSections(): Map<string, string> {
  let text = '';
  try {
    text = readFileSync(README, 'utf8');
  } catch {
    return new Map();
  }
  const found = new Map<string, string>();
  for (const name of SECTIONS) {
    const from = text.indexOf(begin(name));
    const to = text.indexOf(end(name));
    if (from >= 0 && to > from) found.set(name, text.slice(from + begin(name).length, to).trim());
  }
  return found;
}

export function compose(sections: Map<string, string>): string {
  const parts = SECTIONS.filter((name) => sections.has(name)).map(
    (name) => `${begin(name)}\n${sections.get(name)}\n${end(name)}\n`,
  );
  return `${HEADER}\n${parts.join('\n')}`;
}

/** A table in Markdown with its columns under one another, as the formatter wants it. */
function alignedTable(rows: string[][]): string[] {
  const widths = rows[0]!.map((_, k) => Math.max(...rows.map((row) => [...row[k]!].length)));
  const line = (cells: string[]): string => `| ${cells.join(' | ')} |`;
  const padded = rows.map((row) => line(row.map((cell, k) => cell + ' '.repeat(widths[k]! - [...cell].length))));
  return [padded[0]!, line(widths.map((width) => '-'.repeat(width))), ...padded.slice(1)];
}

const unpadded = (markdown: string): string => markdown.replaceAll(/ +/g, ' ').replaceAll(/-+/g, '-');

export function openReport(name: SectionName, title: string): Report {
  const checks: Check[] = [];
  const notes: string[] = [];
  const body = (): string => {
    const rows = checks.map((c) => {
      const digits = c.digits ?? 4;
      const expected =
        typeof c.tolerance === 'object' && 'band' in c.tolerance
          ? `${c.tolerance.band[0]} to ${c.tolerance.band[1]}`
          : round(c.expected, digits);
      const unit = c.unit === '' ? '' : ` ${c.unit}`;
      return [c.check, c.source, expected + unit, round(c.got, digits) + unit, errorOf(c), toleranceOf(c)];
    });
    const table = alignedTable([['check', 'source', 'expected', 'got', 'error', 'tolerance'], ...rows]);
    return [`## ${title}`, '', ...notes.flatMap((n) => [n, '']), ...table].join('\n');
  };
  return {
    check(c) {
      checks.push(c);
      assertCheck(c);
    },
    note(text) {
      notes.push(text);
    },
    readme() {
      it('README.md shows what this run measured', () => {
        const sections = readSections();
        if (process.env.REFERENCE_UPDATE === '1') {
          sections.set(name, body());
          writeFileSync(README, compose(sections));
        }
        const table = sections.get(name) ?? '';
        const says = 'npm run reference:update writes the table anew';
        if (WHOLE) expect(table, says).toBe(body());
        // A share of the rows: each stands in the table as it was measured, however wide the columns are.
        else for (const row of body().split('\n')) expect(unpadded(table), says).toContain(unpadded(row));
      });
    },
  };
}

/**
 * Mesh study: the same welds at 1.0, 0.75 and 0.5 mm cells. Prints a table and writes tests/studies/mesh/MESH.md with `--write`.
 * What the working cell moves against the finest is where the plus-minus of scoring/measures/precision.ts comes from.
 */
import { writeFileSync } from 'node:fs';
import { type Summary, summarise, type TendencyCase } from '../../tendencies/summary.ts';

const CELLS = [1.0, 0.75, 0.5];
export const MESH_CASES: Record<string, TendencyCase> = {
  'weave, 6 mm tee': {},
  'weave, 5 mm tee': { joint: { plateA_mm: 5, plateB_mm: 5 }, process: { feed_mpmin: 4.6 }, weave: { travel_mmps: 2 } },
  'crossing back in the puddle': { weave: { apex_mm: -3 } },
  'no pause': { weave: { pauseA_s: 0, pauseB_s: 0 } },
  cold: { process: { volts_V: 16, feed_mpmin: 4 } },
  hot: { process: { volts_V: 19.5, feed_mpmin: 5.5 } },
  'straight run': { weave: { pattern: 'straight', travel_mmps: 2.6 } },
  lap: { joint: { kind: 'lap' } },
};
/** A straight run is read less closely (scoring/measures/precision.ts). */
export const isStraight = (weld: string): boolean => MESH_CASES[weld]?.weave?.pattern === 'straight';

const COLUMNS: { name: string; of: (s: Summary) => number }[] = [
  { name: 'leg A', of: (s) => s.legA },
  { name: 'leg B', of: (s) => s.legB },
  { name: 'convexity', of: (s) => s.convexity },
  { name: 'fused depth A', of: (s) => s.depthA },
  { name: 'fused depth B', of: (s) => s.depthB },
  { name: 'root fusion', of: (s) => s.root },
];

export interface MeshRow {
  weld: string;
  measure: string;
  values: number[];
}

export function meshStudy(): MeshRow[] {
  const rows: MeshRow[] = [];
  for (const [weld, c] of Object.entries(MESH_CASES)) {
    const summaries = CELLS.map((cell) => summarise(c, cell));
    for (const column of COLUMNS) rows.push({ weld, measure: column.name, values: summaries.map(column.of) });
  }
  return rows;
}

/** Largest and root-mean-square move of each measure from a cell size to the finest. */
export function moves(rows: MeshRow[], cell: number): { measure: string; worst: number; rms: number }[] {
  const at = CELLS.indexOf(cell);
  return COLUMNS.map(({ name }) => {
    const d = rows.filter((r) => r.measure === name).map((r) => r.values[at]! - r.values[CELLS.length - 1]!);
    return {
      measure: name,
      worst: Math.max(...d.map(Math.abs)),
      rms: Math.sqrt(d.reduce((sum, x) => sum + x * x, 0) / d.length),
    };
  });
}

function table(rows: MeshRow[]): string {
  const lines = [
    '# Mesh study',
    '',
    'Means over the settled middle of 60 mm runs, mm. Made by `npm run study:mesh`; the slow suite checks that it still holds.',
    '',
    '| weld | measure | 1.0 mm | 0.75 mm | 0.5 mm |',
    '|---|---|---|---|---|',
    ...rows.map((r) => `| ${r.weld} | ${r.measure} | ${r.values.map((v) => v.toFixed(2)).join(' | ')} |`),
    '',
    '| measure | 1.0 mm: worst / rms move to 0.5 | 0.75 mm: worst / rms move to 0.5 |',
    '|---|---|---|',
  ];
  const coarse = moves(rows, 1.0);
  const working = moves(rows, 0.75);
  coarse.forEach((m, i) => {
    const w = working[i]!;
    lines.push(
      `| ${m.measure} | ${m.worst.toFixed(2)} / ${m.rms.toFixed(2)} | ${w.worst.toFixed(2)} / ${w.rms.toFixed(2)} |`,
    );
  });
  return `${lines.join('\n')}\n`;
}

if (process.argv[1]?.endsWith('mesh.ts')) {
  const text = table(meshStudy());
  process.stdout.write(text);
  if (process.argv.includes('--write')) writeFileSync(new URL('MESH.md', import.meta.url), text);
}

/** What is read off a weld: means over the settled middle of the run. */
import { type Summary, summarise, type TendencyCase, weldCase } from '../../tendencies/summary.ts';
import { BETWEEN } from './knobs.ts';

const CELL_MM = 0.75;

export const OUTCOMES = [
  'root',
  'depth',
  'depth A',
  'depth B',
  'face width',
  'convexity',
  'leg',
  'throat',
  'amps',
  'overlap',
  'toe index',
] as const;
export type Outcome = (typeof OUTCOMES)[number];
/** null where the weld has no bead to read, or the reading does not exist. */
export type Outcomes = Record<Outcome, number | null>;

export const UNIT: Record<Outcome, string> = {
  root: 'mm',
  depth: 'mm',
  'depth A': 'mm',
  'depth B': 'mm',
  'face width': 'mm',
  convexity: 'mm',
  leg: 'mm',
  throat: 'mm',
  amps: 'A',
  overlap: 'mm',
  'toe index': '-',
};

export function readOutcomes(c: TendencyCase): Outcomes {
  let s: Summary;
  try {
    s = summarise(c, CELL_MM);
  } catch (error) {
    if (error instanceof Error && error.message.startsWith('no bead')) return noBead();
    throw error;
  }
  const values: Record<Outcome, number> = {
    root: s.root,
    depth: (s.depthA + s.depthB) / 2,
    'depth A': s.depthA,
    'depth B': s.depthB,
    'face width': s.faceWidth,
    convexity: s.convexity,
    leg: s.leg,
    throat: s.throat,
    amps: s.current,
    overlap: s.overlap,
    'toe index': toeIndex(c),
  };
  const out = noBead();
  for (const name of OUTCOMES) if (Number.isFinite(values[name])) out[name] = Math.round(values[name] * 1000) / 1000;
  return out;
}

function noBead(): Outcomes {
  return Object.fromEntries(OUTCOMES.map((name) => [name, null])) as Outcomes;
}

/** Mean over both toes of the run: the pull of the liquid as it froze, over what a groove needs. */
function toeIndex(c: TendencyCase): number {
  const sim = weldCase(c, CELL_MM);
  let sum = 0;
  let count = 0;
  for (let y = BETWEEN[0]; y <= BETWEEN[1]; y++) {
    const wet = [...sim.section(y).toeIndex].filter((v) => !Number.isNaN(v));
    if (wet.length === 0) continue;
    sum += wet[0]! + wet[wet.length - 1]!;
    count += 2;
  }
  return sum / count;
}

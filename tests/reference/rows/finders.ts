import { fusedFace } from '../../../scoring/measures/section/fusion.ts';
import { readSection } from '../../../scoring/measures/section/station.ts';
import { lineOfHeat, makeSection, SOLIDUS_C, START_C, segmentFace } from '../../scoring/measures/sections.ts';
import { grooved, peakRoundMovingPoint } from '../cases/sections.ts';
import { once, type Row, type Section } from '../run.ts';

/** Largest error of both fused depths over places of the answer between the cells. */
function lineDepth(cell_mm: number): number {
  let off = 0;
  for (let k = 0; k < 12; k++) {
    const a0 = 1.6 + 0.09 * k;
    const b0 = 2.7 - 0.07 * k;
    const melted = 3.3 + 0.03 * k;
    const sec = makeSection({ cell_mm, face: segmentFace(6, 0.5), peak: lineOfHeat(a0, b0, melted) });
    off = Math.max(off, Math.abs(fusedFace(sec, 'A', 6).deepest_mm - (melted - b0)));
    off = Math.max(off, Math.abs(fusedFace(sec, 'B', 6).deepest_mm - (melted - a0)));
  }
  return off;
}

function pointDepth(cell_mm: number): number {
  let off = 0;
  for (let k = 0; k < 8; k++) {
    const a0 = 0.4 + 0.09 * k;
    const b0 = 0.9 - 0.08 * k;
    const { peak, melted } = peakRoundMovingPoint(1900, 2, SOLIDUS_C, START_C);
    const at = (a: number, b: number): number => peak(Math.hypot(a - a0, b - b0));
    const sec = makeSection({ cell_mm, face: segmentFace(6, 0.5), peak: at });
    off = Math.max(off, Math.abs(fusedFace(sec, 'A', 6).deepest_mm - (melted - b0)));
    off = Math.max(off, Math.abs(fusedFace(sec, 'B', 6).deepest_mm - (melted - a0)));
  }
  return off;
}

function segments(c: number, cell_mm: number): { legs: number; convexity: number } {
  let legs = 0;
  let convexity = 0;
  for (let k = 0; k < 10; k++) {
    const z = 5 + 0.23 * k;
    const r = readSection(makeSection({ cell_mm, face: segmentFace(z, c) }))!.station;
    legs = Math.max(legs, Math.abs(r.legA_mm - z), Math.abs(r.legB_mm - z));
    convexity = Math.max(convexity, Math.abs(r.convexity_mm - c));
  }
  return { legs, convexity };
}

function undercut(depth: number, width: number): number {
  let off = 0;
  for (let k = 0; k < 10; k++) {
    const surface = grooved(depth, width, 0.05 * k);
    off = Math.max(off, Math.abs(readSection(makeSection({ surface }))!.station.undercutA_mm - depth));
  }
  return off;
}

const CELLS = [0.75, 0.5] as const;
const UNDERCUTS = [
  [0.2, 1.5],
  [0.4, 1.5],
  [0.5, 2],
  [1, 2],
] as const;
const common = { unit: 'mm', expected: 0, digits: 2 } as const;

export const finders: Section = {
  name: 'finders',
  title: 'Reading a section',
  note: 'Made-up sections with known answers on 0.75 mm cells (and 0.5): what the section finders read. Largest error over places of the answer between the cells.',
  rows: [
    ...CELLS.flatMap((cell_mm): Row[] => [
      {
        ...common,
        check: `depth of fusion, fast line source, ${cell_mm} mm cells`,
        source: 'peak of a fast line source, (2/πe)(q/v)/(ρc r²) (Rykalin, memory)',
        got: () => lineDepth(cell_mm),
        tolerance: { amount: 0.05 },
      },
      {
        ...common,
        check: `depth of fusion, slow point source, ${cell_mm} mm cells`,
        source: 'peak over time of Rosenthal (1941), thick plate, 1900 W at 2 mm/s',
        got: () => pointDepth(cell_mm),
        tolerance: { amount: 0.05 },
      },
    ]),
    ...CELLS.flatMap((cell_mm) =>
      [0, 0.5, 1, 1.5].flatMap((c): Row[] => {
        const off = once(() => segments(c, cell_mm));
        const segment = { ...common, source: 'circular segment on an equal-leg fillet (geometry)' } as const;
        return [
          {
            ...segment,
            check: `legs of 5 to 7.1 mm under ${c} mm convexity, ${cell_mm} mm cells`,
            got: () => off().legs,
            tolerance: { amount: 0.1 },
          },
          {
            ...segment,
            check: `convexity ${c} mm of those, ${cell_mm} mm cells`,
            got: () => off().convexity,
            tolerance: { amount: 0.1 },
          },
        ];
      }),
    ),
    ...UNDERCUTS.map(([depth, width]) => ({
      ...common,
      check: `undercut ${depth} mm deep and ${width} mm wide`,
      source: 'parabolic groove beside the toe (geometry)',
      got: () => undercut(depth, width),
      tolerance: { amount: depth <= 0.4 ? 0.1 : 0.12 },
    })),
  ],
};

import { describe, it } from 'vitest';
import { fusedFace } from '../../scoring/measures/section/fusion.ts';
import { readSection } from '../../scoring/measures/section/station.ts';
import { lineOfHeat, makeSection, SOLIDUS_C, START_C, segmentFace } from '../scoring/measures/sections.ts';
import { grooved, peakRoundMovingPoint } from './cases/sections.ts';
import { openReport } from './report.ts';

const report = openReport('finders', 'Reading a section');
report.note(
  'Made-up sections with known answers on 0.75 mm cells (and 0.5): what the section finders read. Largest error over places of the answer between the cells.',
);
const CELLS = [0.75, 0.5] as const;

describe.each(CELLS)('fusion located at %d mm cells', (cell_mm) => {
  it('in the peak field of a fast line of heat, T - T0 ~ 1/r²', () => {
    let off = 0;
    for (let k = 0; k < 12; k++) {
      const a0 = 1.6 + 0.09 * k;
      const b0 = 2.7 - 0.07 * k;
      const melted = 3.3 + 0.03 * k;
      const sec = makeSection({ cell_mm, face: segmentFace(6, 0.5), peak: lineOfHeat(a0, b0, melted) });
      off = Math.max(off, Math.abs(fusedFace(sec, 'A', 6).deepest_mm - (melted - b0)));
      off = Math.max(off, Math.abs(fusedFace(sec, 'B', 6).deepest_mm - (melted - a0)));
    }
    report.check({
      check: `depth of fusion, fast line source, ${cell_mm} mm cells`,
      source: 'peak of a fast line source, (2/πe)(q/v)/(ρc r²) (Rykalin, memory)',
      unit: 'mm',
      expected: 0,
      got: off,
      tolerance: { amount: 0.05 },
      digits: 2,
    });
  });

  it('in the peak field round a slow point of heat, where that law does not hold', () => {
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
    report.check({
      check: `depth of fusion, slow point source, ${cell_mm} mm cells`,
      source: 'peak over time of Rosenthal (1941), thick plate, 1900 W at 2 mm/s',
      unit: 'mm',
      expected: 0,
      got: off,
      tolerance: { amount: 0.05 },
      digits: 2,
    });
  });
});

describe.each(CELLS)('toes located at %d mm cells', (cell_mm) => {
  it.each([0, 0.5, 1, 1.5])('circular segment of convexity %d mm', (c) => {
    let off = 0;
    let convexity = 0;
    for (let k = 0; k < 10; k++) {
      const z = 5 + 0.23 * k;
      const r = readSection(makeSection({ cell_mm, face: segmentFace(z, c) }))!.station;
      off = Math.max(off, Math.abs(r.legA_mm - z), Math.abs(r.legB_mm - z));
      convexity = Math.max(convexity, Math.abs(r.convexity_mm - c));
    }
    const common = { source: 'circular segment on an equal-leg fillet (geometry)', unit: 'mm', expected: 0 } as const;
    report.check({
      ...common,
      check: `legs of 5 to 7.1 mm under ${c} mm convexity, ${cell_mm} mm cells`,
      got: off,
      tolerance: { amount: 0.1 },
      digits: 2,
    });
    report.check({
      ...common,
      check: `convexity ${c} mm of those, ${cell_mm} mm cells`,
      got: convexity,
      tolerance: { amount: 0.1 },
      digits: 2,
    });
  });
});

describe('undercut located at 0.75 mm cells', () => {
  it.each([
    [0.2, 1.5],
    [0.4, 1.5],
    [0.5, 2],
    [1, 2],
  ])('%d mm deep, %d mm wide', (depth, width) => {
    let off = 0;
    for (let k = 0; k < 10; k++) {
      const surface = grooved(depth, width, 0.05 * k);
      off = Math.max(off, Math.abs(readSection(makeSection({ surface }))!.station.undercutA_mm - depth));
    }
    report.check({
      check: `undercut ${depth} mm deep and ${width} mm wide`,
      source: 'parabolic groove beside the toe (geometry)',
      unit: 'mm',
      expected: 0,
      got: off,
      tolerance: { amount: depth <= 0.4 ? 0.1 : 0.12 },
      digits: 2,
    });
  });
});

report.readme();

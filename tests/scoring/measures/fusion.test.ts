import { describe, expect, it } from 'vitest';
import { fusedFace } from '../../../scoring/measures/section/fusion.ts';
import { READ_AT_MM, rootFusion } from '../../../scoring/measures/section/root-fusion.ts';
import { readSection } from '../../../scoring/measures/section/station.ts';
import { lineOfHeat, makeSection, SOLIDUS_C, START_C, segmentFace } from './sections.ts';

/**
 * Isotherm fields with known answers: a line of heat, T - T0 ~ 1/r² (fast line source, Rosenthal). The fusion boundary is then a
 * circle about the line, which need not lie on the cells.
 */
const fields = [
  { a0: 2.2, b0: 2.2, melted: 3.6 },
  { a0: 1.9, b0: 2.4, melted: 3.3 },
  { a0: 3.1, b0: 2.6, melted: 3.2 },
  { a0: 1.5, b0: 1.5, melted: 2.9 },
];

describe.each([0.75, 0.5])('fusion located at %s mm cells', (cell_mm) => {
  it.each(fields)('line of heat at ($a0, $b0), melted to $melted mm', ({ a0, b0, melted }) => {
    const sec = makeSection({ cell_mm, face: segmentFace(6, 0.5), peak: lineOfHeat(a0, b0, melted) });
    const a = fusedFace(sec, 'A', 6);
    const b = fusedFace(sec, 'B', 6);
    expect(Math.abs(a.deepest_mm - (melted - b0))).toBeLessThan(0.05);
    expect(Math.abs(b.deepest_mm - (melted - a0))).toBeLessThan(0.05);
    expect(Math.abs(a.edge_mm - (a0 + Math.sqrt(melted * melted - b0 * b0)))).toBeLessThan(0.06);
    expect(Math.abs(b.edge_mm - (b0 + Math.sqrt(melted * melted - a0 * a0)))).toBeLessThan(0.06);
    // Ac1 at 718 °C lies where the rise is (718 - 20) of (1460 - 20) of the melted radius' rise.
    const ac1 = melted * Math.sqrt((SOLIDUS_C - START_C) / (718 - START_C));
    expect(Math.abs(a.haz_mm - (ac1 - melted))).toBeLessThan(0.06);
  });

  // The circle cut by a line square to the face, 0.375 mm in front of the root line; short of the face where it misses it.
  it.each([
    { a0: 1.5, b0: 1.5, melted: 2.6 },
    { a0: 2, b0: 1.6, melted: 2.9 },
  ])('root fusion from ($a0, $b0), melted to $melted mm', ({ a0, b0, melted }) => {
    const r = rootFusion(makeSection({ cell_mm, face: segmentFace(6, 0), peak: lineOfHeat(a0, b0, melted) }));
    const under = (across: number, above: number): number =>
      Math.sqrt(melted * melted - (across - READ_AT_MM) * (across - READ_AT_MM)) - above;
    expect(Math.abs(r.rootFusionA_mm - under(a0, b0))).toBeLessThan(0.1);
    expect(Math.abs(r.rootFusionB_mm - under(b0, a0))).toBeLessThan(0.1);
    expect(r.rootFusion_mm).toBe(Math.min(r.rootFusionA_mm, r.rootFusionB_mm));
  });

  // The circle meets each face first at this distance from the root: the unfused land.
  it.each([
    { a0: 1.8, b0: 1.8, melted: 2 },
    { a0: 2.2, b0: 2, melted: 2.4 },
  ])('land left unfused at the root from ($a0, $b0), melted to $melted mm', ({ a0, b0, melted }) => {
    const r = rootFusion(makeSection({ cell_mm, face: segmentFace(6, 0), peak: lineOfHeat(a0, b0, melted) }));
    expect(Math.abs(-r.rootFusionA_mm - (a0 - Math.sqrt(melted * melted - b0 * b0)))).toBeLessThan(0.12);
    expect(Math.abs(-r.rootFusionB_mm - (b0 - Math.sqrt(melted * melted - a0 * a0)))).toBeLessThan(0.12);
    expect(r.rootFusion_mm).toBe(Math.min(r.rootFusionA_mm, r.rootFusionB_mm));
  });
});

describe('fusion readings', () => {
  it('stay as they are when the weld metal is hotter or colder: only the plates count', () => {
    const plates = lineOfHeat(2.2, 2.2, 3.4);
    const weldHot = (a: number, b: number): number => (a > 0 && b > 0 ? 2600 : plates(a, b));
    const weldCold = (a: number, b: number): number => (a > 0 && b > 0 ? 1500 : plates(a, b));
    const hot = readSection(makeSection({ face: segmentFace(6, 1), peak: weldHot }))!.station;
    const cold = readSection(makeSection({ face: segmentFace(6, 1), peak: weldCold }))!.station;
    expect(hot).toEqual(cold);
  });

  it('call a cold root short and unfused, a cold plate fused nowhere', () => {
    const r = readSection(makeSection({ face: segmentFace(6, 1), peak: lineOfHeat(3, 3, 3.4) }))!.station;
    expect(r.rootFusion_mm).toBeLessThan(-0.3);
    expect(r.rootFused).toBe(false);
    const cold = readSection(makeSection({ face: segmentFace(6, 1), peak: () => 400 }))!.station;
    expect(cold.fusionDepthA_mm).toBeLessThan(0);
    expect(cold.overlapA_mm).toBeGreaterThan(5.5);
  });

  it('take overlap as toe of the metal less edge of the fused plate, and the other way round as toe risk', () => {
    const melted = 3.4;
    const edge = 2.2 + Math.sqrt(melted * melted - 2.2 * 2.2);
    const over = readSection(makeSection({ face: segmentFace(7, 0.5), peak: lineOfHeat(2.2, 2.2, melted) }))!.station;
    expect(Math.abs(over.overlapA_mm - (7 - edge))).toBeLessThan(0.12);
    const under = readSection(makeSection({ face: segmentFace(4, 0.5), peak: lineOfHeat(2.2, 2.2, melted) }))!.station;
    expect(Math.abs(under.overlapB_mm - (4 - edge))).toBeLessThan(0.12);
    expect(under.toeRiskB_mm).toBe(-under.overlapB_mm);
    expect(under.undercutB_mm).toBe(0);
  });

  it('find the edge of a lap melted back from its corner as cut, the root staying where it was', () => {
    // A line of heat near the corner (0, 5) of the edge plate; the upper face is fused back to where the circle cuts b = 5.
    const melted = 2;
    const sec = makeSection({
      joint: { kind: 'lap', plateA_mm: 5, plateB_mm: 5.25 },
      face: (u) => 4.4 - 0.1 * u * u,
      peak: lineOfHeat(0.2, 4.5, melted),
    });
    const want = Math.sqrt(melted * melted - 0.75 * 0.75) - 0.2;
    const r = readSection(sec)!.station;
    expect(Math.abs(r.edgeMeltedBack_mm! - want)).toBeLessThan(0.15);
    const whole = readSection(
      makeSection({
        joint: { kind: 'lap', plateB_mm: 5.25 },
        face: (u) => 3 - 0.1 * u * u,
        peak: lineOfHeat(1.5, 1, 2),
      }),
    )!;
    expect(whole.station.edgeMeltedBack_mm).toBe(0);
    expect(readSection(makeSection({ face: segmentFace(6, 0) }))!.station.edgeMeltedBack_mm).toBeNull();
  });
});

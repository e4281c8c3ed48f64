import { describe, expect, it } from 'vitest';
import { rings } from '../../../scoring/draw/contour.ts';
import { zoneOutlines } from '../../../scoring/draw/zones.ts';
import { openedRoot, readSection, Survey, sectionSvg, stripSvg } from '../../../scoring/index.ts';
import { lineOfHeat, makeSection, SOLIDUS_C, segmentFace, teeJoint } from '../measures/sections.ts';

const area = (ring: readonly { x: number; y: number }[]): number => {
  let sum = 0;
  for (let i = 0; i < ring.length; i++) {
    const p = ring[i]!;
    const q = ring[(i + 1) % ring.length]!;
    sum += p.x * q.y - q.x * p.y;
  }
  return sum / 2;
};

describe('contours', () => {
  it('close round a disc of the right area', () => {
    const found = rings(41, 41, (i, j) => 12.3 - Math.hypot(i - 20, j - 20));
    expect(found).toHaveLength(1);
    const got = Math.abs(area(found[0]!.map((p) => ({ x: p.i, y: p.j }))));
    expect(Math.abs(got / (Math.PI * 12.3 * 12.3) - 1)).toBeLessThan(0.01);
  });

  it('keep two regions and a hole apart', () => {
    const value = (i: number, j: number): number =>
      Math.max(
        5 - Math.hypot(i - 8, j - 8),
        Math.min(6 - Math.hypot(i - 28, j - 28), Math.hypot(i - 28, j - 28) - 2.5),
      );
    expect(rings(40, 40, value)).toHaveLength(3);
  });

  it('close along the border and part at saddles', () => {
    expect(rings(10, 10, () => 1)).toHaveLength(1);
    expect(rings(2, 2, (i, j) => (i === j ? 1 : -2))).toHaveLength(2);
    expect(rings(2, 2, (i, j) => (i === j ? 2 : -1))).toHaveLength(1);
    expect(rings(5, 5, () => Number.NaN)).toEqual([]);
  });
});

const sec = makeSection({ face: segmentFace(6, 1), peak: lineOfHeat(2.2, 2.2, 3.6) });

describe('the cut drawn', () => {
  it('puts the fusion line where the isotherm lies', () => {
    for (const part of [1, 2] as const) {
      const points = zoneOutlines(sec, part, SOLIDUS_C).flat();
      const inPlate = points.filter((p) => (part === 1 ? p.b < -0.4 : p.a < -0.4 && p.b > 0.4));
      expect(inPlate.length).toBeGreaterThan(3);
      for (const p of inPlate) expect(Math.abs(Math.hypot(p.a - 2.2, p.b - 2.2) - 3.6)).toBeLessThan(0.06);
    }
  });

  it('is one complete SVG with its readings, the same bytes each time', () => {
    const station = readSection(sec)!.station;
    const svg = sectionSvg(sec, station, { id: 'one' });
    expect(svg).toBe(sectionSvg(sec, station, { id: 'one' }));
    expect(svg.startsWith('<svg xmlns="http://www.w3.org/2000/svg"')).toBe(true);
    expect(svg).not.toMatch(/NaN|Infinity|undefined|null/);
    for (const text of ['throat 4.2', 'crown 1.0', '>6.0<', 'past']) expect(svg).toContain(text);
    // Every element that is opened is closed.
    const opened = [...svg.matchAll(/<([a-zA-Z]+)(?:\s[^>]*[^/])?>/g)].map((m) => m[1]);
    const closed = [...svg.matchAll(/<\/([a-zA-Z]+)>/g)].map((m) => m[1]);
    expect(opened.sort()).toEqual(closed.sort());
  });

  it('draws a bare joint too', () => {
    const bare = makeSection({});
    expect(sectionSvg(bare, null)).toContain('no weld here');
  });
});

describe('the opened root drawn', () => {
  it('tells tied in, not tied in and no weld apart by texture, and gives the share', () => {
    const hot = sec;
    const cold = makeSection({ face: segmentFace(6, 1), peak: () => 600 });
    const bare = makeSection({});
    const strip = openedRoot(new Survey((y) => (y < 20 ? bare : y < 35 ? hot : cold)), 60);
    expect(strip).toHaveLength(61);
    const svg = stripSvg(strip, teeJoint, { judged: { from_mm: 20, to_mm: 49 }, cuts_mm: [30] });
    expect(svg).toContain('tied in at the root over 50 % of the judged length');
    expect(svg.match(/url\(#strip-torn\)/g)).toHaveLength(2);
    expect(svg).toContain('right plate');
    expect(stripSvg(openedRoot(new Survey(() => bare), 60), teeJoint)).toContain('no weld at the root');
  });

  it('draws a root that is nearer to the root line than it can be read as in doubt, by shape', () => {
    const hot = openedRoot(new Survey(() => sec), 60);
    const near = hot.map((p) => ({ ...p, rootFusionA_mm: 0.1, rootFusionB_mm: -0.1 }));
    const svg = stripSvg(near, teeJoint);
    expect(svg.match(/url\(#strip-doubt\)/g)).toHaveLength(2);
    expect(svg).not.toContain('url(#strip-torn)');
    expect(svg).toContain('stroke-dasharray="6 3"');
    expect(svg).toContain('in doubt over 100 %');
    expect(stripSvg(hot, teeJoint)).not.toContain('in doubt');
  });
});

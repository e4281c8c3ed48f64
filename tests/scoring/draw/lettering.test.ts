import { describe, expect, it } from 'vitest';
import type { JointOptions } from '../../../engine/index.ts';
import { plateOutline, viewOf } from '../../../scoring/draw/plates.ts';
import { LETTER } from '../../../scoring/draw/svg.ts';
import { readSection, sectionSvg } from '../../../scoring/index.ts';
import { lineOfHeat, makeSection, segmentFace, teeJoint } from '../measures/sections.ts';

/** A drawing's text has room at every scale it is drawn at: on a phone's 300 px as on a page. */

interface Box {
  text: string;
  left: number;
  right: number;
  top: number;
  bottom: number;
}

function boxes(svg: string): Box[] {
  return [...svg.matchAll(/<text ([^>]*)>([^<]*)<\/text>/g)].map(([, attributes, text]) => {
    const of = (name: string): string | undefined => new RegExp(`(?:^| )${name}="([^"]*)"`).exec(attributes!)?.[1];
    const [x, y, size] = [Number(of('x')), Number(of('y')), Number(of('font-size'))];
    const width = LETTER * size * text!.length;
    const anchor = of('text-anchor') ?? 'start';
    const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
    return { text: text!, left, right: left + width, top: y - 0.75 * size, bottom: y + 0.2 * size };
  });
}

const overlap = (p: Box, q: Box): boolean =>
  p.left < q.right && q.left < p.right && p.top < q.bottom && q.top < p.bottom;

const joints: [string, Partial<JointOptions>, number][] = [
  ['thin tee', { plateA_mm: 3, plateB_mm: 3 }, 4],
  ['tee', {}, 6],
  ['heavy tee', { plateA_mm: 12, plateB_mm: 12, gap_mm: 1 }, 9],
  ['lap', { kind: 'lap', plateA_mm: 5, plateB_mm: 5 }, 5],
  ['thin lap', { kind: 'lap', plateA_mm: 3, plateB_mm: 3 }, 3],
];

describe.each(joints)('the cut of a %s', (_name, joint, leg) => {
  const sec = makeSection({ joint, face: segmentFace(leg, 1), peak: lineOfHeat(2.2, 2.2, 3.6) });
  const station = readSection(sec)!.station;

  it.each([10, 14, 20, 30, 60])('has room for every word at %i px a millimetre', (scale) => {
    const svg = sectionSvg(sec, station, { scale });
    const [, width, height] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg)!.map(Number);
    const found = boxes(svg);
    expect(found.length).toBe(9);
    for (const [n, box] of found.entries()) {
      expect(box.left, box.text).toBeGreaterThanOrEqual(0);
      expect(box.right, box.text).toBeLessThanOrEqual(width!);
      expect(box.bottom, box.text).toBeLessThanOrEqual(height!);
      for (const other of found.slice(n + 1)) expect(overlap(box, other), `${box.text} / ${other.text}`).toBe(false);
    }
  });

  it('is never lettered too small to read', () => {
    const sizes = [...sectionSvg(sec, station, { scale: 8 }).matchAll(/font-size="([\d.]+)"/g)].map((m) =>
      Number(m[1]),
    );
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(9);
  });
});

describe('the plates of a corner', () => {
  it.each([
    [5, 5],
    [5, 8],
    [8, 5],
  ])('%i and %i mm thick lie along the faces the weld is read on, and share the heel between them', (tA, tB) => {
    const joint: JointOptions = { ...teeJoint, kind: 'corner', plateA_mm: tA, plateB_mm: tB };
    const view = viewOf(joint, 6, 6);
    const a = plateOutline(joint, 'A', view);
    const b = plateOutline(joint, 'B', view);
    // Drawn 3 mm past the view: two arms and the square at the heel, nothing twice.
    const whole = (view.aMax + 3) * tA + (view.bMax + 3) * tB + tA * tB;
    expect(area(a) + area(b)).toBeCloseTo(whole, 9);
    expect(Math.max(...a.map((p) => p.a))).toBeGreaterThan(view.aMax);
    expect(Math.max(...b.map((p) => p.b))).toBeGreaterThan(view.bMax);
    expect(Math.max(...a.map((p) => p.b))).toBe(0);
    expect(Math.max(...b.map((p) => p.a))).toBe(0);
  });
});

function area(ring: readonly { a: number; b: number }[]): number {
  const twice = ring.reduce((sum, p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    return sum + p.a * q.b - q.a * p.b;
  }, 0);
  return Math.abs(twice) / 2;
}

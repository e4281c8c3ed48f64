import type { Section } from '../../engine/index.ts';
import { SQRT2 } from '../bead/frame.ts';
import type { Outline } from '../bead/outline.ts';
import type { Station } from '../schema/index.ts';
import { dimension, INK, PAPER, QUIET, type Spot, tag, textAt } from './svg.ts';
import type { Place } from './zones.ts';

type At = (p: Place) => Spot;

/** Dimension lines of one cut: both legs, throat, convexity, fused depths and root. */
export function dimensionsOf(sec: Section, s: Station, o: Outline, at: At): string {
  return (
    legDimensions(sec, s, at) +
    throatDimension(s, o, at) +
    convexityDimension(s, o, at) +
    fusedDimensions(sec, s, at) +
    rootText(s, at)
  );
}

function said(x: number): string {
  return x.toFixed(1);
}

function thin(p: Spot, q: Spot): string {
  return tag('line', { x1: p.x, y1: p.y, x2: q.x, y2: q.y, stroke: QUIET, 'stroke-width': 0.7 });
}

function legDimensions(sec: Section, s: Station, at: At): string {
  const j = sec.joint;
  const below = j.kind === 'corner' ? -5.4 : -j.plateA_mm - 1.1;
  const lineA = dimension(at({ a: 0, b: below }), at({ a: s.legA_mm, b: below }), said(s.legA_mm), -13);
  const helpA =
    thin(at({ a: s.legA_mm, b: -0.15 }), at({ a: s.legA_mm, b: below - 0.3 })) +
    thin(at({ a: 0, b: -0.4 }), at({ a: 0, b: below - 0.3 }));
  if (j.kind === 'tee') {
    const beside = -j.plateB_mm - 1.1;
    return (
      lineA +
      helpA +
      dimension(at({ a: beside, b: 0 }), at({ a: beside, b: s.legB_mm }), said(s.legB_mm), 18) +
      thin(at({ a: -0.15, b: s.legB_mm }), at({ a: beside - 0.3, b: s.legB_mm })) +
      thin(at({ a: -0.4, b: 0 }), at({ a: beside - 0.3, b: 0 }))
    );
  }
  const beside = Math.max(s.legA_mm, 4) + 2.4;
  return (
    lineA +
    helpA +
    dimension(at({ a: beside, b: 0 }), at({ a: beside, b: s.legB_mm }), said(s.legB_mm), -18) +
    thin(at({ a: 0.3, b: s.legB_mm }), at({ a: beside + 0.3, b: s.legB_mm }))
  );
}

/** Throat: from the root square to the toe line, to the face. */
function throatDimension(s: Station, o: Outline, at: At): string {
  const { n, foot } = toeLine(o);
  const end = place({
    u: foot.u + n.u * Math.max(0, faceOver(o, n, foot)),
    w: foot.w + n.w * Math.max(0, faceOver(o, n, foot)),
  });
  const root = at({ a: 0, b: 0 });
  const face = at(end);
  const mark = { x: root.x + 0.55 * (face.x - root.x), y: root.y + 0.55 * (face.y - root.y) };
  return (
    tag('line', { x1: root.x, y1: root.y, x2: face.x, y2: face.y, stroke: INK, 'stroke-width': 0.9 }) +
    plate(mark, `throat ${said(s.throat_mm)}`)
  );
}

/** Convexity (or concavity): toe line, and the distance off it at its greatest. */
function convexityDimension(s: Station, o: Outline, at: At): string {
  const { n } = toeLine(o);
  const toeA = at(place(o.toeA));
  const toeB = at(place(o.toeB));
  const hollow = s.concavity_mm > s.convexity_mm;
  let best = o.face[0]!;
  let off = 0;
  for (const p of o.face) {
    const d = (p.u - o.toeB.u) * n.u + (p.w - o.toeB.w) * n.w;
    if ((hollow ? -d : d) > off) {
      off = hollow ? -d : d;
      best = p;
    }
  }
  const chord = tag('line', {
    x1: toeA.x,
    y1: toeA.y,
    x2: toeB.x,
    y2: toeB.y,
    stroke: INK,
    'stroke-width': 0.8,
    'stroke-dasharray': '2 3',
  });
  const out = { u: best.u + n.u * 1.1, w: best.w + n.w * 1.1 };
  const label = at(place(out));
  const text = hollow ? `hollow ${said(s.concavity_mm)}` : `crown ${said(s.convexity_mm)}`;
  return chord + thin(at(place(best)), label) + textAt({ x: label.x + 4, y: label.y }, text, { class: 'n' });
}

function fusedDimensions(sec: Section, s: Station, at: At): string {
  const a = 0.62 * s.legA_mm;
  const b = 0.62 * Math.min(s.legB_mm, sec.joint.kind === 'lap' ? sec.joint.plateB_mm : s.legB_mm);
  const depthA = Math.max(0, s.fusionDepthA_mm);
  const depthB = Math.max(0, s.fusionDepthB_mm);
  const down = at({ a, b: -depthA - 0.75 });
  const in_ = at({ a: -depthB - 0.25, b });
  return (
    textAt({ x: down.x, y: down.y }, `${said(s.fusionDepthA_mm)} deep`, { class: 'n', 'text-anchor': 'middle' }) +
    textAt({ x: in_.x, y: in_.y + 5 }, `${said(s.fusionDepthB_mm)} deep`, { class: 'n', 'text-anchor': 'end' })
  );
}

function rootText(s: Station, at: At): string {
  const text = s.rootFusion_mm > 0 ? `root ${said(s.rootFusion_mm)} past` : `root ${said(-s.rootFusion_mm)} short`;
  return plate(at({ a: -0.9, b: -1.25 }), text, 'end');
}

/** Text on a slip of paper, so that it reads over the etch. */
function plate(at: Spot, text: string, anchor: 'start' | 'middle' | 'end' = 'middle'): string {
  const width = 7.6 * text.length + 8;
  const x = anchor === 'middle' ? at.x - width / 2 : anchor === 'end' ? at.x - width : at.x;
  return (
    tag('rect', { x, y: at.y - 11, width, height: 20, rx: 2, fill: PAPER, 'fill-opacity': 0.88 }) +
    textAt({ x: x + width / 2, y: at.y + 4.5 }, text, { class: 'n', 'text-anchor': 'middle' })
  );
}

function place(p: { u: number; w: number }): Place {
  return { a: (p.w + p.u) / SQRT2, b: (p.w - p.u) / SQRT2 };
}

interface Vector {
  u: number;
  w: number;
}

/** Unit normal of the toe line out of the root, and the foot of the root's square to it. */
function toeLine(o: Outline): { n: Vector; foot: Vector } {
  const du = o.toeA.u - o.toeB.u;
  const dw = o.toeA.w - o.toeB.w;
  const length = Math.sqrt(du * du + dw * dw);
  const n = { u: -dw / length, w: du / length };
  const d = o.toeB.u * n.u + o.toeB.w * n.w;
  return { n, foot: { u: d * n.u, w: d * n.w } };
}

/** How far the face stands over the toe line where the throat meets it. */
function faceOver(o: Outline, n: Vector, foot: Vector): number {
  const along = { u: n.w, w: -n.u };
  for (let i = 1; i < o.face.length; i++) {
    const p = o.face[i - 1]!;
    const q = o.face[i]!;
    const sp = (p.u - foot.u) * along.u + (p.w - foot.w) * along.w;
    const sq = (q.u - foot.u) * along.u + (q.w - foot.w) * along.w;
    if (sp <= 0 && sq >= 0 && sq > sp) {
      const t = -sp / (sq - sp);
      const u = p.u + t * (q.u - p.u) - foot.u;
      const w = p.w + t * (q.w - p.w) - foot.w;
      return u * n.u + w * n.w;
    }
  }
  return 0;
}

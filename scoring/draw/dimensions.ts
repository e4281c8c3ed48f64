import type { Section } from '../../engine/index.ts';
import { type Outline, SQRT2 } from '../measures/section/outline.ts';
import type { Station } from '../schema/station.ts';
import type { DrawingWords } from '../words/drawing.ts';
import { dimension, INK, LETTER, letteringAt, PAPER, QUIET, readingAt, type Spot, tag } from './svg.ts';
import type { Place } from './zones.ts';

type At = (p: Place) => Spot;

/** Places on the drawing, its scale in px a millimetre, and the size of its readings. */
interface Board {
  at: At;
  scale: number;
  size: number;
  words: DrawingWords;
}

/** Dimension lines of one cut: both legs, throat, convexity, fused depths and root. */
export function dimensionsOf(sec: Section, s: Station, o: Outline, at: At, scale: number, words: DrawingWords): string {
  const board = { at, scale, size: letteringAt(scale).text, words };
  return (
    legDimensions(sec, s, board) +
    convexityDimension(s, o, board) +
    throatDimension(s, o, board) +
    fusedDimensions(sec, s, board) +
    rootText(s, board)
  );
}

/** How far a leg's dimension line stands off the plate, px: room for its ticks at any scale. */
export function legLineOff(scale: number): number {
  return Math.max(1.1 * scale, 10);
}

function said(x: number): string {
  return x.toFixed(1);
}

function thin(p: Spot, q: Spot): string {
  return tag('line', { x1: p.x, y1: p.y, x2: q.x, y2: q.y, stroke: QUIET, 'stroke-width': 0.7 });
}

function legDimensions(sec: Section, s: Station, { at, scale, size }: Board): string {
  const j = sec.joint;
  const off = legLineOff(scale) / scale;
  const below = -j.plateA_mm - off;
  const lineA = dimension(at({ a: 0, b: below }), at({ a: s.legA_mm, b: below }), said(s.legA_mm), -0.87 * size, size);
  const helpA =
    thin(at({ a: s.legA_mm, b: -0.15 }), at({ a: s.legA_mm, b: below - 0.3 })) +
    thin(at({ a: 0, b: -0.4 }), at({ a: 0, b: below - 0.3 }));
  const besideB = (beside: number, way: number): string =>
    dimension(at({ a: beside, b: 0 }), at({ a: beside, b: s.legB_mm }), said(s.legB_mm), way * 1.2 * size, size);
  if (j.kind !== 'lap') {
    const beside = -j.plateB_mm - off;
    return (
      lineA +
      helpA +
      besideB(beside, 1) +
      thin(at({ a: -0.15, b: s.legB_mm }), at({ a: beside - 0.3, b: s.legB_mm })) +
      thin(at({ a: -0.4, b: 0 }), at({ a: beside - 0.3, b: 0 }))
    );
  }
  const beside = Math.max(s.legA_mm, 4) + Math.min(2.4, 4.5 - (2 * size) / scale);
  return (
    lineA + helpA + besideB(beside, -1) + thin(at({ a: 0.3, b: s.legB_mm }), at({ a: beside + 0.3, b: s.legB_mm }))
  );
}

/** Throat: from the root square to the toe line, to the face. */
function throatDimension(s: Station, o: Outline, { at, size, words }: Board): string {
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
    plate(mark, words.throat(said(s.throat_mm)), size)
  );
}

/** Convexity (or concavity): toe line, and the distance off it at its greatest. */
function convexityDimension(s: Station, o: Outline, { at, size, words }: Board): string {
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
  const text = hollow ? words.hollow(said(s.concavity_mm)) : words.crown(said(s.convexity_mm));
  return chord + thin(at(place(best)), label) + readingAt({ x: label.x + 4, y: label.y }, text, size, 'start');
}

function fusedDimensions(sec: Section, s: Station, { at, scale, size, words }: Board): string {
  const a = 0.62 * s.legA_mm;
  const b = 0.62 * Math.min(s.legB_mm, sec.joint.kind === 'lap' ? sec.joint.plateB_mm : s.legB_mm);
  const depthA = Math.max(0, s.fusionDepthA_mm);
  const depthB = Math.max(0, s.fusionDepthB_mm);
  const down = at({ a, b: -depthA - Math.max(0.75, size / scale) });
  const in_ = at({ a: -depthB - Math.max(0.25, 4 / scale), b });
  const textB = words.deep(said(s.fusionDepthB_mm));
  // A thin standing plate has no room for the word before its leg's dimension; a lap's runs on.
  const legLine = at({ a: -sec.joint.plateB_mm, b }).x - legLineOff(scale);
  const room = in_.x - (sec.joint.kind === 'lap' ? 0 : legLine + 4);
  const fits = LETTER * size * textB.length <= room;
  return (
    readingAt(down, words.deep(said(s.fusionDepthA_mm)), size) +
    readingAt({ x: in_.x, y: in_.y + size / 3 }, fits ? textB : said(s.fusionDepthB_mm), size, 'end')
  );
}

function rootText(s: Station, { at, scale, size, words }: Board): string {
  const text = s.rootFusion_mm > 0 ? words.past(said(s.rootFusion_mm)) : words.short(said(-s.rootFusion_mm));
  return plate(at({ a: -Math.max(0.9, 9 / scale), b: -Math.max(1.25, size / scale) }), text, size, 'end');
}

/** Text on a slip of paper, so that it reads over the etch. */
function plate(at: Spot, text: string, size: number, anchor: 'middle' | 'end' = 'middle'): string {
  const width = LETTER * size * text.length + 8;
  const x = anchor === 'middle' ? at.x - width / 2 : at.x - width;
  const height = 1.33 * size;
  return (
    tag('rect', { x, y: at.y - 0.55 * height, width, height, rx: 2, fill: PAPER, 'fill-opacity': 0.88 }) +
    readingAt({ x: x + width / 2, y: at.y + 0.3 * size }, text, size)
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

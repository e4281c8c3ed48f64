import { PART, type Section } from '../../engine/index.ts';
import { depthOf, inward, spread } from '../measures/section/isotherm.ts';
import { type Outline, outlineOf, SQRT2 } from '../measures/section/outline.ts';
import { BARELY_SHORT_MM } from '../measures/section/root-fusion.ts';
import type { Station } from '../schema/station.ts';
import type { DrawingWords } from '../words/drawing.ts';
import type { Language } from '../words/language.ts';
import { wordsIn } from '../words/words.ts';
import { dimensionsOf, legLineOff } from './dimensions.ts';
import { plateOutline, type View, viewOf } from './plates.ts';
import {
  drawingOf,
  INK,
  LETTER,
  letteringAt,
  num,
  PAPER,
  pathOf,
  QUIET,
  readingAt,
  type Spot,
  type Svg,
  tag,
  textAt,
} from './svg.ts';
import { type Place, zoneOutlines } from './zones.ts';

/** How a cut is drawn. */
export interface SectionSvgOptions {
  /** Pixels per millimetre. */
  scale?: number;
  /** Prefix of ids; drawings that share a page need one each, or they clip each other. */
  id?: string;
  /** Leave out dimension lines and text. */
  bare?: boolean;
  /** As it lies under the glass: no root mark, and of the joint as cut only what the weld has not fused. */
  asEtched?: boolean;
  /** Of its lettering; left out: English. */
  language?: Language;
}

/** Greys of the etch: plate as rolled, heat-affected zone, weld metal and fused plate. Texture tells them apart without them. */
const PLATE_GREY = '#ddd8cd';
const HAZ_GREY = '#c0bab0';
const NUGGET_GREY = '#989288';

/**
 * The cut drawn like an etched macro: plate A lying, plate B standing (tee) or on top (lap), weld nugget, heat-affected zone, the joint as
 * cut dashed, lack of fusion as a heavy line, dimension lines for what was measured.
 * @param station readings of this section, or null where there is no bead
 * @returns a complete SVG document; no DOM needed
 */
export function sectionSvg(sec: Section, station: Station | null, options: SectionSvgOptions = {}): Svg {
  const scale = options.scale ?? 30;
  const id = options.id ?? 'cut';
  const words = wordsIn(options.language ?? 'en').drawing;
  const view = viewOf(sec.joint, station?.legA_mm ?? 5, station?.legB_mm ?? 5);
  const at = (p: Place): Spot => ({ x: (p.a - view.aMin) * scale, y: (view.bMax - p.b) * scale });
  const width = (view.aMax - view.aMin) * scale;
  const note = options.bare === true ? null : captionOf(sec, station, width, view, scale, words);
  const height = Math.max((view.bMax - view.bMin) * scale, note?.bottom ?? 0);
  const glass = options.asEtched === true;
  const outline = outlineOf(sec);
  const surface = surfaceOf(sec).map(at);
  const plates = (['A', 'B'] as const).map((side) => pathOf(plateOutline(sec.joint, side, view).map(at), true));
  const body = [
    tag('rect', { width, height, fill: PAPER }),
    tag('g', { 'clip-path': `url(#${id}-metal)` }, etched(sec, plates, at, id, glass)),
    outline === null
      ? ''
      : tag('path', { d: weldPath(sec, outline, at), fill: `url(#${id}-weld)`, stroke: glass ? NUGGET_GREY : 'none' }),
    glass
      ? ''
      : tag('path', { d: plates.join(''), fill: 'none', stroke: QUIET, 'stroke-width': 1, 'stroke-dasharray': '5 4' }),
    tag('path', {
      d: pathOf(surface, false),
      fill: 'none',
      stroke: INK,
      'stroke-width': 2,
      'stroke-linejoin': 'round',
    }),
    outline === null ? '' : unfused(sec, outline, at),
    glass ? '' : rootMark(at({ a: 0, b: 0 }), letteringAt(scale).text / 15),
    options.bare === true || station === null || outline === null
      ? ''
      : dimensionsOf(sec, station, outline, at, scale, words),
    note?.draw(height) ?? '',
  ];
  return drawingOf(
    width,
    height,
    label(sec, station, words),
    definitions(surface, plates, view, at, id) + body.join(''),
  );
}

/** The metal's surface, carried on along the plates as cut past the last columns. */
function surfaceOf(sec: Section): Place[] {
  const line = Array.from(sec.u_mm, (u, i) => ({ a: (sec.w_mm[i]! + u) / SQRT2, b: (sec.w_mm[i]! - u) / SQRT2 }));
  const onward = (end: Place, before: Place): Place => {
    const length = Math.max(1e-6, Math.sqrt((end.a - before.a) ** 2 + (end.b - before.b) ** 2));
    return { a: end.a + (30 * (end.a - before.a)) / length, b: end.b + (30 * (end.b - before.b)) / length };
  };
  return [onward(line[0]!, line[1]!), ...line, onward(line[line.length - 1]!, line[line.length - 2]!)];
}

/** Plates, heat-affected zone and fused plate, each clipped to its own plate. */
function etched(
  sec: Section,
  plates: readonly string[],
  at: (p: Place) => Spot,
  id: string,
  facesShown: boolean,
): string {
  // Where plate met plate an etch shows a line, until the weld has fused it: drawn over the heat-affected zone, under the fused plate.
  const faces = facesShown ? tag('path', { d: plates.join(''), fill: 'none', stroke: INK, 'stroke-width': 1.6 }) : '';
  const one = (part: typeof PART.A | typeof PART.B, plate: string, clip: string): string => {
    const zone = (reached: number, fill: string): string => {
      const d = zoneOutlines(sec, part, reached)
        .map((ring) => pathOf(ring.map(at), true))
        .join('');
      return d === ''
        ? ''
        : tag('path', { d, fill, 'fill-rule': 'evenodd', stroke: INK, 'stroke-width': 0.8, 'stroke-opacity': 0.55 });
    };
    return (
      tag('path', { d: plate, fill: `url(#${id}-plate)` }) +
      tag(
        'g',
        { 'clip-path': `url(#${clip})` },
        zone(sec.ac1_C, `url(#${id}-haz)`) + faces + zone(sec.solidus_C, `url(#${id}-weld)`),
      )
    );
  };
  return one(PART.A, plates[0]!, `${id}-a`) + one(PART.B, plates[1]!, `${id}-b`);
}

function weldPath(sec: Section, o: Outline, at: (p: Place) => Spot): string {
  const place = (p: { u: number; w: number }): Place => ({ a: (p.w + p.u) / SQRT2, b: (p.w - p.u) / SQRT2 });
  const under: Place[] = [];
  for (let i = sec.u_mm.length - 1; i >= 0; i--) {
    const u = sec.u_mm[i]!;
    if (u < o.toeA.u && u > o.toeB.u) under.push(place({ u, w: Math.min(sec.plate_mm[i]!, sec.w_mm[i]!) }));
  }
  return pathOf([...o.face.map(place), ...under].map(at), true);
}

/** Faces under the weld that never fused (short by more than the root is read to), as a heavy line on the joint as cut. */
function unfused(sec: Section, o: Outline, at: (p: Place) => Spot): string {
  const solidus = spread(sec.solidus_C, sec.start_C);
  const h = sec.cell_mm;
  const parts: string[] = [];
  for (const side of ['A', 'B'] as const) {
    const toe = side === 'A' ? (o.toeA.w + o.toeA.u) / SQRT2 : (o.toeB.w - o.toeB.u) / SQRT2;
    const from = side === 'B' ? sec.joint.gap_mm : 0;
    for (let along = from; along < toe; along += h) {
      const line = inward(sec, side, along + h / 2);
      if (line === null) break;
      if (depthOf(line, solidus, h) > -BARELY_SHORT_MM) continue;
      const end = Math.min(along + h, toe);
      const [p, q] =
        side === 'A' ? [at({ a: along, b: 0 }), at({ a: end, b: 0 })] : [at({ a: 0, b: along }), at({ a: 0, b: end })];
      parts.push(tag('line', { x1: p.x, y1: p.y, x2: q.x, y2: q.y, stroke: INK, 'stroke-width': 4 }));
    }
  }
  return parts.join('');
}

function rootMark(at: Spot, size: number): string {
  const arm = 9 * size;
  return (
    tag('circle', { cx: at.x, cy: at.y, r: 5 * size, fill: 'none', stroke: INK, 'stroke-width': 1.4 }) +
    tag('path', {
      d: `M${num(at.x - arm)} ${num(at.y)}L${num(at.x + arm)} ${num(at.y)}M${num(at.x)} ${num(at.y - arm)}L${num(at.x)} ${num(at.y + arm)}`,
      stroke: INK,
      'stroke-width': 0.9,
    })
  );
}

/** Room at the foot of the drawing's text. */
const FOOT = 12;

/**
 * Where it was cut and how the readings are meant: below the leg's dimension, beside each other where there is room for both.
 * @returns the least height that takes it, and the text drawn at the foot of a given height
 */
function captionOf(
  sec: Section,
  station: Station | null,
  width: number,
  view: View,
  scale: number,
  words: DrawingWords,
): { bottom: number; draw: (height: number) => string } {
  const { text, small } = letteringAt(scale);
  const where = words.where(num(sec.y_mm));
  const how = station === null ? words.noWeld : words.asInTable;
  const beside = LETTER * (text * where.length + small * how.length) + 3 * FOOT < width;
  const legs = (view.bMax + sec.joint.plateA_mm) * scale + legLineOff(scale) + 1.5 * text;
  const lines = beside ? text : text + 1.4 * small;
  return {
    bottom: legs + lines + FOOT,
    draw: (height) => {
      const low = height - FOOT;
      const said = { 'font-size': small, fill: QUIET };
      return (
        readingAt({ x: FOOT, y: beside ? low : low - 1.4 * small }, where, text, 'start') +
        (beside
          ? textAt({ x: width - FOOT, y: low }, how, { 'text-anchor': 'end', ...said })
          : textAt({ x: FOOT, y: low }, how, said))
      );
    },
  };
}

function label(sec: Section, s: Station | null, words: DrawingWords): string {
  if (s === null) return words.bare(num(sec.y_mm));
  const root = s.rootFusion_mm > 0 ? words.rootPast(num(s.rootFusion_mm)) : words.rootShort(num(-s.rootFusion_mm));
  return words.label(num(sec.y_mm), num(s.legA_mm), num(s.legB_mm), num(s.convexity_mm), root);
}

function definitions(
  surface: readonly Spot[],
  plates: readonly string[],
  view: View,
  at: (p: Place) => Spot,
  id: string,
): string {
  // All metal lies below and behind the surface line.
  const behind = [
    { a: view.aMax + 60, b: view.bMin - 60 },
    { a: view.aMin - 60, b: view.bMin - 60 },
    { a: view.aMin - 60, b: view.bMax + 60 },
  ].map(at);
  const clip = (name: string, d: string): string => tag('clipPath', { id: `${id}-${name}` }, tag('path', { d }));
  const pattern = (name: string, size: number, ground: string, marks: string): string =>
    tag(
      'pattern',
      { id: `${id}-${name}`, width: size, height: size, patternUnits: 'userSpaceOnUse' },
      tag('rect', { width: size, height: size, fill: ground }) + marks,
    );
  const stroke = (d: string, width: number, opacity: number): string =>
    tag('path', { d, stroke: INK, 'stroke-width': width, 'stroke-opacity': opacity, fill: 'none' });
  return tag(
    'defs',
    {},
    clip('metal', pathOf([...surface, ...behind], true)) +
      clip('a', plates[0]!) +
      clip('b', plates[1]!) +
      pattern('plate', 9, PLATE_GREY, stroke('M1 3h4M5 7h3', 0.5, 0.18)) +
      pattern('haz', 5, HAZ_GREY, stroke('M1 1h.8M3.5 3.5h.8', 0.8, 0.4)) +
      pattern('weld', 8, NUGGET_GREY, stroke('M0 8L8 0M-2 2L2 -2M6 10L10 6', 0.7, 0.28)) +
      tag('style', {}, 'text{font-family:system-ui,sans-serif;font-variant-numeric:tabular-nums}'),
  );
}

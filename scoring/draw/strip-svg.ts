import type { JointOptions } from '../../engine/index.ts';
import { type RootPlace, tiedIn } from '../measures/bead/survey.ts';
import type { Language } from '../words/language.ts';
import { wholePercent } from '../words/root.ts';
import { wordsIn } from '../words/words.ts';
import { drawingOf, INK, num, PAPER, QUIET, RULE, type Svg, tag, textAt } from './svg.ts';

/** How the opened root is drawn. */
export interface StripSvgOptions {
  /** Width of the drawing, px. */
  width?: number;
  id?: string;
  judged?: { from_mm: number; to_mm: number };
  cuts_mm?: readonly number[];
  /** The bead was laid from the top down: no stretch of its root is drawn as tied in. */
  weldedDown?: boolean;
  /** Of its lettering; left out: English. */
  language?: Language;
}

const ROW = 26;
const TOP = 34;
const SIDE = 96;

/**
 * The opened root: a fillet broken along its root, plate by plate, bottom of the joint at the left. Tied in: torn metal, drawn as dense
 * slanted strokes. Not tied in: the face as cut, drawn blank with its edge. Nearer to the root line than it can be read: in doubt, a dashed outline with
 * crosses. Welded downwards: dotted outline, since nothing of it is judged. No weld: nothing but the centre line.
 * @returns a complete SVG document
 */
export function stripSvg(strip: readonly RootPlace[], joint: JointOptions, options: StripSvgOptions = {}): Svg {
  const width = options.width ?? 720;
  const id = options.id ?? 'strip';
  const { plateName } = wordsIn(options.language ?? 'en');
  const height = TOP + 2 * ROW + 46;
  const x = (y_mm: number): number => SIDE + (y_mm / joint.length_mm) * (width - SIDE - 16);
  const rows = (['A', 'B'] as const)
    .map(
      (side, r) =>
        textAt({ x: SIDE - 8, y: TOP + r * ROW + 17 }, plateName(joint.kind, side), {
          class: 'q',
          'text-anchor': 'end',
        }) + row(strip, side, TOP + r * ROW, x, id, options.weldedDown ?? false),
    )
    .join('');
  return drawingOf(
    width,
    height,
    summary(strip, options),
    definitions(id) +
      tag('rect', { width, height, fill: PAPER }) +
      rows +
      rule(joint.length_mm, x) +
      marks(options, x) +
      textAt({ x: width - 16, y: 14 }, summary(strip, options), { class: 'n', 'text-anchor': 'end' }),
  );
}

type Kind = 'torn' | 'doubt' | 'face' | 'not judged' | 'none';

const KINDS = { 'tied in': 'torn', 'in doubt': 'doubt', 'not tied in': 'face' } as const;
/** Outlines that are broken: long strokes where it is in doubt, dots where nothing is judged. */
const DASHES: Partial<Record<Kind, string>> = { doubt: '6 3', 'not judged': '2 3' };

const STROKE_PX: Record<Kind, number> = { torn: 0.6, doubt: 1, face: 1.6, 'not judged': 1, none: 0 };

function row(
  strip: readonly RootPlace[],
  side: 'A' | 'B',
  top: number,
  x: (y: number) => number,
  id: string,
  down: boolean,
): string {
  const out: string[] = [];
  let from = 0;
  const kind = (p: RootPlace): Kind => {
    if (!p.welded) return 'none';
    if (down) return 'not judged';
    return KINDS[tiedIn(side === 'A' ? p.rootFusionA_mm : p.rootFusionB_mm, p.plusMinus_mm)];
  };
  for (let i = 1; i <= strip.length; i++) {
    if (i < strip.length && kind(strip[i]!) === kind(strip[from]!)) continue;
    const what = kind(strip[from]!);
    const left = edgeBefore(strip, from);
    const right = edgeBefore(strip, i);
    if (what !== 'none') {
      out.push(
        tag('rect', {
          x: x(left),
          y: top + 3,
          width: x(right) - x(left),
          height: ROW - 6,
          fill: what === 'torn' || what === 'doubt' ? `url(#${id}-${what})` : PAPER,
          stroke: INK,
          'stroke-width': STROKE_PX[what],
          ...(DASHES[what] === undefined ? {} : { 'stroke-dasharray': DASHES[what] }),
        }),
      );
    }
    from = i;
  }
  const first = edgeBefore(strip, 0);
  const last = edgeBefore(strip, strip.length);
  return (
    tag('line', { x1: x(first), y1: top + ROW / 2, x2: x(last), y2: top + ROW / 2, stroke: RULE, 'stroke-width': 1 }) +
    out.join('')
  );
}

/** Height half way between station i - 1 and station i. */
function edgeBefore(strip: readonly RootPlace[], i: number): number {
  if (strip.length === 0) return 0;
  if (i === 0) return strip[0]!.y_mm;
  if (i >= strip.length) return strip[strip.length - 1]!.y_mm;
  return (strip[i - 1]!.y_mm + strip[i]!.y_mm) / 2;
}

function rule(length_mm: number, x: (y: number) => number): string {
  const y = TOP + 2 * ROW + 8;
  const parts = [tag('line', { x1: x(0), y1: y, x2: x(length_mm), y2: y, stroke: QUIET, 'stroke-width': 0.8 })];
  const step = length_mm > 160 ? 20 : 10;
  for (let mm = 0; mm <= length_mm; mm += step) {
    parts.push(tag('line', { x1: x(mm), y1: y, x2: x(mm), y2: y + 5, stroke: QUIET, 'stroke-width': 0.8 }));
    parts.push(textAt({ x: x(mm), y: y + 19 }, String(mm), { class: 'q', 'text-anchor': 'middle' }));
  }
  return parts.join('');
}

function marks(options: StripSvgOptions, x: (y: number) => number): string {
  const parts: string[] = [];
  const bottom = TOP + 2 * ROW + 8;
  if (options.judged !== undefined) {
    const { from_mm, to_mm } = options.judged;
    parts.push(tag('line', { x1: x(from_mm), y1: bottom, x2: x(to_mm), y2: bottom, stroke: INK, 'stroke-width': 3 }));
  }
  for (const cut of options.cuts_mm ?? []) {
    parts.push(tag('path', { d: `M${num(x(cut))} ${num(TOP - 2)}l-4 -8h8z`, fill: INK }));
  }
  return parts.join('');
}

function summary(strip: readonly RootPlace[], options: StripSvgOptions): string {
  const range = options.judged;
  const words = wordsIn(options.language ?? 'en').drawing.strip;
  const asked = strip.filter((p) => range === undefined || (p.y_mm >= range.from_mm && p.y_mm <= range.to_mm));
  const welded = asked.filter((p) => p.welded);
  if (welded.length === 0) return words.none;
  if (options.weldedDown) return words.down;
  const share = welded.filter((p) => p.fused).length / welded.length;
  const doubt = inDoubt(welded) / welded.length;
  const of = range === undefined ? null : welded.length < asked.length ? 'weld' : 'judged length';
  return words.share(wholePercent(share), of, doubt === 0 ? null : wholePercent(doubt));
}

/** Places where the shallower side is nearer to the root line than it can be read. */
function inDoubt(places: readonly RootPlace[]): number {
  return places.filter((p) => tiedIn(Math.min(p.rootFusionA_mm, p.rootFusionB_mm), p.plusMinus_mm) === 'in doubt')
    .length;
}

function definitions(id: string): string {
  return tag(
    'defs',
    {},
    tag(
      'pattern',
      { id: `${id}-torn`, width: 7, height: 7, patternUnits: 'userSpaceOnUse' },
      tag('rect', { width: 7, height: 7, fill: '#a39d92' }) +
        tag('path', {
          d: 'M0 7L7 0M-2 2L2 -2M5 9L9 5M2 5l1.5 -.5M5 2l1 .8',
          stroke: INK,
          'stroke-width': 0.9,
          fill: 'none',
        }),
    ) +
      tag(
        'pattern',
        { id: `${id}-doubt`, width: 9, height: 9, patternUnits: 'userSpaceOnUse' },
        tag('rect', { width: 9, height: 9, fill: PAPER }) +
          tag('path', { d: 'M3 3l3 3M6 3l-3 3', stroke: INK, 'stroke-width': 0.9, fill: 'none' }),
      ) +
      tag(
        'style',
        {},
        'text{font-family:system-ui,sans-serif;font-variant-numeric:tabular-nums}.n{font-size:15px;fill:#1f2326}.q{font-size:13px;fill:#6b6f72}',
      ),
  );
}

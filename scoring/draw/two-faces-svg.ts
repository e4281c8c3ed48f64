import type { Section } from '../../engine/index.ts';
import { PART } from '../../engine/index.ts';
import { outlineOf, SQRT2 } from '../measures/section/outline.ts';
import type { Station } from '../schema/station.ts';
import { plateOutline, viewOf } from './plates.ts';
import { drawingOf, INK, PAPER, pathOf, QUIET, type Spot, type Svg, tag, textAt } from './svg.ts';
import { type Place, zoneOutlines } from './zones.ts';

/** One cut of two, with its readings and what it is called. */
export interface FaceOf {
  section: Section;
  station: Station | null;
  name: string;
}

const SCALE = 22;
/** Height of a line of the key. */
const LINE = 20;
const HATCH = 'faces-hatch';
const SIDES = ['A', 'B'] as const;

/**
 * Two cuts of joints of the same make laid over each other: the first in solid lines, the second dashed, hatched where their faces differ; fusion
 * lines thin. The same scale, root on root.
 */
export function twoFacesSvg(first: FaceOf, second: FaceOf): Svg {
  const { joint } = first.section;
  const leg = (side: 'legA_mm' | 'legB_mm'): number =>
    Math.max(first.station?.[side] ?? 5, second.station?.[side] ?? 5);
  const view = viewOf(joint, leg('legA_mm'), leg('legB_mm'));
  const at = (p: Place): Spot => ({ x: (p.a - view.aMin) * SCALE, y: (view.bMax - p.b) * SCALE });
  const width = (view.aMax - view.aMin) * SCALE;
  const drawn = (view.bMax - view.bMin) * SCALE;
  const height = drawn + 2 * LINE + 8;
  const outlines = SIDES.map((side) => pathOf(plateOutline(joint, side, view).map(at), true));
  const plates = outlines.join('');
  const [mine, theirs] = [faceOf(first).map(at), faceOf(second).map(at)];
  const between = mine.length > 0 && theirs.length > 0 ? pathOf([...mine, ...[...theirs].reverse()], true) : '';
  const line = (d: string, width_px: number, dash: string): string =>
    d === ''
      ? ''
      : tag('path', {
          d,
          fill: 'none',
          stroke: INK,
          'stroke-width': width_px,
          'stroke-linejoin': 'round',
          ...(dash === '' ? {} : { 'stroke-dasharray': dash }),
        });
  const key = (n: number, text: string, dash: string): string => {
    const y = drawn + LINE * (n + 0.6);
    return (
      tag('line', {
        x1: 10,
        y1: y,
        x2: 46,
        y2: y,
        stroke: INK,
        'stroke-width': 2,
        ...(dash === '' ? {} : { 'stroke-dasharray': dash }),
      }) + textAt({ x: 56, y: y + 5 }, text, { 'font-size': 14, fill: INK })
    );
  };
  const clip = tag('clipPath', { id: 'faces-view' }, tag('rect', { x: 0, y: 0, width, height: drawn }));
  const inPlates = SIDES.map((side, i) =>
    tag('clipPath', { id: `faces-${side}` }, tag('path', { d: outlines[i]! })),
  ).join('');
  const hatch = tag(
    'pattern',
    { id: HATCH, width: 5, height: 5, patternUnits: 'userSpaceOnUse', patternTransform: 'rotate(-45)' },
    tag('line', { x1: 0, y1: 0, x2: 0, y2: 5, stroke: INK, 'stroke-width': 1.2 }),
  );
  return drawingOf(
    width,
    height,
    `${first.name} and ${second.name}, laid over each other`,
    tag('defs', {}, clip + inPlates + hatch) +
      tag('rect', { width, height, fill: PAPER }) +
      tag(
        'g',
        { 'clip-path': 'url(#faces-view)' },
        tag('path', { d: plates, fill: 'none', stroke: QUIET, 'stroke-width': 1, 'stroke-dasharray': '2 3' }) +
          (between === '' ? '' : tag('path', { d: between, fill: `url(#${HATCH})`, 'fill-rule': 'evenodd' })) +
          SIDES.map((side) =>
            tag(
              'g',
              { 'clip-path': `url(#faces-${side})` },
              line(fusedOf(first, side, at), 1.1, '') + line(fusedOf(second, side, at), 1.1, '6 4'),
            ),
          ).join('') +
          line(pathOf(mine, false), 2.2, '') +
          line(pathOf(theirs, false), 2.2, '8 5'),
      ) +
      key(0, `${first.name}, cut at ${first.section.y_mm.toFixed(0)} mm`, '') +
      key(1, `${second.name}, cut at ${second.section.y_mm.toFixed(0)} mm; hatched: where the faces differ`, '8 5'),
  );
}

/** The face from toe to toe. */
function faceOf({ section }: FaceOf): Place[] {
  const outline = outlineOf(section);
  return outline === null ? [] : outline.face.map((p) => ({ a: (p.w + p.u) / SQRT2, b: (p.w - p.u) / SQRT2 }));
}

/** The fusion line in one plate. */
function fusedOf({ section }: FaceOf, side: 'A' | 'B', at: (p: Place) => Spot): string {
  return zoneOutlines(section, PART[side], section.solidus_C)
    .map((ring) => pathOf(ring.map(at), true))
    .join('');
}

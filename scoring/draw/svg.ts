import { clean } from '../schema/clean.ts';

/** Pieces of SVG as text. Every number is written to 0.01, so the same section gives the same bytes everywhere. */

export const PAPER = '#f6f3ec';
export const INK = '#1f2326';
export const QUIET = '#6b6f72';
export const RULE = '#b9b4a8';

declare const svgBrand: unique symbol;
/** A finished drawing: every text and attribute in it is cleaned and escaped. Made by `drawingOf` alone, and the only drawing papers take. */
export type Svg = string & { readonly [svgBrand]: true };

export interface Spot {
  x: number;
  y: number;
}

export function num(x: number): string {
  const text = x.toFixed(2).replace(/\.?0+$/, '');
  return text === '-0' ? '0' : text;
}

/** Text as it may stand in a drawing or a page: cleaned, and what is markup there an entity. */
export function escapeText(text: string): string {
  return clean(text)
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;')
    .replace(/'/g, '&#39;');
}

export function pathOf(points: readonly Spot[], closed: boolean): string {
  return (
    points.map((p, i) => `${i === 0 ? 'M' : 'L'}${num(p.x)} ${num(p.y)}`).join('') +
    (closed && points.length > 0 ? 'Z' : '')
  );
}

function attributes(values: Record<string, string | number>): string {
  return Object.entries(values)
    .map(([name, value]) => ` ${name}="${typeof value === 'number' ? num(value) : escapeText(value)}"`)
    .join('');
}

export function tag(name: string, values: Record<string, string | number>, content?: string): string {
  return content === undefined
    ? `<${name}${attributes(values)}/>`
    : `<${name}${attributes(values)}>${content}</${name}>`;
}

/**
 * The drawing around what `tag` and `textAt` made.
 * @param label what a screen reader says of it; null: it has a title of its own
 */
export function drawingOf(width: number, height: number, label: string | null, content: string): Svg {
  return tag(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${num(width)} ${num(height)}`,
      width,
      height,
      role: 'img',
      ...(label === null ? {} : { 'aria-label': label }),
    },
    content,
  ) as Svg;
}

export function textAt(at: Spot, text: string, values: Record<string, string | number> = {}): string {
  return tag('text', { x: at.x, y: at.y, ...values }, escapeText(text));
}

/** Sizes on a drawing to scale, px. */
export interface Lettering {
  /** Readings. */
  text: number;
  /** What is said once, beside the drawing. */
  small: number;
}

/** Full size from 18 pixels a millimetre; below that smaller, so that it fits between the lines, and never too small to read. */
export function letteringAt(scale: number): Lettering {
  const text = Math.min(15, Math.max(11, 5 + 0.55 * scale));
  return { text, small: text - 2 };
}

/** Mean width of a letter, in its size: on the wide side, so that what is set by it has room. */
export const LETTER = 0.51;

/** A reading: text in ink. */
export function readingAt(at: Spot, text: string, size: number, anchor: 'start' | 'middle' | 'end' = 'middle'): string {
  return textAt(at, text, { 'text-anchor': anchor, 'font-size': size, fill: INK });
}

/** A dimension line between two points with slanted ticks and its text beside the middle, `off` px to the left of the way from p to q. */
export function dimension(p: Spot, q: Spot, text: string, off: number, size: number): string {
  const dx = q.x - p.x;
  const dy = q.y - p.y;
  const length = Math.max(1e-6, Math.sqrt(dx * dx + dy * dy));
  const reach = 0.27 * size;
  const tick = (at: Spot): string =>
    tag('line', {
      x1: at.x - reach,
      y1: at.y + reach,
      x2: at.x + reach,
      y2: at.y - reach,
      stroke: INK,
      'stroke-width': 1.4,
    });
  const middle = { x: (p.x + q.x) / 2 + (off * dy) / length, y: (p.y + q.y) / 2 - (off * dx) / length };
  return (
    tag('line', { x1: p.x, y1: p.y, x2: q.x, y2: q.y, stroke: INK, 'stroke-width': 0.9 }) +
    tick(p) +
    tick(q) +
    readingAt({ x: middle.x, y: middle.y + 0.3 * size }, text, size)
  );
}

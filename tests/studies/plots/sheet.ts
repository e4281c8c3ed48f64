/** Several plots on one sheet, as SVG text whose numbers are rounded, so that the same data give the same file everywhere. */
import * as Plot from '@observablehq/plot';
import { parseHTML } from 'linkedom';

const WIDTH = 460;
const HEIGHT = 320;
const HEAD = 46;

/** Formula: a black line. Model: dots and rings in colours that differ in lightness too, so that they can be told apart in grey. */
export const COLOURS = ['#0b4f8a', '#c2571a', '#5aa02c', '#7a3e9d', '#b8860b'] as const;

export interface Panel {
  title: string;
  options: Plot.PlotOptions;
}

/** Drawings side by side under one title, each with lines of its own. */
export interface Tile {
  title: string;
  /** Complete SVG documents with ids of their own. */
  drawings: { svg: string; notes: string[] }[];
}

const TILE_HEIGHT = 246;
const TITLE = 20;
const NOTE = 34;

/** A finished drawing fitted into a box, as nested SVG of its own shape: what lies outside its view box is clipped. */
function nested(svg: string, x: number, y: number, wide: number, tall: number): string {
  const size = / width="([\d.]+)" height="([\d.]+)"/.exec(svg);
  if (!size) throw new Error('a drawing without width and height cannot be fitted');
  const scale = Math.min(wide / Number(size[1]), tall / Number(size[2]));
  const width = Number(size[1]) * scale;
  const height = Number(size[2]) * scale;
  return svg.replace(
    size[0],
    ` x="${x}" y="${y}" width="${width.toFixed(1)}" height="${height.toFixed(1)}" overflow="hidden"`,
  );
}

function tileAt({ title, drawings }: Tile, x: number, y: number): string {
  const wide = WIDTH / drawings.length;
  const inside = drawings.map(({ svg, notes }, n) => {
    const left = 8 + n * wide;
    const under = notes.map(
      (note, k) => `<text x="${left}" y="${TILE_HEIGHT - NOTE + 8 + 15 * k}" font-size="12">${xml(note)}</text>`,
    );
    return nested(svg, left, TITLE, wide - 16, TILE_HEIGHT - TITLE - NOTE - 8) + under.join('');
  });
  return `<g transform="translate(${x},${y})"><text x="8" y="12" font-size="12" font-weight="bold">${xml(title)}</text>${inside.join('')}</g>`;
}

/** Lays panels, then tiles, out in rows of `across`, under one heading. */
export function sheet(heading: string, panels: Panel[], across = 2, tiles: Tile[] = []): string {
  const { document } = parseHTML('<html><body></body></html>');
  const rows = Math.ceil(panels.length / across);
  const width = across * WIDTH;
  const below = HEAD + rows * (HEIGHT + 24);
  const height = below + Math.ceil(tiles.length / across) * TILE_HEIGHT;
  const parts = panels.map(({ title, options }, n) => {
    const plot = Plot.plot({
      width: WIDTH,
      height: HEIGHT,
      marginLeft: 56,
      marginBottom: 40,
      marginRight: 20,
      style: { fontFamily: 'sans-serif', fontSize: '11px', color: '#222' },
      document: document as unknown as Document,
      ...options,
    });
    const x = (n % across) * WIDTH;
    const y = HEAD + Math.floor(n / across) * (HEIGHT + 24);
    plot.setAttribute('x', '0');
    plot.setAttribute('y', '20');
    return `<g transform="translate(${x},${y})"><text x="12" y="12" font-size="13" font-weight="bold">${xml(title)}</text>${plot.outerHTML}</g>`;
  });
  const text = [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" font-family="sans-serif" fill="#222">`,
    `<rect width="${width}" height="${height}" fill="#fff"/>`,
    `<text x="12" y="28" font-size="17" font-weight="bold">${xml(heading)}</text>`,
    ...parts,
    ...tiles.map((tile, n) => tileAt(tile, (n % across) * WIDTH, below + Math.floor(n / across) * TILE_HEIGHT)),
    '</svg>',
    '',
  ].join('\n');
  const round = (values: string): string =>
    values.replace(/-?\d+\.\d{2,}/g, (number) => String(Number(Number(number).toFixed(2))));
  return text.replace(/="[^"]*"/g, round);
}

const xml = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');

export interface Point {
  x: number;
  y: number;
}

export const line = (data: Point[]): Plot.Markish =>
  Plot.line(data, { x: 'x', y: 'y', stroke: '#222', strokeWidth: 1.2 });

export const dots = (data: Point[], colour: string): Plot.Markish =>
  Plot.dot(data, { x: 'x', y: 'y', stroke: colour, fill: '#fff', r: 2.6, strokeWidth: 1.3 });

/** Words beside a curve, at its place in data. */
export const words = (text: string, x: number, y: number, colour = '#222'): Plot.Markish =>
  Plot.text([{ x, y, text }], { x: 'x', y: 'y', text: 'text', fill: colour, textAnchor: 'start', dx: 4 });

/** Even steps from `from` to `to`, both counted. */
export const steps = (from: number, to: number, n: number): number[] =>
  Array.from({ length: n + 1 }, (_, i) => from + ((to - from) * i) / n);

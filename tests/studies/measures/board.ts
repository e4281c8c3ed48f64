import type { Section } from '../../../engine/index.ts';
import { viewOf } from '../../../scoring/draw/plates.ts';
import { dimension, INK, num, PAPER, pathOf, QUIET, type Spot, tag, textAt } from '../../../scoring/draw/svg.ts';
import type { Place } from '../../../scoring/draw/zones.ts';
import { type Station, sectionSvg } from '../../../scoring/index.ts';
import { SQRT2 } from '../../../scoring/measures/section/outline.ts';

/** What is drawn over a cut: the bench's own drawing of it, bare, with the construction of one measure in ink. */
const SCALE = 22;
const TEXT = 15;

/** A place across the joint as the welder sees it, in plate coordinates. */
export function across(p: { u: number; w: number }): Place {
  return { a: (p.w + p.u) / SQRT2, b: (p.w - p.u) / SQRT2 };
}

/** Text on a halo of paper, so that it reads over the etch. */
function label(at: Spot, text: string, anchor: 'start' | 'middle' | 'end' = 'start'): string {
  return textAt(at, text, {
    'text-anchor': anchor,
    'font-size': TEXT,
    fill: INK,
    stroke: PAPER,
    'stroke-width': 4,
    'stroke-linejoin': 'round',
    'paint-order': 'stroke',
  });
}

function stroke(points: readonly Spot[], width = 1.2, dash = ''): string {
  return tag('path', {
    d: pathOf(points, false),
    fill: 'none',
    stroke: INK,
    'stroke-width': width,
    ...(dash === '' ? {} : { 'stroke-dasharray': dash }),
  });
}

function dot(at: Spot): string {
  return tag('circle', { cx: at.x, cy: at.y, r: 3.5, fill: INK });
}

/** One cut with a construction drawn over it. */
export class CutBoard {
  readonly #cut: string;
  readonly #at: (p: Place) => Spot;
  readonly #parts: string[] = [];

  constructor(sec: Section, station: Station, id: string) {
    const view = viewOf(sec.joint, station.legA_mm, station.legB_mm);
    this.#cut = sectionSvg(sec, station, { bare: true, scale: SCALE, id });
    this.#at = (p) => ({ x: (p.a - view.aMin) * SCALE, y: (view.bMax - p.b) * SCALE });
  }

  /** Dimension line between two places with its text, `off` px to the left of the way. */
  span(p: Place, q: Place, text: string, off = -14): this {
    this.#parts.push(this.#halo(p, q), dimension(this.#at(p), this.#at(q), '', 0, TEXT));
    const a = this.#at(p);
    const b = this.#at(q);
    const length = Math.max(1e-6, Math.sqrt((b.x - a.x) ** 2 + (b.y - a.y) ** 2));
    const mid = {
      x: (a.x + b.x) / 2 + (off * (b.y - a.y)) / length,
      y: (a.y + b.y) / 2 - (off * (b.x - a.x)) / length,
    };
    this.#parts.push(label({ x: mid.x, y: mid.y + 5 }, text, 'middle'));
    return this;
  }

  line(points: readonly Place[], dash = '', width = 1.2): this {
    this.#parts.push(stroke(points.map(this.#at), width, dash));
    return this;
  }

  /** Helping line, thin. */
  help(p: Place, q: Place): this {
    const [a, b] = [this.#at(p), this.#at(q)];
    this.#parts.push(tag('line', { x1: a.x, y1: a.y, x2: b.x, y2: b.y, stroke: QUIET, 'stroke-width': 0.8 }));
    return this;
  }

  mark(p: Place): this {
    this.#parts.push(dot(this.#at(p)));
    return this;
  }

  text(p: Place, text: string, anchor: 'start' | 'middle' | 'end' = 'start'): this {
    this.#parts.push(label(this.#at(p), text, anchor));
    return this;
  }

  svg(): string {
    return `${this.#cut.slice(0, -'</svg>'.length)}${this.#parts.join('')}</svg>\n`;
  }

  #halo(p: Place, q: Place): string {
    const [a, b] = [this.#at(p), this.#at(q)];
    return tag('line', { x1: a.x, y1: a.y, x2: b.x, y2: b.y, stroke: PAPER, 'stroke-width': 4, 'stroke-opacity': 0.8 });
  }
}

export interface Axis {
  from: number;
  to: number;
  step: number;
  name: string;
}

const LEFT = 58;
const TOP = 20;
const FOOT = 44;
const RIGHT = 20;

/** A chart in the same ink: two axes, lines, dimensions and words. */
export class Chart {
  readonly #parts: string[] = [];
  readonly at: (x: number, y: number) => Spot;

  constructor(
    readonly x: Axis,
    readonly y: Axis,
    readonly title: string,
    readonly width = 620,
    readonly height = 320,
  ) {
    const w = width - LEFT - RIGHT;
    const h = height - TOP - FOOT;
    this.at = (px, py) => ({
      x: LEFT + ((px - x.from) / (x.to - x.from)) * w,
      y: TOP + h - ((py - y.from) / (y.to - y.from)) * h,
    });
    this.#frame();
  }

  line(points: readonly [number, number][], width = 1.6, dash = ''): this {
    this.#parts.push(
      stroke(
        points.map(([x, y]) => this.at(x, y)),
        width,
        dash,
      ),
    );
    return this;
  }

  span(p: [number, number], q: [number, number], text: string, off = -14): this {
    const a = this.at(...p);
    const b = this.at(...q);
    const length = Math.max(1e-6, Math.sqrt((b.x - a.x) ** 2 + (b.y - a.y) ** 2));
    const mid = {
      x: (a.x + b.x) / 2 + (off * (b.y - a.y)) / length,
      y: (a.y + b.y) / 2 - (off * (b.x - a.x)) / length,
    };
    const anchor = Math.abs(b.y - a.y) > Math.abs(b.x - a.x) ? (off * (b.y - a.y) > 0 ? 'start' : 'end') : 'middle';
    this.#parts.push(dimension(a, b, '', 0, TEXT), label({ x: mid.x, y: mid.y + 5 }, text, anchor));
    return this;
  }

  mark(x: number, y: number): this {
    this.#parts.push(dot(this.at(x, y)));
    return this;
  }

  text(x: number, y: number, text: string, anchor: 'start' | 'middle' | 'end' = 'start'): this {
    this.#parts.push(label(this.at(x, y), text, anchor));
    return this;
  }

  /** A stretch of the x axis shaded over the whole height. */
  shade(from: number, to: number, opacity = 0.1): this {
    const a = this.at(from, this.y.to);
    const b = this.at(to, this.y.from);
    this.#parts.push(
      tag('rect', { x: a.x, y: a.y, width: b.x - a.x, height: b.y - a.y, fill: INK, 'fill-opacity': opacity }),
    );
    return this;
  }

  /** A bar standing on the x axis. */
  bar(x: number, width: number, y: number, dark: boolean): this {
    const a = this.at(x - width / 2, y);
    const b = this.at(x + width / 2, this.y.from);
    this.#parts.push(
      tag('rect', {
        x: a.x,
        y: a.y,
        width: Math.max(1, b.x - a.x),
        height: Math.max(0, b.y - a.y),
        fill: INK,
        'fill-opacity': dark ? 0.85 : 0.3,
      }),
    );
    return this;
  }

  svg(): string {
    return (
      `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${this.width} ${this.height}" width="${this.width}" height="${this.height}" role="img" aria-label="${this.title}">` +
      tag('style', {}, 'text{font-family:system-ui,sans-serif;font-variant-numeric:tabular-nums}') +
      tag('rect', { width: this.width, height: this.height, fill: PAPER }) +
      `${this.#parts.join('')}</svg>\n`
    );
  }

  #frame(): void {
    const { x, y } = this;
    const small = { 'font-size': 12, fill: QUIET };
    const parts = this.#parts;
    for (let v = x.from; v <= x.to + 1e-9; v += x.step) {
      const p = this.at(v, y.from);
      parts.push(tag('line', { x1: p.x, y1: p.y, x2: p.x, y2: p.y + 5, stroke: QUIET, 'stroke-width': 0.8 }));
      parts.push(textAt({ x: p.x, y: p.y + 18 }, num(v), { ...small, 'text-anchor': 'middle' }));
    }
    for (let v = y.from; v <= y.to + 1e-9; v += y.step) {
      const p = this.at(x.from, v);
      parts.push(tag('line', { x1: p.x - 5, y1: p.y, x2: p.x, y2: p.y, stroke: QUIET, 'stroke-width': 0.8 }));
      parts.push(textAt({ x: p.x - 9, y: p.y + 4 }, num(v), { ...small, 'text-anchor': 'end' }));
    }
    const corner = this.at(x.from, y.from);
    const top = this.at(x.from, y.to);
    const right = this.at(x.to, y.from);
    parts.push(stroke([top, corner, right], 1));
    parts.push(textAt({ x: right.x, y: this.height - 8 }, x.name, { ...small, 'text-anchor': 'end' }));
    parts.push(textAt({ x: top.x + 8, y: top.y + 4 }, y.name, { ...small }));
  }
}

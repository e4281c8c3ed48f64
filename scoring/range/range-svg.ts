import { drawingOf, escapeText, INK, PAPER, QUIET, RULE, type Svg, tag, textAt } from '../draw/svg.ts';
import type { ScoringWords } from '../words/en.ts';
import type { Language } from '../words/language.ts';
import { said } from '../words/names.ts';
import { wordsIn } from '../words/words.ts';
import { axisWords, middleSentences, type RangeMap } from './map.ts';
import { type Axis, axes, type RangePoint } from './plan.ts';
import type { RangeResult } from './weld-point.ts';

const CELL = { wide: 52, high: 34 } as const;
const LEFT = 78;
const GAP = 30;
const TOP = 84;
/** Room for a sheet's name, and for a line of words under the map (characters). */
const LEAST_SHEET = 330;
const LINE = 125;

/** Bead metal, its uncertain edge, plate. Lightness alone tells them apart; each has its own texture besides. */
const METAL = '#3d5a73';
const EDGE = '#b7c4cd';

type Look = 'holds' | 'doubt' | 'profile' | 'root' | 'none';

const KEY: readonly [Look, string][] = [
  ['holds', 'within on every line (ripples)'],
  ['doubt', 'too close to call (dots)'],
  ['profile', 'tied in, profile outside (one slash)'],
  ['root', 'root short (hatched)'],
  ['none', 'no verdict (cross)'],
];

function lookOf(r: RangeResult): Look {
  if (r.verdict === 'within') return 'holds';
  if (r.verdict === 'no verdict') return 'none';
  if (r.root === 'outside') return 'root';
  return r.verdict === 'too close to call' ? 'doubt' : 'profile';
}

/**
 * Draws a working range: the first two swept settings as the sheet, every other one and the patterns as sheets side by side. Each cell is
 * drawn like what it stands for, so that it reads in black and white; the number in it is the least steady hand that still holds.
 */
export function rangeSvg(map: RangeMap, language: Language = 'en'): Svg {
  const { phrase } = wordsIn(language);
  const swept = axes.filter((axis) => map.plan.values[axis].length > 1);
  const x: Axis = swept[0] ?? 'feed_mpmin';
  const y: Axis = swept[1] ?? (x === 'volts_V' ? 'feed_mpmin' : 'volts_V');
  const sheets = sheetsOf(map, [x, y]);
  const sheetWide = Math.max(LEAST_SHEET, LEFT + map.plan.values[x].length * CELL.wide);
  const sheetHigh = map.plan.values[y].length * CELL.high + 66;
  const perRow = Math.max(1, Math.min(sheets.length, Math.floor(1180 / (sheetWide + GAP))));
  const rows = Math.ceil(sheets.length / perRow);
  const words = [...middleSentences(map), map.caution].map(phrase).flatMap(broken);
  const width = Math.max(880, perRow * (sheetWide + GAP) + GAP);
  const height = TOP + rows * (sheetHigh + GAP) + 26 + KEY.length * 20 + words.length * 18 + 20;
  const { base } = map.plan;
  const joint = map.points[0]!.exercise.joint;
  const title = `${joint.kind}, ${said(joint.plateA_mm)} mm plate, leg ${said(base.leg_mm)}, ${base.profile}`;
  let body = tag('rect', { x: 0, y: 0, width, height, fill: PAPER });
  body += textAt({ x: GAP, y: 34 }, phrase(map.label), { class: 't' });
  body += textAt({ x: GAP, y: 56 }, phrase(title), { class: 'n' });
  sheets.forEach((sheet, i) => {
    const left = GAP + (i % perRow) * (sheetWide + GAP);
    const top = TOP + Math.floor(i / perRow) * (sheetHigh + GAP);
    body += drawSheet(map, sheet, [x, y], { x: left, y: top }, wordsIn(language));
  });
  let at = TOP + rows * (sheetHigh + GAP) + 10;
  for (const [look, text] of KEY) {
    body += cellBody(look, GAP, at, 30, 15) + textAt({ x: GAP + 40, y: at + 12 }, phrase(text), { class: 's' });
    at += 20;
  }
  at += 14;
  for (const text of words) {
    body += textAt({ x: GAP, y: at }, text, { class: 's' });
    at += 18;
  }
  const style = `text{font-family:Barlow,"Helvetica Neue",Arial,sans-serif;fill:${INK}}.t{font-size:21px;font-weight:600}.n{font-size:14px}.s{font-size:12.5px}.q{font-size:12.5px;fill:${QUIET}}`;
  return drawingOf(
    width,
    height,
    null,
    `${tag('title', {}, escapeText(phrase(map.label)))}${tag('style', {}, style)}${defs()}${body}`,
  );
}

interface Sheet {
  name: string;
  points: RangePoint[];
}

function sheetsOf(map: RangeMap, flat: readonly Axis[]): Sheet[] {
  const sheets = new Map<string, Sheet>();
  const others = axes.filter((a) => !flat.includes(a));
  for (const p of map.points) {
    const name = [
      p.pattern.replace('-', ' '),
      ...others.map((a) => `${axisWords[a].name} ${said(p.at[a], 2)} ${axisWords[a].unit}`),
    ].join(', ');
    const sheet = sheets.get(name) ?? { name, points: [] };
    sheet.points.push(p);
    sheets.set(name, sheet);
  }
  return [...sheets.values()];
}

function drawSheet(
  map: RangeMap,
  sheet: Sheet,
  [x, y]: readonly [Axis, Axis],
  { x: left, y: top }: { x: number; y: number },
  { phrase, said }: Pick<ScoringWords, 'phrase' | 'said'>,
): string {
  const xs = map.plan.values[x];
  const ys = map.plan.values[y];
  const x0 = left + LEFT;
  const y0 = top + 24;
  const bottom = y0 + ys.length * CELL.high;
  let out = textAt({ x: left, y: top + 8 }, phrase(sheet.name), { class: 'n' });
  for (const p of sheet.points) {
    const cx = x0 + xs.indexOf(p.at[x]) * CELL.wide;
    const cy = bottom - (ys.indexOf(p.at[y]) + 1) * CELL.high;
    const r = map.results[p.index]!;
    out += cellBody(lookOf(r), cx, cy, CELL.wide, CELL.high);
    if (r.handHolds !== null && map.plan.handAmounts.some((a) => a > 0)) {
      out += tag('rect', { x: cx + 15, y: cy + 9, width: 22, height: 16, rx: 2, fill: PAPER });
      out += textAt({ x: cx + 26, y: cy + 21.5 }, said(r.handHolds, 2), { class: 's', 'text-anchor': 'middle' });
    }
    if (map.middle?.point.index === p.index) {
      const frame = { x: cx + 2.5, y: cy + 2.5, width: CELL.wide - 5, height: CELL.high - 5, fill: 'none' };
      out +=
        tag('rect', { ...frame, stroke: PAPER, 'stroke-width': 5 }) +
        tag('rect', { ...frame, stroke: INK, 'stroke-width': 2.4 });
    }
  }
  xs.forEach((value, i) => {
    out += textAt({ x: x0 + (i + 0.5) * CELL.wide, y: bottom + 16 }, said(value, 2), {
      class: 's',
      'text-anchor': 'middle',
    });
  });
  ys.forEach((value, i) => {
    out += textAt({ x: x0 - 6, y: bottom - (i + 0.5) * CELL.high + 4 }, said(value, 2), {
      class: 's',
      'text-anchor': 'end',
    });
  });
  out += textAt({ x: x0, y: bottom + 34 }, phrase(`${axisWords[x].name}, ${axisWords[x].unit}`), { class: 'q' });
  out += textAt({ x: left, y: y0 + 12 }, phrase(axisWords[y].name), { class: 'q' });
  out += textAt({ x: left, y: y0 + 26 }, axisWords[y].unit, { class: 'q' });
  return out;
}

function cellBody(look: Look, x: number, y: number, width: number, height: number): string {
  const box = { x, y, width, height };
  const frame = tag('rect', { ...box, fill: 'none', stroke: RULE, 'stroke-width': 0.8 });
  const line = (x1: number, y1: number, x2: number, y2: number): string =>
    tag('line', { x1, y1, x2, y2, stroke: INK, 'stroke-width': 1.1 });
  switch (look) {
    case 'holds':
      return tag('rect', { ...box, fill: METAL }) + tag('rect', { ...box, fill: 'url(#ripples)' }) + frame;
    case 'doubt':
      return tag('rect', { ...box, fill: EDGE }) + tag('rect', { ...box, fill: 'url(#dots)' }) + frame;
    case 'profile':
      return frame + line(x + width * 0.35, y + height * 0.75, x + width * 0.65, y + height * 0.25);
    case 'root':
      return tag('rect', { ...box, fill: 'url(#hatch)' }) + frame;
    case 'none':
      return (
        frame +
        line(x + width * 0.4, y + height * 0.3, x + width * 0.6, y + height * 0.7) +
        line(x + width * 0.4, y + height * 0.7, x + width * 0.6, y + height * 0.3)
      );
  }
}

/** Weld ripples, dots, hatching: nothing here needs colour vision. */
function defs(): string {
  const pattern = (id: string, width: number, height: number, content: string): string =>
    tag('pattern', { id, width, height, patternUnits: 'userSpaceOnUse' }, content);
  const stroke = { fill: 'none', stroke: PAPER, 'stroke-width': 1.1 };
  return tag(
    'defs',
    {},
    pattern('ripples', 13, 6, tag('path', { d: 'M0 5C3 0 10 0 13 5', ...stroke })) +
      pattern('dots', 7, 7, tag('circle', { cx: 3.5, cy: 3.5, r: 1.2, fill: INK })) +
      pattern('hatch', 6, 6, tag('path', { d: 'M-1 1L1 -1M0 6L6 0M5 7L7 5', stroke: QUIET, 'stroke-width': 0.9 })),
  );
}

/** A sentence in lines of LINE characters at most. */
function broken(sentence: string): string[] {
  const lines: string[] = [];
  for (const word of sentence.split(' ')) {
    const last = lines[lines.length - 1];
    if (last === undefined || last.length + word.length >= LINE) lines.push(word);
    else lines[lines.length - 1] = `${last} ${word}`;
  }
  return lines;
}

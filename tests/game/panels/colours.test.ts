/**
 * Colours that carry meaning, as deuteranopes, protanopes and tritanopes see them. Seen by the matrices of Machado, Oliveira and Fernandes 2009 (IEEE TVCG
 * 15(6), 1291-1298, severity 1, on linear light), told apart by CIEDE2000 (CIE 142-2001; Sharma, Wu and Dalal 2005), both as culori has them.
 * A pair stays 15 apart, or it has a second cue, and that is looked for where it is drawn. That 15 is seen beside each other at once is common practice, no source.
 */
import { readdirSync, readFileSync } from 'node:fs';
import {
  type Color,
  converter,
  differenceCiede2000,
  filterDeficiencyDeuter,
  filterDeficiencyProt,
  filterDeficiencyTrit,
} from 'culori';
import { describe, expect, it } from 'vitest';

const LEAST = 15;
/** Greys of a drawing, which have a texture each besides. */
const LEAST_GREY = 7;
const linear = converter('lrgb');
const apart = differenceCiede2000();

type Filter = ReturnType<typeof filterDeficiencyProt>;

/** The matrices are for linear light; culori's filter works on whatever it is handed as r, g, b. */
function seenBy(filter: Filter): (colour: string) => Color {
  return (colour) => {
    const { r, g, b } = linear(colour)!;
    const seen = filter({ mode: 'rgb', r, g, b });
    const within = (x: number): number => Math.min(1, Math.max(0, x));
    return { mode: 'lrgb', r: within(seen.r), g: within(seen.g), b: within(seen.b) };
  };
}

const EYES: Record<string, (colour: string) => Color> = {
  'a full set of cones': (colour) => linear(colour)!,
  protanopia: seenBy(filterDeficiencyProt(1)),
  deuteranopia: seenBy(filterDeficiencyDeuter(1)),
  tritanopia: seenBy(filterDeficiencyTrit(1)),
};

const style = (name: string): string =>
  readFileSync(new URL(`../../../game/style/${name}.css`, import.meta.url), 'utf8');
const source = (path: string): string => readFileSync(new URL(`../../../${path}`, import.meta.url), 'utf8');

/** The inks of a room, by name. */
function inks(room: 'light' | 'dark'): Record<string, string> {
  const tokens = style('tokens');
  const block =
    room === 'light' ? /:root \{([^}]*)\}/.exec(tokens)![1]! : /\[data-room="dark"\] \{([^}]*)\}/.exec(tokens)![1]!;
  return Object.fromEntries(
    [...block.matchAll(/--([a-z-]+): (#[0-9a-f]{6})/g)].map(([, name, colour]) => [name!, colour!]),
  );
}

/** What one rule of a style sheet says. */
function rule(sheet: string, selector: string): string {
  const at = style(sheet)
    .split(/\}\s*/)
    .find((part) =>
      part
        .split('{')[0]!
        .trim()
        .split(/,\s*/)
        .some((one) => one.trim() === selector),
    );
  return at?.split('{')[1] ?? '';
}

/** Inks that stand beside each other and mean different things; told apart by their colour alone. */
const BY_COLOUR: readonly (readonly [one: string, other: string, where: string])[] = [
  ['ink', 'paper', 'a bar of the beat sheet, a filled dot: done; an open one: left early, or off the front'],
  ['ink', 'cool', 'a pause as it was, and the time now'],
  ['cool', 'paper', 'guides'],
  ['heat', 'paper', 'the moving dot of the weave, what is wrong'],
  ['heat', 'cool', 'the dot on the weave asked for'],
  ['wire', 'paper', 'the wire'],
  ['soft', 'paper', 'a crossing of the root'],
  ['torn', 'torn-ground', 'a root that tore'],
];

describe.each(['light', 'dark'] as const)('inks of the %s room', (room) => {
  const of = inks(room);
  describe.each(Object.entries(EYES))('with %s', (_, eye) => {
    it.each(BY_COLOUR)(`%s and %s stay ${LEAST} apart (%s)`, (one, other) => {
      expect(apart(eye(of[one]!), eye(of[other]!))).toBeGreaterThanOrEqual(LEAST);
    });
  });
});

/** A drawing's own colours: greys that lie beside each other in a cut, and the map's three. Each kind has its texture as well. */
const DRAWN: readonly (readonly [file: string, names: readonly string[]])[] = [
  ['scoring/draw/section-svg.ts', ['PLATE_GREY', 'HAZ_GREY', 'NUGGET_GREY']],
  ['scoring/range/range-svg.ts', ['METAL', 'EDGE']],
];

describe('colours of drawings', () => {
  it.each(DRAWN)('%s: each differs to every eye by lightness, and has a texture besides', (path, names) => {
    const text = source(path);
    const colours = names.map((name) => new RegExp(`${name} = '(#[0-9a-f]{6})'`).exec(text)![1]!);
    for (const eye of Object.values(EYES))
      for (const [i, a] of colours.entries())
        for (const b of colours.slice(i + 1)) expect(apart(eye(a), eye(b))).toBeGreaterThan(LEAST_GREY);
    expect(text.match(/pattern\('/g)!.length).toBeGreaterThanOrEqual(names.length);
  });
});

describe('what colour does not have to tell', () => {
  it('verdicts have four shapes and are words', () => {
    const shapes = [...source('game/panels/verdict-mark.tsx').matchAll(/'?[a-z ]+'?: '(M[^']+)'/g)].map(([, d]) => d);
    expect(new Set(shapes).size).toBe(4);
  });

  it('the root strip has a texture or an outline of its own for each of its kinds', () => {
    const strip = source('game/panels/root-strip.tsx');
    for (const id of ['torn', 'doubt', 'face']) expect(strip).toContain(`<pattern id="${id}"`);
    const outlines = ['.doubt', '.unjudged'].map((of) => /stroke-dasharray: ([\d ]+)/.exec(rule('joint', of))?.[1]);
    expect(new Set(outlines).size).toBe(2);
    expect(outlines).not.toContain(undefined);
  });

  it('toes are told by their row and name, a pause asked for by its height, a pause left early by its outline', () => {
    const sheet = source('game/panels/beat-sheet.tsx');
    expect(sheet).toMatch(/visit\.toe === 'B' \? LEFT_Y : RIGHT_Y/);
    const heights = [...sheet.matchAll(/height=\{(\d+)\}/g)].map(([, h]) => Number(h));
    expect(Math.max(...heights)).toBeGreaterThan(2 * Math.min(...heights));
    expect(rule('beat', '.staff .bar.early')).toMatch(/stroke: var\(--ink\)/);
  });

  it('limits, faces laid beside and guides are dashed, best is larger, links are underlined', () => {
    for (const [sheet, selector] of [
      ['logbook', '.charts .limit'],
      ['practice', '.practice svg .limit'],
      ['marking', '.modelface'],
      ['joint', '.toemarks line'],
      ['joint', '.cutline .chain'],
    ] as const)
      expect(rule(sheet, selector), selector).toMatch(/stroke-dasharray/);
    expect(source('game/panels/drawing.tsx')).toMatch(/\.face \{[^}]*stroke-dasharray/);
    expect(source('game/panels/log-chart.tsx')).toMatch(/best\?\.id \? 5 : 3/);
    expect(rule('tokens', 'button.link')).toMatch(/border-bottom: 1px solid/);
  });

  it('no ink is used that is not there', () => {
    const defined = new Set(Object.keys(inks('light')));
    const sized = new Set(['font', 'slow', 'head', 'classbar', 'lens', 'leader']);
    const sheets = readdirSync(new URL('../../../game/style/', import.meta.url)).filter((name) =>
      name.endsWith('.css'),
    );
    const used = sheets.flatMap((name) =>
      [...style(name.replace('.css', '')).matchAll(/var\(--([a-z-]+)/g)].map(([, ink]) => ink!),
    );
    expect([...new Set(used)].filter((ink) => !defined.has(ink) && !sized.has(ink))).toEqual([]);
    expect(Object.keys(inks('dark')).sort()).toEqual([...defined].sort());
  });
});

describe('the eyes', () => {
  it('are those of the paper: first row of the matrix for protanopia, and the pair of Sharma’s table that differs most by hue', () => {
    // Table 1 of the paper, protanomaly of severity 1: red alone becomes 0.152286 of red.
    expect((EYES.protanopia!('#ff0000') as { r: number }).r).toBeCloseTo(0.152286, 5);
    // Sharma, Wu and Dalal 2005, table 1, pair 1: 2.0425.
    const lab = (l: number, a: number, b: number): Color => ({ mode: 'lab65', l, a, b });
    expect(apart(lab(50, 2.6772, -79.7751), lab(50, 0, -82.7485))).toBeCloseTo(2.0425, 3);
  });
});

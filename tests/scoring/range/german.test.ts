/** The map of settings in German: its drawing has no English word left, whatever it comes to. */
import { parseHTML } from 'linkedom';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  exerciseNamed,
  loadLanguage,
  mapOf,
  pointsOf,
  type RangeResult,
  rangeAround,
  rangeSvg,
} from '../../../scoring/index.ts';

const ENGLISH =
  /\b(the|of|is|are|and|with|from|which|this|that|to|by|volts|wire|travel|feed|leg|plate|root|tee|lap|step|steps|hand holds|within|middle)\b/i;

beforeAll(() => loadLanguage('de'));

describe.each(['tee-inverted-v', 'straight-run', 'lap-5'])('the map of settings round %s', (name) => {
  const plan = rangeAround(exerciseNamed(name)!);
  const made = (good: (i: number) => boolean): RangeResult[] =>
    pointsOf(plan).map((p) => ({
      index: p.index,
      verdict: good(p.index) ? 'within' : 'outside',
      root: good(p.index) ? 'within' : 'outside',
      rootFusion_mm: 0.3,
      convexity_mm: 1,
      size_mm: 5,
      laid_mm2: 20,
      current_A: 120,
      regime: 'short-circuiting',
      because: '',
      handHolds: good(p.index) ? 0 : null,
    }));

  it.each([
    ['nothing holds', () => false],
    ['one holds', (i: number) => i === 12],
    ['half of it holds', (i: number) => i > 10],
    ['all of it holds', () => true],
  ] as const)('is in German where %s', (_, good) => {
    const { document } = parseHTML(rangeSvg(mapOf(plan, made(good)), 'de'));
    const texts = [...document.querySelectorAll('text, title')].map((t) =>
      (t.textContent ?? '').replace(/[a-z0-9]+(-[a-z0-9]+)+/g, ''),
    );
    expect(texts.length).toBeGreaterThan(10);
    expect(texts.filter((text) => ENGLISH.test(text))).toEqual([]);
    expect(texts.join(' ')).toMatch(/Arbeitsbereich[\s\S]*Kombinationen/);
  });
});

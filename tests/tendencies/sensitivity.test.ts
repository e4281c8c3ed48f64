import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { ENGINE_VERSION } from '../../engine/index.ts';
import { EXPECTED } from '../studies/sensitivity/expected.ts';
import { type Figures, tasks } from '../studies/sensitivity/figures.ts';
import { KNOBS } from '../studies/sensitivity/knobs.ts';
import { judge, page } from '../studies/sensitivity/page.ts';

const FOLDER = new URL('../studies/sensitivity/', import.meta.url);
const figures: Figures = JSON.parse(readFileSync(new URL('figures.json', FOLDER), 'utf8'));

describe('the committed page of what every knob moves', () => {
  it('is of this engine, with every weld it asks for', () => {
    expect(figures.engine).toBe(ENGINE_VERSION);
    expect(figures.welds.map(({ piece, knob, value }) => ({ piece, knob, value }))).toEqual(tasks());
  });

  it('says what its figures say, held or not', () => {
    expect(readFileSync(new URL('README.md', FOLDER), 'utf8')).toBe(page(figures));
  });

  it('asks something of every knob, of both pieces', () => {
    expect(new Set(EXPECTED.map((e) => e.knob))).toEqual(new Set(KNOBS.map((k) => k.name)));
    expect(judge(figures)).toHaveLength(2 * EXPECTED.length);
  });

  it('calls a change of the wrong sign, or none to read, not held', () => {
    const turned = structuredClone(figures);
    for (const weld of turned.welds) weld.outcomes.amps = weld.outcomes.amps === null ? null : -weld.outcomes.amps;
    const amps = (f: Figures): boolean[] =>
      judge(f)
        .filter((j) => j.piece === 'tee' && j.expectation.outcome === 'amps')
        .map((j) => j.held);
    expect(amps(figures)).not.toContain(false);
    expect(amps(turned)).not.toContain(true);
  });
});

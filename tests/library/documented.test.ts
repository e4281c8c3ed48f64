import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { type Export, exportsOf, WAYS_IN } from './documented.ts';

describe('every public export of the library', () => {
  let found: Map<string, Export[]>;
  beforeAll(() => {
    found = exportsOf(WAYS_IN);
  }, 60_000);

  it.each(WAYS_IN)('of %s has a docstring', (path) => {
    const exported = found.get(path)!;
    expect(exported.length).toBeGreaterThan(1);
    expect(exported.filter((e) => !e.documented).map((e) => e.name)).toEqual([]);
  });

  it('is looked at with its methods', () => {
    const names = found.get('engine/index.ts')!.map((e) => e.name);
    for (const name of ['createSimulation', 'Simulation', 'Simulation.section', 'HeatPiece.run', 'EngineError'])
      expect(names).toContain(name);
  });

  it('would be named where its docstring is missing', () => {
    const path = 'engine/solvers/heat-piece.ts';
    const text = readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');
    const bare = text
      .replace(/\/\*\* @throws EngineError with[^\n]*\n/, '')
      .replace(/ *\/\*\* Temperature, peak[^\n]*\n/, '');
    expect(bare).not.toBe(text);
    const missing = exportsOf(['engine/solvers/index.ts'], new Map([[path, bare]])).get('engine/solvers/index.ts')!;
    expect(missing.filter((e) => !e.documented).map((e) => e.name)).toContain('HeatPiece.field');
  }, 60_000);
});

import { describe, expect, it } from 'vitest';
import { SCENES } from '../scenes/scenes.ts';
import { type GoldenWelds, quarrel, storedWelds, weldAll } from './welds.ts';

describe('golden welds', () => {
  it('are the bits that this engine version stands for, second by second', () => {
    expect(quarrel(storedWelds(), weldAll())).toBeNull();
  }, 600_000);

  const stored = storedWelds();
  const name = SCENES[0]!.name;
  const changed = (change: (g: GoldenWelds) => void): GoldenWelds => {
    const copy = structuredClone(stored);
    change(copy);
    return copy;
  };

  it('name bits that move without the version, with the second', () => {
    const now = changed((g) => {
      g.scenes[name]![3]![1] = 'other';
    });
    expect(quarrel(stored, now)).toMatch(/bits moved and ENGINE_VERSION stayed .*\n.*differs from second 4 on/);
  });

  it('name a version that moves without bits', () => {
    expect(
      quarrel(
        stored,
        changed((g) => (g.engine = '99.0.0')),
      ),
    ).toMatch(/no bit moved/);
  });

  it('ask to be recorded again when both moved', () => {
    const now = changed((g) => {
      g.engine = '99.0.0';
      g.scenes[name]![0]![0] = 'other';
    });
    expect(quarrel(stored, now)).toMatch(/npm run golden/);
  });
});

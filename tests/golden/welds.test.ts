import { describe, expect, it } from 'vitest';
import { SCENES } from '../scenes/scenes.ts';
import { WHOLE } from '../support/share.ts';
import { type GoldenWelds, quarrel, storedUpTo, storedWelds, weldAll } from './welds.ts';

/** Short scenes in which most happens at once; `npm test` welds them to their end, and of the others the first seconds. */
const TO_THE_END = ['tee, 0.6 mm cells, short', 'held until it drops', 'hostile scribble', 'bead on a flat plate'];
const lastOf = (scene: string): number | undefined => (WHOLE || TO_THE_END.includes(scene) ? undefined : 3);

describe('golden welds', () => {
  it(`are the bits that this engine version stands for, second by second, ${WHOLE ? 'to the end' : 'three seconds and four scenes whole'}`, () => {
    expect(TO_THE_END.filter((name) => !SCENES.some((scene) => scene.name === name))).toEqual([]);
    expect(quarrel(storedUpTo(lastOf), weldAll(lastOf))).toBeNull();
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

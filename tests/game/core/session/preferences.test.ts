import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { preferencesFrom } from '../../../../game/core/session/preferences.ts';
import { recordingSchema } from '../../../../scoring/index.ts';
import { TestBench } from '../../support/test-bench.ts';

const usual = preferencesFrom(null);

describe('preferences', () => {
  it('survive what is not theirs: each spoilt field falls back by itself', () => {
    expect(preferencesFrom({ pacer: true, sound: 7, toeMarks: 'yes', handRig: { gun_g: 1e9, hose: 0 } })).toEqual({
      ...usual,
      pacer: true,
    });
    expect(preferencesFrom({ ghost: true })).toEqual({ ...usual, pacer: true });
    for (const kept of ['text', 7, [], null, undefined, { __proto__: null, exercise: {} }])
      expect(preferencesFrom(kept)).toEqual(usual);
  });

  it('give the same again when they have been kept (seed 9)', () => {
    fc.assert(
      fc.property(fc.object(), fc.dictionary(fc.constantFrom(...Object.keys(usual)), fc.anything()), (junk, own) => {
        const once = preferencesFrom({ ...junk, ...own });
        expect(preferencesFrom(JSON.parse(JSON.stringify(once)))).toEqual(once);
      }),
      { seed: 9 },
    );
  });

  it('that are spoilt never reach a file', async () => {
    const spoilt = {
      handRig: { gun_g: -4, hose: null },
      plainView: 'dark',
      devicePxPerMm: 1e-9,
      oneToOne: true,
      pacer: 3,
    };
    const bench = await new TestBench({ preferences: spoilt }).settle();
    bench.press(0, 5).wait(0.3).release();
    bench.session.finish();
    const { recording } = await bench.finished();
    expect(recordingSchema.safeParse(JSON.parse(JSON.stringify(recording))).error).toBeUndefined();
    expect(recording.aids).toMatchObject({ handRig: null, plainView: false });
    expect(recording.device.scale).toBeNull();
  });
});

/** What is heard of the arc, by its spectrum: the short circuits of the model's own wire, no other rhythm. */
import FFT from 'fft.js';
import { describe, expect, it } from 'vitest';
import { wireState } from '../../../engine/index.ts';
import { arcNoise } from '../../../game/audio/arc-noise.ts';
import { exercises } from '../../../scoring/index.ts';

const RATE_HZ = 44_100;
/** Loudness is taken every so many samples: 1050 times a second, far above any rate of short circuits. */
const HOP = 42;
const LENGTH = 2048;

/** The rate at which the sound swells, Hz: highest place of its loudness' spectrum between 30 and 200 Hz, smoothed over 8 Hz. */
function heard_Hz(sound: Float32Array): number {
  const envelope = new Array<number>(LENGTH).fill(0);
  const hops = Math.min(LENGTH, Math.floor(sound.length / HOP));
  for (let k = 0; k < hops; k++) {
    let power = 0;
    for (let n = k * HOP; n < (k + 1) * HOP; n++) power += sound[n]! ** 2;
    envelope[k] = Math.sqrt(power / HOP);
  }
  const mean = envelope.reduce((a, b) => a + b, 0) / hops;
  for (let k = 0; k < hops; k++) envelope[k]! -= mean;
  const fft = new FFT(LENGTH);
  const spectrum = fft.createComplexArray();
  fft.realTransform(spectrum, envelope);
  const step = RATE_HZ / HOP / LENGTH;
  const power = (k: number): number => spectrum[2 * k]! ** 2 + spectrum[2 * k + 1]! ** 2;
  const wide = Math.round(4 / step);
  let best = 0;
  let at = 0;
  for (let k = Math.ceil(30 / step); k * step < 200; k++) {
    let sum = 0;
    for (let j = k - wide; j <= k + wide; j++) sum += power(j);
    if (sum > best) {
      best = sum;
      at = k * step;
    }
  }
  return at;
}

describe('the sound of the arc', () => {
  // One exercise begins with a machine that somebody turned down; it is not ordinary on purpose.
  const ordinary = exercises
    .filter((e) => e.settings !== 'own process')
    .map((e) => [e.name, wireState(e.process, e.hold.tipToWork_mm)] as const);

  it.each(ordinary.filter(([, wire]) => wire.regime === 'short-circuiting'))(
    '%s swells at the rate of its short circuits',
    (_, wire) => {
      const heard = heard_Hz(arcNoise(RATE_HZ, wire));
      expect(Math.abs(heard - wire.shortCircuit_Hz) / wire.shortCircuit_Hz).toBeLessThan(0.1);
    },
  );

  it('dips 60 to 150 times a second in ordinary settings (common practice, no source)', () => {
    const rates = ordinary.filter(([, w]) => w.regime === 'short-circuiting').map(([, w]) => w.shortCircuit_Hz);
    expect(rates.length).toBeGreaterThan(5);
    expect(Math.min(...rates)).toBeGreaterThanOrEqual(60);
    expect(Math.max(...rates)).toBeLessThanOrEqual(150);
  });

  it('hears two rates apart, so that the first check can fail', () => {
    const wire = ordinary[0]![1];
    const slow = heard_Hz(arcNoise(RATE_HZ, { ...wire, shortCircuit_Hz: 70 }));
    const fast = heard_Hz(arcNoise(RATE_HZ, { ...wire, shortCircuit_Hz: 120 }));
    expect(fast - slow).toBeGreaterThan(30);
  });
});

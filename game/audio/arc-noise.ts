import type { WireState } from '../../engine/index.ts';

const LOOP_S = 2;
/** A short circuit is heard as a click when the drop bridges and a hiss while the arc burns on. */
const BURST_S = 0.0045;
const HISS = 0.05;

/**
 * Two seconds of arc, to be looped: one burst per short circuit at the rate the wire gives. Near the middle of the steady range the
 * bursts come evenly, like frying; away from it they scatter. Seeded, so the same settings sound the same.
 */
export function arcNoise(
  rate_Hz: number,
  wire: Pick<WireState, 'shortCircuit_Hz' | 'regime'>,
): Float32Array<ArrayBuffer> {
  const length = Math.round(rate_Hz * LOOP_S);
  const out = new Float32Array(length);
  let seed = 7;
  const random = (): number => {
    seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
    return seed / 4294967296;
  };
  const steady = wire.regime === 'short-circuiting';
  const scatter = steady ? 0.22 : 0.8;
  const loud = wire.regime === 'globular' ? 0.9 : steady ? 0.45 : 0.8;
  for (let i = 0; i < length; i++) out[i] = (random() - 0.5) * HISS;
  for (let t = 0; t < LOOP_S; ) {
    const gap = (1 / wire.shortCircuit_Hz) * (1 + (random() - 0.5) * 2 * scatter);
    const from = Math.round(t * rate_Hz);
    const peak = loud * (0.6 + 0.4 * random());
    const samples = Math.round(BURST_S * rate_Hz);
    for (let n = 0; n < samples; n++)
      out[(from + n) % length] += (random() - 0.5) * peak * Math.exp((-6 * n) / samples);
    t += Math.max(gap, 0.004);
  }
  return out;
}

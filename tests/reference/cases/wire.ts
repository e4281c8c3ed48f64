/** Melting of the four wires over their short-circuiting ranges. */
import { type ProcessOptions, wireState } from '../../../engine/index.ts';
import { bisect } from '../formulas/special.ts';

export const TIP_MM = 12;

/** Currents the handbooks name for short-circuiting: 0.030, 0.035 and 0.045 in; 1.0 mm between the last two. */
export const WORKING_RANGES: { wire_mm: ProcessOptions['wire_mm']; low_A: number; high_A: number }[] = [
  { wire_mm: 0.8, low_A: 40, high_A: 145 },
  { wire_mm: 0.9, low_A: 50, high_A: 180 },
  { wire_mm: 1.0, low_A: 60, high_A: 210 },
  { wire_mm: 1.2, low_A: 75, high_A: 250 },
];

const at = (wire_mm: ProcessOptions['wire_mm'], feed_mpmin: number): ReturnType<typeof wireState> =>
  wireState({ wire_mm, feed_mpmin, volts_V: 18, gas: 'M21-ArC-18', tip_mm: 0, nozzle_mm: 16 }, TIP_MM);

/** Feed at which the wire draws this current, m/min. */
export function feedFor(wire_mm: ProcessOptions['wire_mm'], amps: number): number {
  return bisect((feed) => at(wire_mm, feed).current_A - amps, 0.1, 40);
}

/** Melted wire per ampere and hour, g/(A h). */
export function gramsPerAmpHour(wire_mm: ProcessOptions['wire_mm'], amps: number): number {
  const state = at(wire_mm, feedFor(wire_mm, amps));
  return (state.metal_gps * 3600) / state.current_A;
}

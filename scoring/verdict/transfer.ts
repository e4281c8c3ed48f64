import { steadyVolts, wireState } from '../../engine/index.ts';
import type { Exercise } from '../schema/exercise.ts';
import type { AttemptRecording } from '../schema/recording.ts';

/** Volts that leave short-circuiting transfer at the amps of this feed. */
export interface OutsideTransfer {
  regime: 'stubbing' | 'globular';
  volts_V: number;
  low_V: number;
  high_V: number;
}

/** Tip-to-work where no exercise says one, mm (common practice, no source). */
const USUAL_TIP_MM = 12;

/**
 * Whether the settings leave short-circuiting transfer; null: they do not. What the model shows there has nothing to stand on: its balance
 * was set within the steady range. A matter of the machine alone: a tip held far out lowers amps and arc volts together.
 */
export function outsideTransfer(recording: AttemptRecording, exercise: Exercise | null): OutsideTransfer | null {
  const { process } = recording.simulation;
  const { current_A } = wireState(process, exercise?.hold.tipToWork_mm ?? USUAL_TIP_MM);
  const { low, high } = steadyVolts(process, current_A);
  const { volts_V } = process;
  if (volts_V >= low && volts_V <= high) return null;
  return { regime: volts_V < low ? 'stubbing' : 'globular', volts_V, low_V: low, high_V: high };
}

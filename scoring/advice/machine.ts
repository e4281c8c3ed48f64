import { steadyVolts, wireArea_mm2, wireState } from '../../engine/index.ts';
import { exerciseNamed } from '../exercises/ready.ts';
import type { Exercise } from '../schema/exercise.ts';
import type { SettingsCode } from '../schema/result.ts';
import { metalOf, TOO_LITTLE, TOO_MUCH, usualFor } from './metal.ts';

/** How the settings stand to those that the workshop's own exercise welds such a joint with. */
export interface MachineOff {
  code: SettingsCode;
  /** Too hot, or too cold or too little, by what is set and not by what came of it. */
  way: 'hot' | 'cold';
  /** 1: enough to account for a fault; 2: enough to be spoken of although the bead held. */
  strength: number;
}

/** Volts beyond what the feed asks for that count as 1, where the metal is as usual and where it is not. V */
const VOLTS_ALONE = 1.2;
const VOLTS_BESIDE = 0.7;
/** A gap from this on takes metal that has to be made up, mm (AWS D1.1 from memory: a leg grows by a gap over 1/16 in). */
const A_GAP_MM = 0.8;

/** Volts above the middle of what runs steadily at the feed, V. */
function voltsOff({ process, demonstration }: Exercise): number {
  const { current_A } = wireState(process, demonstration.tipToWork_mm);
  return process.volts_V - steadyVolts(process, current_A).middle;
}

/** Metal fed, as the wire's area times its feed: only ever compared. */
function metalRate({ process }: Exercise): number {
  return wireArea_mm2(process) * process.feed_mpmin;
}

/**
 * Settings against the workshop's for such a joint; null: as usual, or no exercise is near enough to say.
 * @param e the exercise, with the settings that were welded with
 */
export function machineOff(e: Exercise): MachineOff | null {
  // A ready exercise that sets the machine is its own measure.
  if (exerciseNamed(e.name)?.settings === 'fixed') return null;
  const usual = usualFor(e);
  const metal = metalOf(e).ofUsual;
  if (usual === null || metal === null) return null;
  const volts = voltsOff(e) - voltsOff(usual);
  const strength = Math.max(Math.abs(metal - 1) / (TOO_MUCH - 1), Math.abs(volts) / VOLTS_ALONE);
  if (e.joint.gap_mm - usual.joint.gap_mm >= A_GAP_MM && metal < TOO_LITTLE) {
    return { code: 'gap-takes-metal', way: 'cold', strength };
  }
  if (metal >= TOO_MUCH) return { code: volts >= VOLTS_BESIDE ? 'too-hot' : 'too-much-metal', way: 'hot', strength };
  // Less metal for its size although about as much is fed is the asked climb's or the asked size's doing, not the machine's.
  if (metal < TOO_LITTLE && metalRate(e) < TOO_LITTLE * metalRate(usual)) {
    return { code: volts >= VOLTS_BESIDE ? 'too-little-wire' : 'cold-root', way: 'cold', strength };
  }
  if (volts <= -VOLTS_ALONE) return { code: 'cold-root', way: 'cold', strength };
  return volts >= VOLTS_ALONE ? { code: 'too-hot', way: 'hot', strength } : null;
}

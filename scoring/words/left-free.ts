import type { Exercise } from '../schema/exercise.ts';
import type { FreeSetting } from '../schema/leeway.ts';
import { said } from './names.ts';

const NAMES: Record<FreeSetting, readonly [name: string, unit: string]> = {
  feed_mpmin: ['feed', ' m/min'],
  volts_V: ['volts', ' V'],
  wire_mm: ['wire', ' mm'],
  gas: ['gas', ''],
  tip_mm: ['tip out of the nozzle', ' mm'],
  nozzle_mm: ['nozzle', ' mm'],
  tipToWork_mm: ['tip-to-work', ' mm'],
  workAngle_deg: ['work angle', '°'],
  travelAngle_deg: ['push', '°'],
};

/** How far one setting is left to the trainee, such as `5 to 6 m/min`, or `C1 or M21-ArC-18`; null: it is as given. */
export function leftRange({ free }: Pick<Exercise, 'free'>, setting: FreeSetting): string | null {
  const left = free?.[setting] ?? null;
  if (left === null) return null;
  const [, unit] = NAMES[setting];
  if ('from' in left) return `${said(left.from, 2)} to ${said(left.to, 2)}${unit}`;
  return left.map((one) => (typeof one === 'number' ? `${one.toFixed(1)}${unit}` : one)).join(' or ');
}

/** Everything left to the trainee, such as `feed 5 to 6 m/min`; empty: all is as given. */
export function leftToTrainee(exercise: Pick<Exercise, 'free'>): string[] {
  return (Object.keys(NAMES) as FreeSetting[]).flatMap((setting) => {
    const range = leftRange(exercise, setting);
    return range === null ? [] : [`${NAMES[setting][0]} ${range}`];
  });
}

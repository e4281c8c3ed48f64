import type { Exercise } from '../schema/exercise.ts';
import type { FreeSetting } from '../schema/leeway.ts';
import { said } from './names.ts';

/** How what is left to the trainee is said, in English; the type of every other language. */
export const leftWords = {
  said,
  names: {
    feed_mpmin: 'feed',
    volts_V: 'volts',
    wire_mm: 'wire',
    gas: 'gas',
    tip_mm: 'tip out of the nozzle',
    nozzle_mm: 'nozzle',
    tipToWork_mm: 'tip-to-work',
    workAngle_deg: 'work angle',
    travelAngle_deg: 'push',
  } satisfies Record<FreeSetting, string> as Record<FreeSetting, string>,
  span: (from: string, to: string): string => `${from} to ${to}`,
  or: ' or ',
};
export type LeftWords = typeof leftWords;

const UNITS: Record<FreeSetting, string> = {
  feed_mpmin: ' m/min',
  volts_V: ' V',
  wire_mm: ' mm',
  gas: '',
  tip_mm: ' mm',
  nozzle_mm: ' mm',
  tipToWork_mm: ' mm',
  workAngle_deg: '°',
  travelAngle_deg: '°',
};

/** How far one setting is left to the trainee, such as `5 to 6 m/min`, or `C1 or M21-ArC-18`; null: it is as given. */
export function leftRange(
  { free }: Pick<Exercise, 'free'>,
  setting: FreeSetting,
  w: LeftWords = leftWords,
): string | null {
  const left = free?.[setting] ?? null;
  if (left === null) return null;
  const unit = UNITS[setting];
  if ('from' in left) return `${w.span(w.said(left.from, 2), w.said(left.to, 2))}${unit}`;
  const point = w.said(0.5).charAt(1);
  return left.map((one) => (typeof one === 'number' ? `${one.toFixed(1).replace('.', point)}${unit}` : one)).join(w.or);
}

/** Everything left to the trainee, such as `feed 5 to 6 m/min`; empty: all is as given. */
export function leftToTrainee(exercise: Pick<Exercise, 'free'>, w: LeftWords = leftWords): string[] {
  return (Object.keys(UNITS) as FreeSetting[]).flatMap((setting) => {
    const range = leftRange(exercise, setting, w);
    return range === null ? [] : [`${w.names[setting]} ${range}`];
  });
}

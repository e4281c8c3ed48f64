import { median } from '../statistics.ts';
import { bothLegs_mm, type Slice } from './survey.ts';

/** The lump and the shelf are over this far above the strike, mm; from the model's own beads, no source. */
const START_MM = 12;
/** The puddle that froze at a stop reaches this far below the arc, and a restart disturbs this far above it, mm. */
const BELOW_STOP_MM = 11;
const ABOVE_STOP_MM = 14;
/** Fewer slices than this are no settled bead, and no more than this are compared with: the nearest, as a warm top end is wider. */
const LEAST_SLICES = 5;
const MOST_SLICES = 12;

/** The bead away from its ends, as it stands near one place. */
export interface Settled {
  face_mm: number;
  legs_mm: number;
  throat_mm: number;
  /** Half the spread of the face over the slices compared with (a tenth left out at either end), mm. */
  give_mm: number;
}

/**
 * **Settled bead**: medians over the nearest slices that are neither start, stop nor restart. Common practice, no source: a start or a
 * stop is judged against the run beside it.
 * @returns null where too little of the bead is settled
 */
export function settledNear(
  slices: readonly Slice[],
  y_mm: number,
  struck_mm: number,
  stops_mm: readonly number[],
): Settled | null {
  const last = stops_mm[stops_mm.length - 1];
  const clear = slices.filter(
    (s) =>
      s.y_mm >= struck_mm + START_MM &&
      (last === undefined || s.y_mm <= last - BELOW_STOP_MM) &&
      stops_mm.every((stop) => s.y_mm < stop - BELOW_STOP_MM + 1e-9 || s.y_mm > stop + ABOVE_STOP_MM),
  );
  if (clear.length < LEAST_SLICES) return null;
  const near = [...clear].sort((a, b) => Math.abs(a.y_mm - y_mm) - Math.abs(b.y_mm - y_mm)).slice(0, MOST_SLICES);
  const faces = near.map((s) => s.face_mm).sort((a, b) => a - b);
  const tenth = Math.floor(faces.length / 10);
  return {
    face_mm: middleOf(faces),
    legs_mm: middleOf(near.map(bothLegs_mm)),
    throat_mm: middleOf(near.map((s) => s.station.throat_mm)),
    give_mm: (faces[faces.length - 1 - tenth]! - faces[tenth]!) / 2,
  };
}

/** Of at least one value. */
function middleOf(values: readonly number[]): number {
  return median(values) ?? Number.NaN;
}

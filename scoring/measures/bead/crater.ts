import type { Settled } from './settled.ts';
import type { Slice, Survey } from './survey.ts';

/** The crater lies no farther than this below the place where the arc went out, and this far above it where the bead goes on, mm. */
const BELOW_MM = 12;
const ABOVE_MM = 4;
/** Slices in the crater, mm apart. */
const STEP_MM = 0.5;
/** A crater shallower than this reads as filled (common practice, no source). mm */
export const FILLED_MM = 1;

export interface Crater {
  depth_mm: number;
  at_mm: number;
  hollow_mm: number;
  leastSize_mm: number;
  leastSizeAt_mm: number;
}

/**
 * **Crater depth**: how far the face near a stop lies below the settled face, at its deepest, mm; 0 where it does not. At the end of a weld
 * the last throat's length is left out, because a weld runs out there anyway: its effective length ends one throat before its end (EN
 * 1993-1-8 4.5.1, from memory). Where the bead goes on past the stop the crater is what is left of it. **Hollow**: deepest below
 * the line joining the toes there, mm (ISO 17659 for concavity, from memory). **Least size** in the crater: "craters filled" of
 * AWS D1.1 Table 6.1 is read as filled to the size asked (from memory).
 * @param end_mm upper end of the bead, or null where it goes on past the stop
 */
export function craterOf(survey: Survey, stop_mm: number, end_mm: number | null, settled: Settled): Crater | null {
  const to = end_mm === null ? stop_mm + ABOVE_MM : end_mm - settled.throat_mm;
  const from = Math.min(stop_mm, to) - BELOW_MM;
  const slices: Slice[] = [];
  for (let k = 0; to - k * STEP_MM >= from; k++) {
    const slice = survey.at(to - k * STEP_MM);
    if (slice !== null) slices.push(slice);
  }
  const first = slices[0];
  if (first === undefined) return null;
  let lowest = first;
  let small = first;
  let hollow = 0;
  for (const s of slices) {
    if (s.face_mm < lowest.face_mm) lowest = s;
    if (s.station.size_mm < small.station.size_mm) small = s;
    hollow = Math.max(hollow, s.station.concavity_mm);
  }
  return {
    depth_mm: Math.max(0, settled.face_mm - lowest.face_mm),
    at_mm: lowest.y_mm,
    hollow_mm: hollow,
    leastSize_mm: small.station.size_mm,
    leastSizeAt_mm: small.y_mm,
  };
}

/** How finely the upper end of the bead is looked for, mm. */
const FINE_MM = 0.05;

/** Upper end of the metal above a height where there is some: the last height that still shows a bead, mm. Halved down to 0.05 mm. */
export function upperEnd_mm(survey: Survey, welded_mm: number, bare_mm: number): number {
  let low = welded_mm;
  let high = bare_mm;
  while (high - low > FINE_MM) {
    const mid = (low + high) / 2;
    if (survey.at(mid) === null) high = mid;
    else low = mid;
  }
  return low;
}

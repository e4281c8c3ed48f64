import type { Section } from '../../../engine/index.ts';
import type { Station } from '../../schema/station.ts';
import { faceHeight_mm } from '../section/face.ts';
import { readSection } from '../section/station.ts';

/** Distance between slices, mm. */
export const SLICE_MM = 1;
/** Run-on and run-off tabs carry this much more joint at each end, mm. */
const TAB_MM = 12;

/** The bead at one height, with what comparing places along it needs. */
export interface Slice {
  y_mm: number;
  face_mm: number;
  station: Station;
}

export function sliceAt(sec: Section): Slice | null {
  const reading = readSection(sec);
  return reading === null ? null : { y_mm: sec.y_mm, face_mm: faceHeight_mm(sec), station: reading.station };
}

interface Length {
  length_mm: number;
  tabs: boolean;
}

/** Lowest and highest cut there can be: the joint and its tabs. */
export function heightsOf(joint: Length): { from_mm: number; to_mm: number } {
  const more = joint.tabs ? TAB_MM - SLICE_MM : 0;
  return { from_mm: -more, to_mm: joint.length_mm + more };
}

/** The bead over the whole joint, tabs too, a slice a millimetre; heights without a bead are left out. */
export function slicesAlong(section: (y_mm: number) => Section, joint: Length): Slice[] {
  const { from_mm, to_mm } = heightsOf(joint);
  const out: Slice[] = [];
  for (let k = 0; from_mm + k * SLICE_MM <= to_mm + 1e-9; k++) {
    const slice = sliceAt(section(from_mm + k * SLICE_MM));
    if (slice !== null) out.push(slice);
  }
  return out;
}

/** Both legs together: the width a welder sees the bead cover. mm */
export function bothLegs_mm(s: Slice): number {
  return s.station.legA_mm + s.station.legB_mm;
}

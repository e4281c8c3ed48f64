import type { Flaw } from '../../schema/ends.ts';
import { milli } from '../precision.ts';
import { OVERLAP_SEEN_MM } from '../section/toe.ts';
import type { Settled } from './settled.ts';
import { SLICE_MM, type Slice } from './survey.ts';

/** A restart shows within this distance of its stop, mm. */
const NEAR_MM = 10;
/** A face this far off the settled one is an uneven join, mm; common practice, no source. */
const FACE_OFF_MM = 1.5;

/**
 * **Restart flaw**: length within 10 mm of a stop, either way, over which the restart did not join: root short of the corner, overlap at a toe,
 * face 1.5 mm or more under or over the settled bead. A reading has to be past its limit by its own plus-minus to count, so that a root
 * only just short is no flaw here. mm, ±1.5: a slice a millimetre at each end and the plus-minus of what is read. Common
 * practice, no source: restarts are cut and looked at because that is where fusion is missed.
 */
export function restartFlaw(
  slices: readonly Slice[],
  stop_mm: number,
  settled: Settled,
  give: { root: number; overlap: number; face: number; length: number },
): Flaw | null {
  const near = slices.filter((s) => Math.abs(s.y_mm - stop_mm) <= NEAR_MM);
  const first = near[0];
  if (first === undefined) return null;
  let root = 0;
  let lap = 0;
  let low = 0;
  let high = 0;
  let any = 0;
  let coldest = first;
  for (const s of near) {
    const { rootFusion_mm, overlapA_mm, overlapB_mm } = s.station;
    const rootShort = rootFusion_mm < -give.root;
    const lapped = Math.max(overlapA_mm, overlapB_mm) > OVERLAP_SEEN_MM + give.overlap;
    const faceOff = s.face_mm - settled.face_mm;
    const isLow = faceOff < -(FACE_OFF_MM + give.face);
    const isHigh = faceOff > FACE_OFF_MM + give.face;
    root += rootShort ? SLICE_MM : 0;
    lap += lapped ? SLICE_MM : 0;
    low += isLow ? SLICE_MM : 0;
    high += isHigh ? SLICE_MM : 0;
    any += rootShort || lapped || isLow || isHigh ? SLICE_MM : 0;
    if (rootFusion_mm < coldest.station.rootFusion_mm) coldest = s;
  }
  return {
    rootShort_mm: milli(root),
    overlap_mm: milli(lap),
    faceLow_mm: milli(low),
    faceHigh_mm: milli(high),
    length_mm: milli(any),
    plusMinus_mm: give.length,
    rootFusion_mm: coldest.station.rootFusion_mm,
    rootFusionAt_mm: milli(coldest.y_mm),
  };
}

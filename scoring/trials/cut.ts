import type { Section } from '../../engine/index.ts';
import { milli } from '../measures/precision.ts';
import { readSection } from '../measures/section/station.ts';
import type { Cut } from '../schema/proved.ts';

/** The outline of a cut and its main readings, light enough for a file. */
export function cutOf(section: Section): Cut {
  const station = readSection(section)?.station ?? null;
  return {
    y_mm: milli(section.y_mm),
    u_mm: Array.from(section.u_mm, milli),
    w_mm: Array.from(section.w_mm, milli),
    plate_mm: Array.from(section.plate_mm, milli),
    rootFusion_mm: station?.rootFusion_mm ?? null,
    convexity_mm: station?.convexity_mm ?? null,
    legA_mm: station?.legA_mm ?? null,
    legB_mm: station?.legB_mm ?? null,
  };
}

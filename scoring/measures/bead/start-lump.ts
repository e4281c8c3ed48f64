import type { Settled } from './settled.ts';
import type { Slice } from './survey.ts';

/** The start: this much of the bead from its bottom up, mm. */
const START_MM = 10;

/**
 * **Start lump**: greatest height of the face over the settled bead's in the first 10 mm of metal, mm; negative: the start stays under it.
 * A cold start stands up before it wets (common practice, no source).
 */
export function startLump(slices: readonly Slice[], settled: Settled): { lump_mm: number; at_mm: number } | null {
  const first = slices[0];
  if (first === undefined) return null;
  let highest = first;
  for (const s of slices) if (s.y_mm <= first.y_mm + START_MM && s.face_mm > highest.face_mm) highest = s;
  return { lump_mm: highest.face_mm - settled.face_mm, at_mm: highest.y_mm };
}

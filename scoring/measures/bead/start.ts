import type { Settled } from './settled.ts';
import { bothLegs_mm, SLICE_MM, type Slice } from './survey.ts';

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

/** Full width: nine tenths of the settled bead's, both legs together; ripples take the rest. Kept over this much bead. mm */
const FULL_SHARE = 0.9;
const KEPT_MM = 3;

/**
 * **Full width from**: lowest height at which the bead has its settled width and keeps it over the next 3 mm, mm up the joint: how much of the
 * start is no full weld. Common practice, no source. ±1 mm: a slice a millimetre, toes ±0.3.
 */
export function fullWidthFrom_mm(slices: readonly Slice[], settled: Settled): number | null {
  const full = (s: Slice): boolean => bothLegs_mm(s) >= FULL_SHARE * settled.legs_mm;
  const need = KEPT_MM / SLICE_MM;
  for (let i = 0; i + need < slices.length; i++) {
    const row = slices.slice(i, i + need + 1);
    if (row.every(full) && row[need]!.y_mm - row[0]!.y_mm <= KEPT_MM + 1e-9) return row[0]!.y_mm;
  }
  return null;
}

import type { Settled } from './settled.ts';
import { bothLegs_mm, SLICE_MM, type Slice } from './survey.ts';

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

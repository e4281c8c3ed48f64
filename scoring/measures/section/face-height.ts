import type { Section } from '../../../engine/index.ts';

/**
 * **Face height**: from the root to the metal's surface, along the line that halves the corner; the throat of a symmetric bead with its
 * crown on. mm. Used to compare one place of a bead with another (start, crater), never against a limit by itself. Straight between the
 * two columns next to that line; mesh error as the throat's.
 */
export function faceHeight_mm(sec: Section): number {
  const n = sec.u_mm.length;
  const du = (sec.u_mm[n - 1]! - sec.u_mm[0]!) / (n - 1);
  const x = -sec.u_mm[0]! / du;
  const i = Math.max(0, Math.min(n - 2, Math.floor(x + 1e-9)));
  const f = x - i;
  return sec.w_mm[i]! + f * (sec.w_mm[i + 1]! - sec.w_mm[i]!);
}

import type { Section } from '../../../engine/index.ts';
import type { Outline } from './outline.ts';

export interface FaceShape {
  faceWidth_mm: number;
  convexity_mm: number;
  concavity_mm: number;
}

/**
 * **Convexity**: greatest distance of the face outside the line joining the toes, square to that line (AWS A3.0:2010 as
 * quoted by Holdren, Inspection Trends 2010). **Concavity**: greatest distance inside it. **Face width**: length of the toe line. mm. The
 * summit between columns is found by the parabola through the highest column and its neighbours; a circular segment on 0.53 mm columns is read within 0.02 mm.
 */
export function faceShape(o: Outline): FaceShape {
  const { toeA, toeB, face } = o;
  const du = toeA.u - toeB.u;
  const dw = toeA.w - toeB.w;
  const width = Math.sqrt(du * du + dw * dw);
  // Out of the root is to the left when walking from B (u < 0) to A.
  const off = face.map((p) => (du * (p.w - toeB.w) - dw * (p.u - toeB.u)) / width);
  return { faceWidth_mm: width, convexity_mm: summit(off), concavity_mm: summit(off.map((x) => -x)) };
}

function summit(values: readonly number[]): number {
  let at = 0;
  for (let i = 1; i < values.length; i++) if (values[i]! > values[at]!) at = i;
  const top = values[at]!;
  // Ends are the toes and their neighbours stand at uneven distance: no parabola there.
  if (at < 2 || at > values.length - 3) return Math.max(0, top);
  const left = values[at - 1]!;
  const right = values[at + 1]!;
  const bend = left - 2 * top + right;
  return Math.max(0, bend < 0 ? top - ((right - left) * (right - left)) / (8 * bend) : top);
}

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

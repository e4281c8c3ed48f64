import type { JointOptions } from '../../../engine/index.ts';
import { alongA, alongB, type Outline, SQRT2 } from './outline.ts';

/**
 * **Leg**: from the joint root to the toe, along each plate (AWS A3.0, ISO 17659; from memory). The root is where
 * the plates' faces meet as cut, also when an edge has melted off. mm. A toe on top of a lap's edge has a leg of the plate's
 * thickness. Error on manufactured sections at 0.75 mm cells below 0.1 mm; mesh error in `precision.ts`.
 */
export function legs(o: Outline): { legA_mm: number; legB_mm: number } {
  return { legA_mm: alongA(o.toeA), legB_mm: alongB(o.toeB) };
}

/**
 * **Size**: leg of the largest right-angled isosceles triangle the weld holds, root at its corner; a gap is taken off, because the
 * triangle starts at the plate it has to reach (AWS D1.1 5.22.1, from memory: the leg grows by the gap). mm.
 * @param actualThroat_mm least distance from root to face
 */
export function size_mm(o: Outline, joint: JointOptions, actualThroat_mm: number): number {
  const { legA_mm, legB_mm } = legs(o);
  return Math.min(legA_mm, legB_mm, Math.SQRT2 * actualThroat_mm) - joint.gap_mm;
}

export interface Throats {
  /** Height of the triangle the legs make, from the root: z₁z₂/√(z₁²+z₂²). mm */
  theoreticalThroat_mm: number;
  /** Shortest distance from root to face. mm */
  actualThroat_mm: number;
  /** Effective throat: actual throat less convexity (AWS A3.0:2010). mm */
  throat_mm: number;
}

/**
 * **Throat**: theoretical, actual and effective. Taking the convexity off a convex face brings it back to the toe line, so the effective
 * throat is the smaller of the actual throat and the height of the legs' triangle; said that way it also holds for a face that bulges
 * past its own legs, where the shortest distance runs to a toe. A gap g is taken off both legs, hence g/√2 off every throat. Depth of
 * fusion past the root is not counted in.
 */
export function throats(o: Outline, joint: JointOptions): Throats {
  const { legA_mm, legB_mm } = legs(o);
  const a = Math.max(0, legA_mm - joint.gap_mm);
  const b = Math.max(0, legB_mm - joint.gap_mm);
  const hypotenuse = Math.sqrt(a * a + b * b);
  const theoretical = hypotenuse > 0 ? (a * b) / hypotenuse : 0;
  const actual = nearestToRoot(o) - joint.gap_mm / SQRT2;
  return { theoreticalThroat_mm: theoretical, actualThroat_mm: actual, throat_mm: Math.min(actual, theoretical) };
}

/** Least distance from the root (u = w = 0) to the face. mm */
export function nearestToRoot(o: Outline): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < o.face.length; i++) {
    const p = o.face[i - 1]!;
    const q = o.face[i]!;
    const du = q.u - p.u;
    const dw = q.w - p.w;
    const length2 = du * du + dw * dw;
    const t = length2 > 0 ? Math.min(1, Math.max(0, -(p.u * du + p.w * dw) / length2)) : 0;
    const u = p.u + t * du;
    const w = p.w + t * dw;
    least = Math.min(least, Math.sqrt(u * u + w * w));
  }
  return least;
}

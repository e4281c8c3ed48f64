/** Made-up fields for the section finders. */
import { segmentFace } from '../../scoring/measures/sections.ts';
import { KOU_STEEL, rosenthalThick } from '../formulas/heat.ts';
import { bisect } from '../formulas/special.ts';

/** Peak temperature at distance r from the path of a point of heat on thick steel (Rosenthal), and the radius that melts. */
export function peakRoundMovingPoint(
  power_W: number,
  speed_mmps: number,
  solidus_C: number,
  start_C: number,
): { peak: (r: number) => number; melted: number } {
  const peak = (r: number): number => {
    // The rise along the path has one top, behind the source.
    let low = -60;
    let high = 0;
    const rise = (x: number): number => rosenthalThick(KOU_STEEL, power_W, speed_mmps, x, Math.max(0.2, r), 0);
    for (let i = 0; i < 80; i++) {
      const a = low + (high - low) / 3;
      const b = high - (high - low) / 3;
      if (rise(a) < rise(b)) low = a;
      else high = b;
    }
    return start_C + rise((low + high) / 2);
  };
  return { peak, melted: bisect((r) => peak(r) - solidus_C, 0.3, 20) };
}

/** A 6 mm leg with a parabolic groove beside plate A's toe, as mean heights over columns carry it. */
export function grooved(depth: number, width: number, shift: number): (u: number, plate: number) => number {
  const face = segmentFace(6, 0.5);
  const half = width / 2 / Math.SQRT2;
  const middle = 6 / Math.SQRT2 + half + shift;
  const du = 0.75 / Math.SQRT2;
  return (u, plate) => {
    const metal = face(u);
    if (metal > plate) return metal;
    let sum = 0;
    for (let k = 0; k < 40; k++) {
      const x = (u + ((k + 0.5) / 40 - 0.5) * du - middle) / half;
      if (Math.abs(x) < 1) sum += depth * Math.SQRT2 * (1 - x * x);
    }
    return plate - sum / 40;
  };
}

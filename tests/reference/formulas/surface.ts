/** Closed forms and quadratures of capillary surfaces. Lengths mm, tension N/m, density kg/m³, pressure Pa. */
import { bisect, simpson } from './special.ts';

const GRAVITY = 9.81;

/** Capillary length √(γ/ρg), mm. */
export const capillaryLength = (tension: number, density: number): number =>
  1000 * Math.sqrt(tension / (density * GRAVITY));

export interface Segment {
  radius: number;
  area: number;
  /** Angle of the face at the toe against the chord, radians. */
  toe: number;
}

/** Circular segment on a chord of width w with convexity c. */
export function segment(w: number, c: number): Segment {
  const radius = (w * w) / (8 * c) + c / 2;
  const toe = 2 * Math.atan((2 * c) / w);
  return { radius, area: radius * radius * (toe - Math.sin(toe) * Math.cos(toe)), toe };
}

/** Height of the segment's face over the chord at x from its middle. */
export const segmentHeight = (w: number, c: number, x: number): number => {
  const { radius } = segment(w, c);
  return Math.sqrt(radius * radius - x * x) - (radius - c);
};

/** Segment whose face leaves the chord at this angle (negative: hollow). */
export const convexityOf = (w: number, toe: number): number => (w / 2) * Math.tan(toe / 2);

/**
 * Meniscus against an upright wall it wets to a height h0: distance from the wall at which it stands at height h.
 * x/l = acosh(2l/h) - acosh(2l/h0) + √(4 - h0²/l²) - √(4 - h²/l²).
 */
export function meniscusDistance(l: number, h0: number, h: number): number {
  return (
    l *
    (Math.acosh((2 * l) / h) -
      Math.acosh((2 * l) / h0) +
      Math.sqrt(4 - (h0 * h0) / (l * l)) -
      Math.sqrt(4 - (h * h) / (l * l)))
  );
}

/** Slope angle at the wall, h0² = 2l²(1 - cos ψ), and the area drawn up, l² sin ψ (its weight hangs on the tension). */
export function meniscus(l: number, h0: number): { slope: number; area: number } {
  const slope = Math.acos(1 - (h0 * h0) / (2 * l * l));
  return { slope, area: l * l * Math.sin(slope) };
}

export interface Drop {
  height: number;
  area: number;
  /** Pressure at the foot, Pa. */
  pressure: number;
  /** Half the face, from the crown out: distance from the middle and height. */
  face: { x: number; h: number }[];
}

/**
 * Long drop of width `width` on level ground, met at angle `angle`: dx/dψ = cos ψ/κ, dz/dψ = sin ψ/κ with κ = κ0 + z/l² at depth z below the
 * crown, integrated from the crown; κ0 is found so that the width comes out (Bashforth & Adams' equation in two dimensions).
 */
export function levelDrop(tension: number, density: number, angle: number, width: number): Drop {
  const l = capillaryLength(tension, density);
  const n = 4000;
  const run = (k0: number, keep?: { x: number; z: number }[]): { x: number; z: number; area: number } => {
    let x = 0;
    let z = 0;
    let area = 0;
    const d = angle / n;
    for (let i = 0; i < n; i++) {
      const psi = (i + 0.5) * d;
      // Midpoint rule.
      const half = z + ((Math.sin(i * d) / (k0 + z / (l * l))) * d) / 2;
      const k = k0 + half / (l * l);
      const dx = (Math.cos(psi) / k) * d;
      x += dx;
      z += (Math.sin(psi) / k) * d;
      area += half * dx;
      if (i % 50 === 49) keep?.push({ x, z });
    }
    return { x, z, area };
  };
  const k0 = Math.exp(bisect((log) => run(Math.exp(log)).x - width / 2, Math.log(1e-9), Math.log(10)));
  const deep: { x: number; z: number }[] = [{ x: 0, z: 0 }];
  const { z, area } = run(k0, deep);
  return {
    height: z,
    area: 2 * (z * (width / 2) - area),
    pressure: tension * 1000 * (k0 + z / (l * l)),
    face: deep.map((p) => ({ x: p.x, h: z - p.z })),
  };
}

/**
 * Strip of liquid on an upright wall, pinned along its lower (y = 0) and upper edge (y = length), with this area of section. The face's
 * angle ψ obeys γ d(sin ψ)/dy = -(p - ρ g y), so sin ψ is a parabola in y and the face its quadrature.
 */
export function hangingStrip(
  tension: number,
  density: number,
  length: number,
  area: number,
): { pressure: number; height(y: number): number } {
  const head = density * GRAVITY * 1e-3;
  const gamma = tension * 1000;
  const sine = (p: number, s0: number, y: number): number => s0 - (p * y - (head * y * y) / 2) / gamma;
  const slope =
    (p: number, s0: number) =>
    (y: number): number => {
      const s = sine(p, s0, y);
      return s / Math.sqrt(1 - s * s);
    };
  // sin ψ falls up to y = p / ρg and must stay inside (-1, 1); s0 is set so that the face comes back to the wall at the upper edge.
  const start = (p: number): number => {
    const lowest = Math.min(length, p / head);
    const drop = (p * lowest - (head * lowest * lowest) / 2) / gamma;
    const low = Math.max(-0.9999, drop - 0.9999);
    return bisect((s0) => simpson(slope(p, s0), 0, length, 400), low, 0.9999);
  };
  const areaOf = (p: number): number => {
    const s0 = start(p);
    // ∫ w dy = -∫ y w' dy when w is 0 at both ends.
    return -simpson((y) => y * slope(p, s0)(y), 0, length, 400);
  };
  const middle = (head * length) / 2;
  const pressure = bisect((p) => areaOf(p) - area, middle, middle + 1.9 * (gamma / length));
  const s0 = start(pressure);
  return { pressure, height: (y) => simpson(slope(pressure, s0), 0, y, 400) };
}

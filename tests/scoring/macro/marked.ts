import { type Coupon, freeExercise, type PictureMarks, type PictureSpot } from '../../../scoring/index.ts';

/** A made-up photograph of a fillet with known legs, crown and fusion, turned and scaled as wanted. */
export interface MadeCoupon {
  legA_mm: number;
  legB_mm: number;
  /** Height of a circular face over the toe line, negative: hollow. */
  crown_mm: number;
  /** Fusion line: radius of a circle round (2, 2) mm; both plates. */
  fused_mm: number;
  pxPerMm: number;
  /** Turn of the picture, degrees. */
  turn_deg: number;
  kind?: 'tee' | 'lap';
  gap_mm?: number;
}

export const plain: MadeCoupon = {
  legA_mm: 6.2,
  legB_mm: 5.4,
  crown_mm: 0.8,
  fused_mm: 3.1,
  pxPerMm: 63,
  turn_deg: 0,
};

const ROOT = { x: 900, y: 1100 };

/** Pixel of a place of the joint's frame: a to the right, b up, turned. */
function pixel(c: MadeCoupon, a: number, b: number): PictureSpot {
  const t = (c.turn_deg * Math.PI) / 180;
  const x = a * Math.cos(t) - b * Math.sin(t);
  const y = a * Math.sin(t) + b * Math.cos(t);
  return { x: ROOT.x + c.pxPerMm * x, y: ROOT.y - c.pxPerMm * y };
}

/** A point of the circular face at a share of the toe line from toe B to toe A. */
export function facePlace(c: MadeCoupon, share: number): { a: number; b: number } {
  const width = Math.hypot(c.legA_mm, c.legB_mm);
  const half = width / 2;
  const bend = Math.abs(c.crown_mm);
  const radius = (half * half + bend * bend) / (2 * bend);
  const x = share * width;
  const rise = Math.sign(c.crown_mm) * (Math.sqrt(radius * radius - (x - half) ** 2) - (radius - bend));
  const out = { a: c.legB_mm / width, b: c.legA_mm / width };
  return { a: share * c.legA_mm + rise * out.a, b: (1 - share) * c.legB_mm + rise * out.b };
}

/** Depth of the fusion circle below a face at a distance along it. */
export function fusedAt(c: MadeCoupon, along: number): number {
  return Math.sqrt(c.fused_mm ** 2 - (along - 2) ** 2) - 2;
}

export function marksOf(c: MadeCoupon): PictureMarks {
  const faces = [0.15, 0.32, 0.5, 0.7, 0.86].map((s) => facePlace(c, s));
  const along = [0.2, 1, 2, 3, 4];
  return {
    root: pixel(c, 0, 0),
    plateA: pixel(c, 11, 0),
    plateB: pixel(c, 0, 11),
    toeA: pixel(c, c.legA_mm, 0),
    toeB: pixel(c, 0, c.legB_mm),
    // Order is the marker's own affair.
    face: faces.reverse().map((p) => pixel(c, p.a, p.b)),
    fusionA: along.map((x) => pixel(c, x, -fusedAt(c, x))),
    fusionB: along.map((x) => pixel(c, -fusedAt(c, x), x + (c.gap_mm ?? 0))),
    undercutA: null,
    undercutB: null,
  };
}

export function couponOf(c: MadeCoupon, change: Partial<Coupon> = {}): Coupon {
  const exercise = freeExercise({
    joint: { kind: c.kind ?? 'tee', gap_mm: c.gap_mm ?? 0 },
    process: {},
    weave: {},
    leg_mm: 5,
    profile: 'aws-d11-static-si',
  });
  return {
    format: 'toehold-coupon',
    version: 1,
    picture: { name: 'bracket.png', width_px: 1800, height_px: 1600 },
    attempt: null,
    y_mm: 30,
    joint: exercise.joint,
    asked: exercise.asked,
    profile: exercise.profile,
    scale: { from: { x: 100, y: 1500 }, to: { x: 100 + 20 * c.pxPerMm, y: 1500 }, length_mm: 20 },
    marks: marksOf(c),
    ...change,
  };
}

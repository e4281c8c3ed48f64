import type { Place } from '../draw/zones.ts';
import { describeFound, InputError } from '../schema/problem.ts';
import type { PictureScale } from './by-hand.ts';
import type { PictureMarks, PictureSpot, PlacedMarks } from './marks.ts';

/** Two points closer than this set neither a scale nor a direction, px. */
const LEAST_APART_PX = 40;
/** Plates of a fillet stand at 90°; a picture taken askew shows another angle. Farther off than this it is not measured. */
const MOST_ASKEW_DEG = 8;

/** The scale two points and the length between them make. @throws InputError when they lie too close or the length is not one */
export function scaleOf(from: PictureSpot, to: PictureSpot, length_mm: number): PictureScale {
  const length_px = apart(from, to);
  if (!(length_px >= LEAST_APART_PX))
    throw refused(
      'scale',
      `two points ${length_px.toFixed(0)} pixels apart`,
      `at least ${LEAST_APART_PX} pixels apart`,
    );
  if (!(length_mm > 0 && length_mm <= 1000))
    throw refused('scale.length_mm', describeFound(length_mm), 'a length above 0 and up to 1000 mm');
  return { mmPerPx: length_mm / length_px, length_px };
}

/** A scale for each plate's way: the same one twice where only one was set. */
export interface TwoScales {
  alongA: PictureScale;
  alongB: PictureScale;
  /** By how much the saw was off square, as far as two scales tell; null with one. degrees */
  offSquare_deg: number | null;
}

interface Length {
  from: PictureSpot;
  to: PictureSpot;
  length_mm: number;
}

/** A cut farther off square than this is sawn again, degrees: lengths in it are long by a tenth. */
const MOST_OFF_SQUARE_DEG = 25;
/** The two lengths lie along different plates when the ways they run differ by more than this share of a right angle. */
const LEAST_CROSSING = 0.5;

/**
 * The scales of a coupon: one for both ways, or each way by its own. Of a cut off square one way comes out long by 1/cos of the angle.
 * @throws InputError when a length is too short, both run the same way, or the cut is too far off square
 */
export function scalesOf({
  scale,
  across,
  marks,
}: {
  scale: Length;
  across?: Length;
  marks: Pick<PictureMarks, 'root' | 'plateA' | 'plateB'>;
}): TwoScales {
  const first = scaleOf(scale.from, scale.to, scale.length_mm);
  if (across === undefined) return { alongA: first, alongB: first, offSquare_deg: null };
  const second = scaleOf(across.from, across.to, across.length_mm);
  const [a, b] = [along(scale, marks), along(across, marks)];
  if (Math.abs(a - b) < LEAST_CROSSING)
    throw refused('across', 'two lengths that run the same way', 'one length along each plate’s way');
  const [alongA, alongB] = a > b ? [first, second] : [second, first];
  const ratio = Math.min(alongA.mmPerPx, alongB.mmPerPx) / Math.max(alongA.mmPerPx, alongB.mmPerPx);
  const offSquare_deg = Math.round((10 * Math.acos(Math.min(1, ratio)) * 180) / Math.PI) / 10;
  if (offSquare_deg > MOST_OFF_SQUARE_DEG)
    throw refused(
      'across',
      `a cut ${offSquare_deg.toFixed(0)}° off square, by the two scales`,
      `at most ${MOST_OFF_SQUARE_DEG}°; check both lengths, or saw again`,
    );
  return { alongA, alongB, offSquare_deg };
}

/** How far a length runs along plate A's way rather than plate B's: 1 along A's, -1 along B's. */
function along(
  { from, to }: Length,
  { root, plateA, plateB }: Pick<PictureMarks, 'root' | 'plateA' | 'plateB'>,
): number {
  const cos = (p: PictureSpot): number => {
    const dot = (to.x - from.x) * (p.x - root.x) + (to.y - from.y) * (p.y - root.y);
    return Math.abs(dot) / Math.max(1e-9, apart(from, to) * apart(root, p));
  };
  return cos(plateA) - cos(plateB);
}

/** How a picture lies in the joint's frame: pixels of one millimetre along each plate's face, and where the root is. */
export interface JointFrame {
  root: PictureSpot;
  /** Pixels per mm out along plate A's and plate B's face. */
  alongA: PictureSpot;
  alongB: PictureSpot;
  /** Angle the plates stand at in the picture, degrees. */
  angle_deg: number;
}

/**
 * The joint's own frame in a picture, from the root and a point along each plate's face.
 * @throws InputError when a direction is too short, or the picture was taken so far askew that the plates do not stand at a right angle
 */
export function jointFrame(
  marks: Pick<PictureMarks, 'root' | 'plateA' | 'plateB'>,
  scales: Pick<TwoScales, 'alongA' | 'alongB'>,
): JointFrame {
  const alongA = direction(marks.root, marks.plateA, 'marks.plateA', scales.alongA);
  const alongB = direction(marks.root, marks.plateB, 'marks.plateB', scales.alongB);
  const dot = (alongA.x * alongB.x + alongA.y * alongB.y) * scales.alongA.mmPerPx * scales.alongB.mmPerPx;
  const angle_deg = (Math.acos(Math.min(1, Math.max(-1, dot))) * 180) / Math.PI;
  if (Math.abs(angle_deg - 90) > MOST_ASKEW_DEG)
    throw refused(
      'marks',
      `plates at ${angle_deg.toFixed(0)}° to each other`,
      `90° give or take ${MOST_ASKEW_DEG}°; take the picture square on, or mark the plates' faces again`,
    );
  return { root: marks.root, alongA, alongB, angle_deg };
}

/** A point of the picture in the joint's frame, mm. A slight slant of the picture is taken out with it. */
function placeOf(frame: JointFrame, spot: PictureSpot): Place {
  const { alongA: p, alongB: q, root } = frame;
  const det = p.x * q.y - p.y * q.x;
  const x = spot.x - root.x;
  const y = spot.y - root.y;
  return { a: (x * q.y - y * q.x) / det, b: (p.x * y - p.y * x) / det };
}

/** Every mark in the joint's frame. @throws InputError as jointFrame does */
export function placeMarks(marks: PictureMarks, scales: Pick<TwoScales, 'alongA' | 'alongB'>): PlacedMarks {
  const frame = jointFrame(marks, scales);
  const at = (spot: PictureSpot): Place => placeOf(frame, spot);
  const maybe = (spot: PictureSpot | null): Place | null => (spot === null ? null : at(spot));
  return {
    toeA: at(marks.toeA),
    toeB: at(marks.toeB),
    face: marks.face.map(at),
    fusionA: marks.fusionA.map(at),
    fusionB: marks.fusionB.map(at),
    undercutA: maybe(marks.undercutA),
    undercutB: maybe(marks.undercutB),
  };
}

function direction(root: PictureSpot, to: PictureSpot, path: string, scale: PictureScale): PictureSpot {
  const length = apart(root, to);
  if (!(length >= LEAST_APART_PX))
    throw refused(
      path,
      `a point ${length.toFixed(0)} pixels from the root`,
      `a point on the plate's face at least ${LEAST_APART_PX} pixels from the root`,
    );
  const perMm = 1 / scale.mmPerPx / length;
  return { x: (to.x - root.x) * perMm, y: (to.y - root.y) * perMm };
}

function apart(p: PictureSpot, q: PictureSpot): number {
  return Math.sqrt((q.x - p.x) ** 2 + (q.y - p.y) ** 2);
}

export function refused(path: string, found: string, allowed: string): InputError {
  return new InputError('coupon', [{ path, found, allowed }]);
}

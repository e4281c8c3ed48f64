/** A place in the joint: u across, y up the joint, w out towards the welder, mm. */
export interface Place {
  u_mm: number;
  y_mm: number;
  w_mm: number;
}

/** How the joint is looked at. The camera stands below its normal and looks up it, as a welder on a vertical joint does. */
export interface Look {
  width_px: number;
  height_px: number;
  /** CSS pixels per millimetre at the place looked at. */
  scale: number;
  /** Below the joint's normal, degrees. */
  below_deg: number;
  target: Place;
  /** Eye to the place looked at, mm; EYE_MM where left out. */
  eye_mm?: number;
}

/** A place in the picture, CSS pixels from its top left, and the scale there. */
export interface Seen {
  x_px: number;
  y_px: number;
  scale: number;
}

/** Eye to the place looked at, mm. */
export const EYE_MM = 220;
/** Height of the place looked at above the root: the middle of a fillet's depth. */
const TARGET_W_MM = 5;
const LENS_BELOW_DEG = 30;
/** The arc stands at this share of the picture's height, counted from the top. */
const ARC_DOWN = 0.45;
const FOOT_W_MM = 2;

export function rise(look: Look): { sin: number; cos: number } {
  const angle = (look.below_deg * Math.PI) / 180;
  return { sin: Math.sin(angle), cos: Math.cos(angle) };
}

export function see(look: Look, place: Place): Seen {
  const { sin, cos } = rise(look);
  const u = place.u_mm - look.target.u_mm;
  const y = place.y_mm - look.target.y_mm;
  const w = place.w_mm - look.target.w_mm;
  const up = y * cos + w * sin;
  const near = -y * sin + w * cos;
  const eye = look.eye_mm ?? EYE_MM;
  const grown = eye / (eye - near);
  return {
    x_px: look.width_px / 2 + u * grown * look.scale,
    y_px: look.height_px / 2 - up * grown * look.scale,
    scale: grown * look.scale,
  };
}

/** The look that has the root in the middle and a height up the joint where the arc belongs. */
export function lookAt(
  y_mm: number,
  width_px: number,
  height_px: number,
  scale: number,
  below_deg = LENS_BELOW_DEG,
): Look {
  const angle = (below_deg * Math.PI) / 180;
  const above_mm = ((0.5 - ARC_DOWN) * height_px) / scale;
  const target_y = y_mm + (FOOT_W_MM - TARGET_W_MM) * Math.tan(angle) - above_mm / Math.cos(angle);
  return { width_px, height_px, scale, below_deg, target: { u_mm: 0, y_mm: target_y, w_mm: TARGET_W_MM } };
}

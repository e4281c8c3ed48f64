/**
 * Millimetres of joint to CSS pixels of the joint's pane and back. Everything the pointer does goes through here in CSS pixels, so
 * browser zoom and device pixel ratio cancel out: both the pane's rectangle and the event are given in the same pixels.
 */
export interface Camera {
  width_px: number;
  height_px: number;
  /** CSS pixels per millimetre of joint. */
  scale: number;
  /** Where u = 0, y = 0 lies in the pane, in CSS pixels from its top left. */
  originX_px: number;
  originY_px: number;
}

export interface JointPoint {
  u_mm: number;
  y_mm: number;
}

export interface PanePoint {
  x_px: number;
  y_px: number;
}

export interface FitOptions {
  width_px: number;
  height_px: number;
  /** Ends of the metal, tabs counted. */
  low_mm: number;
  high_mm: number;
  /** Fixed scale in CSS pixels per millimetre (1:1 after calibration); null fits the whole joint into the pane. */
  fixedScale: number | null;
}

/** Room kept free above and below the metal: the hand needs a place to start and to run off. */
const MARGIN_TOP_PX = 30;
const MARGIN_BOTTOM_PX = 58;
/** A short joint is not blown up past this, nor a long one squeezed until fewer millimetres than this show either side. */
const MOST_PX_PER_MM = 13;
const LEAST_HALF_WIDTH_MM = 13;

export function fitCamera(fit: FitOptions): Camera {
  const length = Math.max(1, fit.high_mm - fit.low_mm);
  const room = Math.max(1, fit.height_px - MARGIN_TOP_PX - MARGIN_BOTTOM_PX);
  const fitted = Math.min(room / length, fit.width_px / (2 * LEAST_HALF_WIDTH_MM), MOST_PX_PER_MM);
  const scale = fit.fixedScale ?? fitted;
  const spare = Math.max(0, room - length * scale);
  return {
    width_px: fit.width_px,
    height_px: fit.height_px,
    scale,
    originX_px: fit.width_px / 2,
    originY_px: fit.height_px - MARGIN_BOTTOM_PX - spare / 2 + fit.low_mm * scale,
  };
}

export function toJoint(camera: Camera, x_px: number, y_px: number): JointPoint {
  return { u_mm: (x_px - camera.originX_px) / camera.scale, y_mm: (camera.originY_px - y_px) / camera.scale };
}

export function toPane(camera: Camera, u_mm: number, y_mm: number): PanePoint {
  return { x_px: camera.originX_px + u_mm * camera.scale, y_px: camera.originY_px - y_mm * camera.scale };
}

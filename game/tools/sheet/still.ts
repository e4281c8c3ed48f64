import type { FilletOptions } from '../../../engine/index.ts';

/** A moment of a weld, with all the close view needs to draw it. */
export interface Still {
  joint: FilletOptions;
  wire_mm: number;
  nu: number;
  ny: number;
  u0_mm: number;
  du_mm: number;
  y0_mm: number;
  dy_mm: number;
  t_s: number;
  torch: {
    tipToWork_mm: number;
    workAngle_deg: number;
    travelAngle_deg: number;
    footU_mm: number;
    footY_mm: number;
  } | null;
  /** Skin.texels, base64. */
  skin: string;
}

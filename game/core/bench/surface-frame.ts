/** One picture of the surface, as the Worker posts it: what the shader needs and nothing else. */
export interface SurfaceFrame {
  /** Time in the attempt it shows, s. */
  t_s: number;
  nu: number;
  ny: number;
  u0_mm: number;
  du_mm: number;
  y0_mm: number;
  dy_mm: number;
  /** Two texels a column, all first ones before all second ones (skin.ts); column `k * ny + j`, k from -u to +u, j up the joint. */
  skin: Float32Array;
}

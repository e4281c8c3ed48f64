/** One picture of the surface, as the Worker posts it: what the shader needs and nothing else. */
export interface SurfaceFrame {
  nu: number;
  ny: number;
  u0_mm: number;
  du_mm: number;
  y0_mm: number;
  dy_mm: number;
  /**
   * Per column, index `(k * ny + j) * 4`: height mm, temperature °C, liquid share 0 to 1, highest temperature °C.
   * k runs across from -u to +u, j up the joint.
   */
  texels: Float32Array;
}

export const TEXEL = 4;

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
  /**
   * Per column, index `(k * ny + j) * 4`: height mm, temperature °C, liquid share 0 to 1, highest temperature °C.
   * k runs across from -u to +u, j up the joint.
   */
  texels: Float32Array;
  /** What the close view reads of each column, two texels a column (lens/skin.ts). */
  skin: Float32Array;
}

export const TEXEL = 4;

/** The two parts of a posted buffer, without copying. */
export function unpacked(buffer: ArrayBuffer, columns: number): { texels: Float32Array; skin: Float32Array } {
  const texels = new Float32Array(buffer, 0, columns * TEXEL);
  return { texels, skin: new Float32Array(buffer, texels.byteLength) };
}

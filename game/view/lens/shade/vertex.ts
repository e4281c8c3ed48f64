import { HEAD, PINHOLE } from './common.ts';

/**
 * Hangs the net on the skin. Values between the columns come from cubic B-splines, 32 texel reads of two float textures: linear
 * filtering of float textures is missing on many tablets. Bare plate keeps its exact planes; the spline takes over where metal stands.
 */
export const SKIN_VERTEX = `${HEAD}${PINHOLE}
in vec2 aPosition;
out vec3 vPlace;
out vec4 vShape;    // slopes of the height across and up; temperature; peak
out vec4 vRipple;   // phase, its slopes across and up; level of melting
out vec4 vMetal;    // weld share, metal standing inside the toe, metal standing here, time frozen

vec2 bare(float u) {
  float gap = uPlates.z * HALF_ROOT_2;
  if (u >= 0.0 || u > -gap) return vec2(u, 1.0);
  if (uMetal.x > 0.5 && uMetal.x < 1.5 && u < -uMetal.y * HALF_ROOT_2) return vec2(u + uMetal.y / HALF_ROOT_2, 1.0);
  return vec2(-u, -1.0);
}

ivec2 kept(ivec2 p) {
  return clamp(p, ivec2(0), ivec2(int(uCount.y) - 1, int(uCount.x) - 1));
}

void bells(float f, out vec4 value, out vec4 slope) {
  float g = 1.0 - f;
  float f2 = f * f;
  float f3 = f2 * f;
  float b0 = g * g * g / 6.0;
  float b1 = (3.0 * f3 - 6.0 * f2 + 4.0) / 6.0;
  float b3 = f3 / 6.0;
  value = vec4(b0, b1, 1.0 - b0 - b1 - b3, b3);
  float s0 = -0.5 * g * g;
  float s1 = 1.5 * f2 - 2.0 * f;
  float s3 = 0.5 * f2;
  slope = vec4(s0, s1, -s0 - s1 - s3, s3);
}

void main() {
  float u = aPosition.x;
  float row = uNet.x - aPosition.y * uNet.y;
  float y = clamp(row, uMetal.z, uMetal.w);
  float inside = clamp(u, uGrid.x, uGrid.x + (uCount.x - 1.0) * uGrid.y);
  float past = abs(u - inside);
  vec2 g = vec2((y - uGrid.z) / uGrid.w, (inside - uGrid.x) / uGrid.y);
  vec2 base = floor(g);
  ivec2 b = ivec2(base);
  vec4 wy, sy, wu, su;
  bells(g.x - base.x, wy, sy);
  bells(g.y - base.y, wu, su);
  vec4 a = vec4(0.0), across = vec4(0.0), up = vec4(0.0), second = vec4(0.0);
  for (int k = 0; k < 4; k++) {
    vec4 line = vec4(0.0), rise = vec4(0.0), other = vec4(0.0);
    for (int j = 0; j < 4; j++) {
      ivec2 p = kept(b + ivec2(j - 1, k - 1));
      vec4 texel = texelFetch(uSkinA, p, 0);
      line += texel * wy[j];
      rise += texel * sy[j];
      other += texelFetch(uSkinB, p, 0) * wy[j];
    }
    a += line * wu[k];
    across += line * su[k];
    up += rise * wu[k];
    second += other * wu[k];
  }
  across /= uGrid.y;
  up /= uGrid.w;

  // How full the toe is: metal standing square to the plate, 1.1 mm along it towards the root.
  float column = (inside - sign(inside) * 0.8 - uGrid.x) / uGrid.y;
  int k = int(floor(column));
  int j = int(round(g.x));
  float stands = HALF_ROOT_2 * mix(texelFetch(uSkinA, kept(ivec2(j, k)), 0).y, texelFetch(uSkinA, kept(ivec2(j, k + 1)), 0).y, column - float(k));

  vec2 plate = bare(u);
  float laid = smoothstep(0.03, 0.22, a.y) * step(past, 0.001);
  float w = mix(plate.x, a.x, laid);
  vec2 slope = mix(vec2(plate.y, 0.0), vec2(across.x, up.x), laid);
  if (row < uMetal.z - 0.5 * uNet.y) {
    // Past the near end the net falls straight to the plates: the bead's own end, as sawn.
    w = plate.x;
    slope = vec2(0.0, 6.0);
  }
  if (past > 0.0) {
    // Beyond the engine's fine cells the plate cools away smoothly and is never molten.
    float fall = exp(-past / 9.0);
    a.z = 20.0 + (a.z - 20.0) * fall;
    second = vec4(-1.0, 20.0 + (second.y - 20.0) * fall, 0.0, second.w);
    a.y = 0.0;
    stands = 0.0;
  }
  vPlace = vec3(u, y, w);
  vShape = vec4(slope, a.z, second.y);
  vRipple = vec4(a.w, across.w, up.w, second.x);
  vMetal = vec4(second.z, stands, a.y, second.w);
  gl_Position = pinhole(vPlace);
}
`.replaceAll('HALF_ROOT_2', '0.70710678');

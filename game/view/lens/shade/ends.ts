import { HEAD, LIGHT, PINHOLE } from './common.ts';

/** The plates' sawn ends at the near end of the joint: what tells a tee from a lap and a corner. */
export const ENDS_VERTEX = `${HEAD}${PINHOLE}
in vec2 aPosition;
out vec3 vPlace;
void main() {
  vPlace = vec3(aPosition.x, uMetal.z, aPosition.y);
  gl_Position = pinhole(vPlace);
}
`;

export const ENDS = `${HEAD}${LIGHT}
in vec3 vPlace;
out vec4 outColor;
void main() {
  vec4 grain = texture(uNoise, vec2(vPlace.x * 0.05, vPlace.z * 0.3));
  vec3 steel = vec3(0.24, 0.243, 0.248) * (0.9 + 0.3 * (grain.r - 0.5));
  float arc = arcPower(dot(uArc.xyz - vPlace, uArc.xyz - vPlace)) * 0.10;
  vec3 colour = steel * mix(0.62, 0.05, uPaint.z) + steel * LAMP * arc;
  outColor = shown(film(colour * 0.8 * uPaint.w));
}
`;

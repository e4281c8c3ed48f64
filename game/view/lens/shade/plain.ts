import { SKIN_HEAD } from './through.ts';

/** The plain view: no grain, no mirror, one lamp, flat heat, a dark rim and the toe's thread. A third of the lens's cost. */
export const PLAIN = `${SKIN_HEAD}
void main() {
  vec3 place = vPlace;
  float weldShare = vMetal.x;
  float weld = smoothstep(0.35, 0.65, weldShare);
  float level = vRipple.w;
  float soft = fwidth(level) * 0.8 + 0.01;
  float liquid = smoothstep(-soft, soft, level);
  float part = fract(vRipple.x);
  float rate = length(vRipple.yz);
  float line = (1.0 - smoothstep(0.0, 0.16 + fwidth(vRipple.x), min(part, 1.0 - part))) * weld * (1.0 - liquid) * (1.0 - smoothstep(1.5, 3.0, rate))
    * smoothstep(0.25, 0.8, uFoot.w - vMetal.w);
  vec3 normal = normalize(vec3(-vShape.xy, 1.0));
  float dark = uPaint.z;
  vec3 colour = mix(mix(vec3(0.20), vec3(0.13, 0.135, 0.14), dark), mix(vec3(0.33, 0.32, 0.31), vec3(0.21, 0.205, 0.20), dark), weld);
  colour *= 0.20 + 0.9 * max(dot(normal, normalize(vec3(-0.3, 0.5, 0.8))), 0.0);
  colour *= mix(1.5, 0.30 + 24.0 * lampOn(place, normal) * uArc.w, dark);
  colour *= 1.0 - 0.35 * line;
  colour *= 1.0 - 0.7 * (1.0 - weld) * (1.0 - smoothstep(0.06, 0.3, abs(place.x)));
  colour = mix(colour, vec3(0.70, 0.17, 0.03), smoothstep(700.0, 1350.0, vShape.z) * 0.85 * (1.0 - 0.3 * line));
  float side = smoothstep(1.0, 2.2, abs(place.x)) * (1.0 - smoothstep(0.78, 0.97, weldShare));
  float full = smoothstep(0.12, 0.45, vMetal.y);
  float h = (level - 0.05) / 0.34;
  float t = (level - 0.30) / 0.15;
  vec3 pool = mix(vec3(1.0, 0.62, 0.26), vec3(1.0, 0.86, 0.58), exp(-length(place.xy - uFoot.xy) / 3.5));
  pool *= 1.0 - 0.8 * exp(-h * h) * (1.0 - full) * side;
  pool += 0.9 * exp(-t * t) * full * side;
  colour = mix(colour, pool, liquid);
  float rim = level / (0.11 + soft);
  colour *= 1.0 - 0.75 * exp(-rim * rim);
  outColor = finished(film(colour * uPaint.w));
}
`;

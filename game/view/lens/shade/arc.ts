import { HEAD } from './common.ts';

/** One square of 24 mm over the arc, in picture pixels. */
export const ARC_VERTEX = `${HEAD}
in vec2 aPosition;
out vec2 vPixel;
void main() {
  vPixel = uSpot.xy + aPosition * uSpot.z * 12.0;
  gl_Position = vec4(vPixel.x / uSize.x * 2.0 - 1.0, vPixel.y / uSize.y * 2.0 - 1.0, 0.0, 1.0);
}
`;

/**
 * Arc core, its glow in the air, and the wire in silhouette. Light is premultiplied and laid over the metal; the core stays smaller than
 * the puddle, so that front and root are seen past it.
 */
export const ARC = `${HEAD}
in vec2 vPixel;
out vec4 outColor;
void main() {
  float perPixel = 1.0 / uSpot.z;
  vec2 off = (vPixel - uSpot.xy) * perPixel;
  float r2 = dot(off, off);
  vec2 wire = uWire.zw - uWire.xy;
  vec2 from = vPixel - uWire.xy;
  float h = clamp(dot(from, wire) / max(dot(wire, wire), 1.0), 0.0, 1.0);
  float side = length(from - wire * h) / max(uSpot.w, 0.5);
  float body = (1.0 - smoothstep(0.84, 1.04, side)) * (1.0 - smoothstep(0.6, 1.0, h)) * uSize.w;
  float edge = smoothstep(0.35, 0.9, side);
  float hot = uArc.w;
  vec3 copper = mix(vec3(0.30, 0.16, 0.09), vec3(0.012, 0.011, 0.010), max(hot, uPaint.z));
  copper += (vec3(0.62, 0.44, 0.30) * edge * exp(-h * 3.2) * 0.75 + vec3(0.25, 0.16, 0.10) * (1.0 - edge) * exp(-h * 5.0)) * hot;
  copper = mix(copper, vec3(1.0, 0.80, 0.50), exp(-h * 16.0) * 0.9 * hot);
  float core = exp(-r2 / 0.42);
  vec3 light = vec3(1.0, 0.99, 0.97) * core * 5.0 + vec3(0.93, 0.97, 1.0) * exp(-r2 / 1.6) * 0.42;
  light += vec3(0.72, 0.84, 1.0) * exp(-r2 / 16.0) * 0.13;
  light += vec3(0.60, 0.75, 0.90) * exp(-sqrt(r2) / 5.0) * smoothstep(144.0, 50.0, r2) * 0.045;
  vec2 below = off - vec2(0.0, 2.4);
  light += vec3(1.0, 0.50, 0.16) * 0.10 * exp(-dot(below, below) / 26.0) * smoothstep(144.0, 60.0, r2);
  vec3 shine = 1.0 - exp(-light * hot);
  float cover = max(shine.r, max(shine.g, shine.b));
  copper = mix(copper, shine, clamp(core * 1.2, 0.0, 1.0) * 0.85 * hot);
  outColor = vec4(mix(shine, pow(copper, vec3(1.0 / 2.2)), body), mix(cover * 0.92, 1.0, body));
}
`;

/** What the metals look like before any light falls on them. */
export const METALS = `
// Oxide film by the highest temperature the steel has seen: straw, brown, purple, blue, grey, then dull scale. Alpha is how much of it.
vec4 temper(float peak) {
  vec3 c = mix(vec3(0.34, 0.25, 0.11), vec3(0.25, 0.125, 0.05), smoothstep(222.0, 255.0, peak));
  c = mix(c, vec3(0.16, 0.075, 0.14), smoothstep(255.0, 282.0, peak));
  c = mix(c, vec3(0.06, 0.10, 0.24), smoothstep(278.0, 308.0, peak));
  c = mix(c, vec3(0.12, 0.19, 0.27), smoothstep(315.0, 370.0, peak));
  c = mix(c, vec3(0.17, 0.185, 0.19), smoothstep(380.0, 450.0, peak));
  c = mix(c, vec3(0.085, 0.083, 0.086), smoothstep(480.0, 680.0, peak));
  c = mix(c, vec3(0.065, 0.062, 0.062), smoothstep(700.0, 1000.0, peak));
  return vec4(c, smoothstep(190.0, 240.0, peak));
}

float grey(vec3 c) {
  return dot(c, vec3(0.3, 0.5, 0.2));
}

// Brushed within this of the root, mill scale beyond.
float groundAt(float along, float brush) {
  return 1.0 - smoothstep(20.5, 22.0, along + brush * 3.0);
}

vec3 plateColour(vec4 grain, float brush, float ground) {
  vec3 scale = vec3(0.088, 0.093, 0.104) * (0.86 + 0.22 * grain.a + 0.1 * grain.r);
  vec3 bright = vec3(0.215, 0.22, 0.226) * (0.96 + 0.20 * brush);
  return mix(scale, bright, ground);
}

vec3 beadColour(vec4 grain, float standing) {
  vec3 c = mix(vec3(0.066, 0.069, 0.075), vec3(0.108, 0.110, 0.113), grain.a) * (0.8 + 0.4 * grain.r);
  return mix(c, vec3(0.085, 0.080, 0.092), 0.6 * smoothstep(2.0, 0.3, standing));
}

// Fume on the plates, decoration: thin and brown, clear of the hot strip and of what the arc has not reached.
float sootAt(float along) {
  float cloud = texture(uNoise, vPlace.xy * 0.011 + 0.5).a;
  return smoothstep(7.0, 11.0, along) * (1.0 - smoothstep(13.0, 20.0, along)) * smoothstep(0.3, 0.75, cloud) * smoothstep(uFoot.y + 6.0, uFoot.y - 6.0, vPlace.y);
}

// Shadow of the open root, and of the last tenth of a millimetre beside a bead.
float creaseAt(float weld) {
  float off = abs(vPlace.x);
  return (1.0 - weld) * (0.5 * (1.0 - smoothstep(0.0, 1.5, off)) + 0.5 * (1.0 - smoothstep(0.06, 0.30, off)));
}

float toeLineAt(float weldShare, float liquid) {
  float d = (weldShare - 0.5) / 0.16;
  return exp(-d * d) * (1.0 - liquid);
}
`;

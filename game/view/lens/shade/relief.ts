/**
 * Relief the engine's columns are too coarse to hold, cut along its own freezing fronts: a crescent a root crossing. Spacing, place and
 * sweep of the crescents are the model's (freeze stamps); height and raggedness are decoration. So are grain, spatter and silica.
 */
export const RELIEF = `
struct Ripples {
  vec2 tilt;      // added to the slopes of the height
  float valley;   // 0 on the back of a ripple to 1 in the valley above it
  float phase;
};

Ripples ripplesAt(vec4 grain, float weld, float liquid, float standing, float frozen_s) {
  float rate = length(vRipple.yz);
  float phase = vRipple.x + (grain.a - 0.5) * 0.55 + (grain.r - 0.5) * 0.34;
  float part = fract(phase);
  float legible = 1.0 - smoothstep(1.5, 3.0, rate);
  float set = smoothstep(0.25, 0.8, uFoot.w - frozen_s);
  float here = (1.0 - liquid) * weld * smoothstep(0.02, 0.4, standing);
  float wide = clamp(fwidth(phase) * 1.2, 0.05, 0.5) + 0.14;
  float valley = 1.0 - smoothstep(0.0, wide, min(part, 1.0 - part));
  // No two ripples are equally deep, nor one along its own length.
  float depth = (0.45 + 0.75 * hashOf(vec2(floor(phase), 3.0))) * (0.6 + 0.8 * grain.a) * smoothstep(0.15, 0.6, rate);
  float back = part < 0.30 ? (0.30 - part) / 0.30 * 1.25 : -(part - 0.30) / 0.70;
  float fine = 0.045 * sin(6.2831853 * (phase * 4.0 + grain.r * 1.6)) * (1.0 - smoothstep(0.7, 1.5, rate)) * grain.r;
  Ripples r;
  r.tilt = vRipple.yz * (back * (1.0 - valley) * 0.36 * depth * legible * set + fine) * here;
  r.valley = valley * legible * here * set * (0.35 + 0.9 * grain.r) * smoothstep(0.2, 0.7, rate);
  r.phase = phase;
  return r;
}

// Spatter frozen to the plate, decoration: at most one ball in a 3 mm cell, only where the arc has already passed.
struct Ball { float cover; float shade; vec3 normal; };

Ball spatterAt(float along) {
  vec2 cell = vec2(vPlace.x > 0.0 ? along : -along, vPlace.y) / 3.0;
  vec2 id = floor(cell);
  float h1 = hashOf(id), h2 = hashOf(id + 17.0), h3 = hashOf(id + 41.0);
  float radius = 0.11 + 0.24 * h3 * h3;
  vec2 off = (fract(cell) - 0.25 - 0.5 * vec2(h1, h2)) * 3.0;
  float out_ = abs(id.x + 0.5) * 3.0;
  float there = step(8.4, out_) * step(h2, 0.30 * exp(-(out_ - 8.0) / 7.0)) * smoothstep(uFoot.y + 9.0, uFoot.y + 4.0, vPlace.y);
  float d = length(off) / radius;
  Ball ball;
  ball.cover = (1.0 - smoothstep(0.85, 1.1, d)) * there;
  ball.shade = (1.0 - smoothstep(1.0, 2.2, length(off + vec2(-0.10, 0.16)) / radius)) * there * (1.0 - ball.cover);
  vec2 q = off / radius;
  ball.normal = normalize(vec3(q.x * 0.8, q.y, sqrt(max(0.05, 1.0 - min(1.0, dot(q, q))))));
  return ball;
}

// Silica, decoration: glassy drops that lie along the ripples once the metal has gone dark.
float silicaAt(float phase, float weld, float liquid, float frozen_s) {
  float blob = texture(uNoise, vec2(vPlace.x * 0.085 + phase * 0.0071, phase * 0.072) + vec2(0.13, 0.71)).a;
  return smoothstep(0.845, 0.862, blob) * (1.0 - liquid) * weld * smoothstep(0.7, 1.4, uFoot.w - frozen_s);
}

// Soapstone ticks every 5 mm, longer every 10: they bend at the root with the plates and say how far up the work is.
float chalkAt(float along, float grain) {
  float px = 1.0 / uPaint.y;
  float five = abs(fract(vPlace.y / 5.0 + 0.5) - 0.5) * 5.0;
  float ten = step(abs(fract(vPlace.y / 10.0 + 0.5) - 0.5) * 10.0, 1.0);
  float line = 1.0 - smoothstep(0.07, 0.07 + 1.3 * px, five);
  float from = 13.0 + 0.0 * ten;
  float to = 14.8 + 1.4 * ten;
  return line * smoothstep(from, from + 0.2, along) * (1.0 - smoothstep(to, to + 0.2, along)) * (0.35 + 0.65 * smoothstep(0.3, 0.6, grain));
}
`;

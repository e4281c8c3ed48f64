import { HEAD, LIGHT } from './common.ts';
import { METALS } from './metals.ts';
import { RELIEF } from './relief.ts';

const INPUTS = `
in vec3 vPlace;
in vec4 vShape;
in vec4 vRipple;
in vec4 vMetal;
out vec4 outColor;
`;

/** Start of every shader of the skin. */
export const SKIN_HEAD = `${HEAD}${INPUTS}${LIGHT}
// The picture's light on screen. Where the plates are broken off, as in a drawing, they end in a wavy ink line.
vec4 finished(vec3 colour) {
  vec4 screen = shown(colour);
  if (uNet.z <= 0.0) return screen;
  vec2 turn = vPlace.x > 0.0 ? vec2(0.0, 1.3) : vec2(2.0, 4.1);
  float px = 1.0 / uPaint.y;
  float side = uNet.z + 0.8 * sin(vPlace.y * 0.21 + turn.x) + 0.45 * sin(vPlace.y * 0.57 + turn.y) - abs(vPlace.x);
  float inside = min(side, min(vPlace.y - uMetal.z, uMetal.w - vPlace.y));
  vec3 ink = mix(vec3(0.122, 0.137, 0.149), vec3(0.25), uPaint.z);
  screen.rgb = mix(screen.rgb, ink, (1.0 - smoothstep(0.5 * px, 1.5 * px, inside)) * 0.7);
  return screen * smoothstep(-px, 0.0, side);
}
`;

const LIQUID = `
// What the liquid mirrors: both plates lit by the arc, the arc itself, and the dark booth.
vec3 plateSeen(vec3 place, vec3 ray, float way, float fall, vec3 normal) {
  if (fall > -0.02) return vec3(0.0);
  vec3 hit = place + ray * (way / -fall);
  return vec3(0.9, 0.95, 1.0) * lampOn(hit, normal) * 9.0 * smoothstep(-0.02, -0.2, fall);
}

vec3 mirrored(vec3 place, vec3 ray) {
  vec3 seen = vec3(0.010, 0.012, 0.014);
  seen += plateSeen(place, ray, (place.z - place.x) * HALF_ROOT2, (ray.z - ray.x) * HALF_ROOT2, vec3(-HALF_ROOT2, 0.0, HALF_ROOT2));
  seen += plateSeen(place, ray, (place.z + place.x) * HALF_ROOT2, (ray.z + ray.x) * HALF_ROOT2, vec3(HALF_ROOT2, 0.0, HALF_ROOT2));
  vec3 way = uArc.xyz - place;
  float along = dot(way, ray);
  float off2 = dot(way, way) - along * along;
  float wide = 0.9 + 0.02 * dot(way, way);
  if (along > 0.0) seen += vec3(1.0, 0.97, 0.92) * (5.0 * exp(-off2 / (0.35 * wide)) + 0.55 * exp(-off2 / (3.0 * wide)));
  return seen;
}

// Skin of the liquid: a dimple under the arc, rings running from it, a slow swell. Decoration over the model's own height.
vec2 liquidTilt(vec2 tilt, vec4 grain) {
  vec2 off = vPlace.xy - uFoot.xy;
  float r = length(off) + 1e-3;
  vec2 dir = off / r;
  float t = uPaint.x;
  float ring = sin(r * 5.2 - t * 9.0 + grain.r * 5.0) * exp(-r / 2.6) * 0.24 + sin(r * 9.5 - t * 11.0 + grain.a * 6.0) * exp(-r / 2.0) * 0.12;
  vec2 swell = (texture(uNoise, vPlace.xy * 0.055 + vec2(0.0, t * 0.02)).gb - 0.5) * 0.50;
  vec2 chop = (texture(uNoise, vPlace.xy * 0.12 + vec2(t * 0.013, 0.4)).gb - 0.5) * 0.22;
  return tilt * 0.92 + dir * (ring + 0.9 * exp(-r * r / 1.6)) * uArc.w + swell + chop;
}

// Slag islands, decoration: they drift at the rear and the sides, glow more than the metal and mirror nothing. x covers, y darkens round it.
vec3 islandAt(vec4 grain, float level) {
  vec2 cell = (vPlace.xy + vec2(0.0, 0.25 * uPaint.x) + (grain.rg - 0.5) * 0.5) / 1.45;
  vec2 id = floor(cell);
  float h1 = hashOf(id + 5.0), h2 = hashOf(id + 29.0), h3 = hashOf(id + 53.0);
  float radius = 0.12 + 0.26 * h3;
  float d = length((fract(cell) - 0.36 - 0.28 * vec2(h1, h2)) * 1.45 * vec2(1.0, 1.25));
  // None on the bead's own end, which has no depth up the joint for them to lie in.
  float rear = step(uMetal.z + 0.01, vPlace.y) * smoothstep(2.2, 4.2, uFoot.y - vPlace.y) * smoothstep(0.12, 0.3, level) * step(h1, 0.24);
  return vec3((1.0 - smoothstep(radius - 0.12, radius + 0.04, d)) * rear, (1.0 - smoothstep(radius, radius + 0.22, d)) * rear, d / radius);
}
`;

/** Through the lens: arc light, the metal's own heat and a liquid that mirrors. */
export const THROUGH_THE_LENS = `${SKIN_HEAD}${METALS}${RELIEF}${LIQUID}
void main() {
  vec3 place = vPlace;
  float peak = vShape.w;
  float weldShare = vMetal.x;
  float weld = smoothstep(0.35, 0.65, weldShare);
  float along = abs(place.x) * 1.4142;
  vec3 view = normalize(eyePlace() - place);
  vec4 grain = texture(uNoise, place.xy * 0.035);
  vec4 strokes = texture(uNoise, vec2(along * 0.40, place.y * 0.017) + 0.37);
  float brush = strokes.r - 0.5;

  // The puddle's edge lies between the columns; a hair of grain keeps it from looking drawn.
  float level = vRipple.w + (grain.r - 0.5) * 0.05;
  float soft = fwidth(level) * 0.8 + 0.01;
  float liquid = smoothstep(-soft, soft, level);
  float away = length(place.xy - uFoot.xy);

  Ball ball = spatterAt(along);
  Ripples ripples = ripplesAt(grain, weld, liquid, vMetal.z, vMetal.w);
  vec2 tilt = vShape.xy + ripples.tilt + (grain.gb - 0.5) * mix(0.05, 0.13, weld) * (1.0 - liquid);
  if (liquid > 0.0) tilt = mix(tilt, liquidTilt(tilt, grain), liquid);
  vec3 normal = normalize(vec3(-tilt, 1.0));
  if (ball.cover > 0.0) normal = normalize(mix(normal, ball.normal, ball.cover * 0.9));
  float facing = clamp(dot(normal, view), 0.0, 1.0);

  // Metals; in the dark the temper colours are all but gone.
  float ground = groundAt(along, brush);
  float silica = silicaAt(ripples.phase, weld, liquid, vMetal.w);
  vec4 film_ = temper(peak + (grain.a - 0.5) * 14.0 + brush * 16.0);
  vec3 plate = plateColour(grain, brush, ground);
  vec3 tinted = mix(plate, mix(vec3(grey(film_.rgb)), film_.rgb, 0.3) * 0.9, film_.a * 0.55);
  plate = mix(plate * vec3(0.98, 1.0, 1.02), vec3(grey(tinted)), 0.30 + 0.5 * smoothstep(450.0, 800.0, peak)) * (1.0 - 0.10 * brush);
  plate = mix(plate, vec3(0.62), chalkAt(along, grain.r) * 0.55);
  plate = mix(plate, vec3(0.24), ball.cover) * (1.0 - 0.55 * ball.shade);
  vec3 bead = beadColour(grain, vMetal.z) * 1.6 * (1.0 - 0.26 * ripples.valley);
  bead = mix(bead, vec3(0.034, 0.026, 0.018), silica * 0.92);
  vec3 albedo = mix(plate, bead, weld) * (1.0 - 0.30 * sootAt(along) * vec3(0.8, 1.0, 1.25));

  // Arc light, and the puddle's own light on what lies beside it.
  vec3 way = uArc.xyz - place;
  float d2 = dot(way, way);
  vec3 ray = way * inversesqrt(d2);
  float power = arcPower(d2);
  vec3 fromPool = vec3(uFoot.x * 0.35, uFoot.y - 2.6, uFoot.z + 1.6) - place;
  float p2 = dot(fromPool, fromPool);
  float warm = max(dot(normal, fromPool) * inversesqrt(p2), 0.0) / (p2 + 5.0) * uArc.w;
  vec3 solid = albedo * (LAMP * power * max(dot(normal, ray) * 0.9 + 0.1, 0.0) * 1.15 + vec3(1.0, 0.46, 0.14) * warm * 5.0);
  vec3 between = normalize(ray + view);
  float mirrorish = max(dot(normal, between), 0.0);
  solid += LAMP * power * pow(mirrorish, mix(24.0, 34.0, weld)) * mix(0.16, 0.55, max(weld, ball.cover)) * (1.0 - 0.6 * silica) * (1.0 - 0.6 * ripples.valley);
  // Brush marks run up the joint, so light spreads across them: the band that folds at the root and shows the corner.
  float across = max(0.0, 1.0 - between.y * between.y);
  solid += LAMP * power * pow(across, 26.0) * mirrorish * mirrorish * mirrorish * 0.15 * (1.0 - weld) * ground * (0.62 + 0.76 * strokes.r)
    * (1.0 - 0.75 * smoothstep(430.0, 700.0, peak)) * (1.0 - ball.cover);
  solid *= 1.0 - 0.8 * creaseAt(weld) * (1.0 - 0.6 * exp(-away / 3.0));
  solid += albedo * 0.030 * (0.6 + 0.4 * normal.y);
  float toeLine = toeLineAt(weldShare, liquid);
  solid *= 1.0 - 0.55 * toeLine;
  solid += glow(vShape.z) * 0.78 * (0.72 + 0.28 * facing) * (1.0 - 0.35 * ripples.valley) * (1.0 - 0.35 * toeLine);

  vec3 colour = solid;
  if (liquid > 0.0) {
    // The liquid's own light falls away from the arc; most of what is seen of it is what it mirrors.
    float heat = mix(1455.0 + 470.0 * exp(-away / 3.6) * uArc.w, clamp(vShape.z, 1480.0, 1900.0), 0.35);
    vec3 own = glow(heat) * (0.56 + 0.46 * exp(-away / 4.0)) * (0.80 + 0.75 * (1.0 - facing));
    vec2 flow = place.xy - uFoot.xy;
    vec4 streaks = texture(uNoise, vec2(flow.x * 0.060 + 0.22 * grain.a, flow.y * 0.024 + uPaint.x * 0.02) + 0.21);
    own *= 0.90 + 0.22 * (streaks.a - 0.5) + 0.30 * (streaks.r - 0.5);
    own *= mix(vec3(1.0), vec3(1.0, 0.93, 0.80), smoothstep(2.0, 7.0, away));
    float graze = 1.0 - facing;
    vec3 pool = own + mirrored(place, reflect(-view, normal)) * vec3(1.0, 0.93, 0.82) * mix(0.60, 0.95, graze * graze * graze) * uArc.w;
    vec3 island = islandAt(grain, level);
    pool *= 1.0 - 0.22 * island.y;
    pool = mix(pool, glow(1640.0) * (0.95 + 0.3 * (1.0 - island.z)), island.x * 0.8);
    // Where it meets the plate: a thread of light if the toe is filled, a dark hollow if not.
    float side = smoothstep(1.0, 2.2, abs(place.x)) * mix(0.14, 1.0, 1.0 - smoothstep(0.78, 0.97, weldShare));
    float full = smoothstep(0.12, 0.45, vMetal.y);
    float t = (level - 0.30) / 0.15;
    float h = (level - 0.05) / 0.34;
    pool *= 1.0 - 0.80 * exp(-h * h) * (1.0 - full) * side;
    pool += vec3(1.0, 0.88, 0.66) * 1.15 * exp(-t * t) * (0.40 + 0.60 * exp(-away / 6.0)) * (0.75 + 0.5 * grain.r) * full * side;
    colour = mix(solid, pool, liquid);
  }
  float rim = level / (0.10 + soft);
  colour *= 1.0 - 0.40 * exp(-rim * rim);
  colour = film(colour * 0.85 * uPaint.w);
  // A trace of green glass in the darks.
  colour = mix(colour * vec3(0.97, 1.0, 0.96), colour, smoothstep(0.0, 0.5, dot(colour, vec3(0.33))));
  outColor = finished(colour);
}
`;

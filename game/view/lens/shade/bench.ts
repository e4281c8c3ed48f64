import { METALS } from './metals.ts';
import { RELIEF } from './relief.ts';
import { SKIN_HEAD } from './through.ts';

/** On the bench by a window: lights up, metal cold or cooling, no arc. */
export const ON_THE_BENCH = `${SKIN_HEAD}${METALS}${RELIEF}
const vec3 WINDOW = vec3(-0.4204, 0.6206, 0.6606);

// The room as brushed or cast metal sees it: a tall window above left, a pale wall at the right, a dark floor.
vec3 roomSeen(vec3 ray, float rough) {
  float up = ray.y * 0.80 - ray.x * 0.45;
  vec3 room = mix(vec3(0.075, 0.072, 0.068), vec3(0.17, 0.175, 0.182), smoothstep(-0.30 - rough, 0.30 + rough * 0.5, up));
  room = mix(room, vec3(1.15, 1.20, 1.26), smoothstep(0.50 - rough * 0.6, 0.70 + rough * 0.6, up));
  float wall = (ray.x - 0.66) / (0.13 + rough * 0.6);
  return room + vec3(0.42, 0.39, 0.34) * exp(-wall * wall) * smoothstep(-0.6, 0.4, ray.y);
}

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
  float level = vRipple.w;
  float soft = fwidth(level) * 0.8 + 0.01;
  float liquid = smoothstep(-soft, soft, level);

  Ball ball = spatterAt(along);
  Ripples ripples = ripplesAt(grain, weld, liquid, vMetal.z, vMetal.w);
  vec2 tilt = vShape.xy + ripples.tilt + (grain.gb - 0.5) * mix(0.05, 0.13, weld);
  vec3 normal = normalize(vec3(-tilt, 1.0));
  if (ball.cover > 0.0) normal = normalize(mix(normal, ball.normal, ball.cover * 0.9));
  float facing = clamp(dot(normal, view), 0.0, 1.0);
  vec3 ray = reflect(-view, normal);

  float ground = groundAt(along, brush);
  float silica = silicaAt(ripples.phase, weld, liquid, vMetal.w);
  vec4 film_ = temper(peak + (grain.a - 0.5) * 14.0 + brush * 16.0);
  vec3 tint = mix(vec3(1.0), film_.rgb / max(max(film_.r, film_.g), film_.b), 0.8);
  vec3 oxide = mix(vec3(grey(film_.rgb)), film_.rgb, 0.78) * 0.9 * (0.9 + 0.35 * brush);
  float coloured = film_.a * (1.0 - weld);
  vec3 plate = mix(plateColour(grain, brush, ground), oxide, coloured * 0.62);
  plate = mix(plate, vec3(0.62), chalkAt(along, grain.r) * 0.55);
  plate = mix(plate, vec3(0.10), ball.cover) * (1.0 - 0.55 * ball.shade);
  vec3 bead = beadColour(grain, vMetal.z) * (1.0 - 0.26 * ripples.valley);
  bead = mix(bead, vec3(0.034, 0.026, 0.018), silica * 0.92);
  vec3 albedo = mix(plate, bead, weld) * (1.0 - 0.30 * sootAt(along) * vec3(0.8, 1.0, 1.25));

  float lit = max(dot(normal, WINDOW), 0.0);
  float open = 1.0 - 0.45 * exp(-along / 3.0) * (1.0 - weld) - 0.30 * creaseAt(weld) - 0.30 * toeLineAt(weldShare, liquid);
  vec3 sky = mix(vec3(0.30, 0.29, 0.28), vec3(0.62, 0.64, 0.66), normal.y * 0.5 + 0.5);
  float fill = max(dot(normal, vec3(0.62, 0.16, 0.77)), 0.0);
  vec3 colour = albedo * (sky * 0.62 + 1.30 * lit * lit + 0.25 * lit + 0.62 * fill * fill) * open;

  float rough = mix(mix(0.5, 0.34, ground), 0.15, weld);
  rough = mix(rough, 0.10, silica * weld);
  float toWindow = exp(-max(0.0, 1.0 - dot(ray, WINDOW)) / (0.03 + rough * 0.40));
  vec3 seen = roomSeen(ray, rough) + 1.1 * toWindow * mix(0.6, 1.0, weld);
  float graze = 1.0 - facing;
  float fresnel = mix(0.55, 1.0, graze * graze * graze * graze);
  vec3 metal = mix(vec3(0.46), vec3(0.50, 0.507, 0.515), weld);
  metal = mix(metal, metal * tint, coloured * 0.45);
  float sheen = mix(0.16, 0.42, ground) * (1.0 - 0.25 * coloured) * (1.0 - 0.72 * (1.0 - weld) * smoothstep(420.0, 640.0, peak));
  sheen = mix(sheen, 0.64, weld) * (1.0 - 0.6 * ripples.valley);
  colour += seen * metal * sheen * fresnel * open * (1.0 + 0.45 * brush * (1.0 - weld));
  colour += glow(vShape.z) * 0.5 * smoothstep(520.0, 700.0, vShape.z);
  // On its way into the dark it meets the lens's picture half way.
  outColor = finished(film(colour * 0.74 * uPaint.w * mix(1.0, 0.1, uPaint.z)));
}
`;

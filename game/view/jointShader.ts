/**
 * The joint as the welder sees it. One quad over the pane; every pixel finds its place in millimetres, reads the surface there
 * and is lit by the room, by the arc and by its own heat.
 *
 * The field texture holds, per column of the surface: height mm, temperature °C, liquid share, highest temperature °C. It is read with
 * texelFetch and smoothed here, because linear filtering of float textures is missing on many tablets.
 */
export const VERTEX = `#version 300 es
in vec2 aPosition;
out vec2 vUv;
void main() {
  vUv = aPosition * 0.5 + 0.5;
  // Drawn into a texture, which counts its rows from the top.
  gl_Position = vec4(aPosition.x, -aPosition.y, 0.0, 1.0);
}
`;

export const FRAGMENT = `#version 300 es
precision highp float;
precision highp sampler2D;
in vec2 vUv;
out vec4 outColor;

uniform sampler2D uField;
uniform vec4 uView;    // left u, bottom y, width, height of the pane, mm
uniform vec4 uGrid;    // u and y of the first column, steps, mm
uniform vec2 uCount;   // columns across, slices up
uniform vec4 uMetal;   // 0 tee, 1 lap, 2 corner; plate B; low and high end, mm
uniform vec4 uArc;     // u, y, surface height under it, light 0 to 1
uniform vec4 uLook;    // dark 0 to 1; millimetres per pixel; half width shown; plain 0 or 1

const float ROOT2 = 1.41421356;
const vec3 PAPER = vec3(0.9240, 0.8994, 0.8434);  // #f6f3ec at gamma 2.2, as tokens.css has it
const vec3 NIGHT = vec3(0.00196, 0.00226, 0.00258); // #0f1011
const vec3 INK = vec3(0.0097, 0.0127, 0.0152);    // #1f2326

float hash(vec2 p) {
  p = fract(p * vec2(123.34, 345.45));
  p += dot(p, p + 34.345);
  return fract(p.x * p.y);
}

float noise(vec2 p) {
  vec2 i = floor(p);
  vec2 f = fract(p);
  f = f * f * (3.0 - 2.0 * f);
  return mix(mix(hash(i), hash(i + vec2(1.0, 0.0)), f.x), mix(hash(i + vec2(0.0, 1.0)), hash(i + vec2(1.0, 1.0)), f.x), f.y);
}

// Height of the bare plates where the field does not reach; x is the height, y its slope across.
vec2 bare(float u) {
  if (u >= 0.0) return vec2(u, 1.0);
  float corner = -uMetal.y / ROOT2;
  if (uMetal.x > 0.5 && uMetal.x < 1.5 && u < corner) return vec2(u + ROOT2 * uMetal.y, 1.0);
  return vec2(-u, -1.0);
}

vec4 at(ivec2 p) {
  ivec2 c = clamp(p, ivec2(0), ivec2(int(uCount.y) - 1, int(uCount.x) - 1));
  return texelFetch(uField, c, 0);
}

// Catmull-Rom through the columns: the surface, and the slopes of its height, from the same sixteen readings.
// The second slope is taken through a wider bell (cubic B-spline), for the liquid, whose skin is smoother than the columns it is made of.
void surface(vec2 place, out vec4 value, out vec2 slope, out vec2 soft) {
  vec2 g = vec2((place.y - uGrid.z) / uGrid.w, (place.x - uGrid.x) / uGrid.y);
  vec2 base = floor(g);
  vec2 f = g - base;
  ivec2 b = ivec2(base);
  vec2 f2 = f * f;
  vec2 f3 = f2 * f;
  vec2 w0 = -0.5 * f3 + f2 - 0.5 * f;
  vec2 w1 = 1.5 * f3 - 2.5 * f2 + 1.0;
  vec2 w2 = -1.5 * f3 + 2.0 * f2 + 0.5 * f;
  vec2 w3 = 0.5 * f3 - 0.5 * f2;
  vec2 d0 = -1.5 * f2 + 2.0 * f - 0.5;
  vec2 d1 = 4.5 * f2 - 5.0 * f;
  vec2 d2 = -4.5 * f2 + 4.0 * f + 0.5;
  vec2 d3 = 1.5 * f2 - f;
  vec2 g1 = 1.0 - f;
  vec2 s0 = g1 * g1 * g1 / 6.0;
  vec2 s1 = (3.0 * f3 - 6.0 * f2 + 4.0) / 6.0;
  vec2 s3 = f3 / 6.0;
  vec2 s2 = 1.0 - s0 - s1 - s3;
  vec2 t0 = -0.5 * g1 * g1;
  vec2 t1 = 1.5 * f2 - 2.0 * f;
  vec2 t3 = 0.5 * f2;
  vec2 t2 = -t0 - t1 - t3;
  value = vec4(0.0);
  slope = vec2(0.0);
  soft = vec2(0.0);
  vec4 wx = vec4(w0.x, w1.x, w2.x, w3.x);
  vec4 dx = vec4(d0.x, d1.x, d2.x, d3.x);
  vec4 wy = vec4(w0.y, w1.y, w2.y, w3.y);
  vec4 dy = vec4(d0.y, d1.y, d2.y, d3.y);
  vec4 bell = vec4(s0.y, s1.y, s2.y, s3.y);
  vec4 fall = vec4(t0.y, t1.y, t2.y, t3.y);
  for (int k = 0; k < 4; k++) {
    vec4 r0 = at(b + ivec2(-1, k - 1));
    vec4 r1 = at(b + ivec2(0, k - 1));
    vec4 r2 = at(b + ivec2(1, k - 1));
    vec4 r3 = at(b + ivec2(2, k - 1));
    vec4 row = r0 * wx.x + r1 * wx.y + r2 * wx.z + r3 * wx.w;
    float along = r0.x * dx.x + r1.x * dx.y + r2.x * dx.z + r3.x * dx.w;
    value += row * wy[k];
    slope.y += along * wy[k];
    slope.x += row.x * dy[k];
    soft.y += (r0.x * t0.x + r1.x * t1.x + r2.x * t2.x + r3.x * t3.x) * bell[k];
    soft.x += (r0.x * s0.x + r1.x * s1.x + r2.x * s2.x + r3.x * s3.x) * fall[k];
  }
  slope /= vec2(uGrid.y, uGrid.w);
  soft /= vec2(uGrid.y, uGrid.w);
  value.z = clamp(value.z, 0.0, 1.0);
}

// Colours of the oxide film steel keeps from the highest temperature it has seen, 200 to 450 °C, then grey scale.
vec4 temper(float peak) {
  vec3 c = mix(vec3(0.30, 0.24, 0.14), vec3(0.22, 0.14, 0.09), smoothstep(225.0, 262.0, peak));
  c = mix(c, vec3(0.15, 0.10, 0.15), smoothstep(262.0, 287.0, peak));
  c = mix(c, vec3(0.085, 0.12, 0.19), smoothstep(285.0, 315.0, peak));
  c = mix(c, vec3(0.15, 0.18, 0.20), smoothstep(330.0, 420.0, peak));
  c = mix(c, vec3(0.105, 0.10, 0.10), smoothstep(450.0, 700.0, peak));
  float strength = 0.72 * smoothstep(185.0, 245.0, peak);
  return vec4(c, strength);
}

// Light of the metal's own heat in black-body order: deep red, orange, straw, white.
vec3 glow(float t) {
  float x = clamp((t - 560.0) / 1100.0, 0.0, 0.98);
  vec3 c = mix(vec3(0.55, 0.015, 0.0), vec3(1.0, 0.12, 0.01), smoothstep(0.05, 0.35, x));
  c = mix(c, vec3(1.0, 0.42, 0.07), smoothstep(0.3, 0.65, x));
  c = mix(c, vec3(1.0, 0.78, 0.42), smoothstep(0.6, 1.0, x));
  return c * (0.05 * x + 1.25 * x * x * x);
}

// Plate that has stayed well below melting is flat: straight lines between four columns will do, at a quarter of the cost.
void flat_(vec2 place, out vec4 value, out vec2 slope) {
  vec2 g = vec2((place.y - uGrid.z) / uGrid.w, (place.x - uGrid.x) / uGrid.y);
  ivec2 b = ivec2(floor(g));
  vec2 f = g - vec2(b);
  vec4 r00 = at(b);
  vec4 r10 = at(b + ivec2(1, 0));
  vec4 r01 = at(b + ivec2(0, 1));
  vec4 r11 = at(b + ivec2(1, 1));
  vec4 low = mix(r00, r10, f.x);
  vec4 high = mix(r01, r11, f.x);
  value = mix(low, high, f.y);
  slope = vec2((high.x - low.x) / uGrid.y, 0.0);
}

// Past the field the plate's heat is not sent: let it go on falling off as it does across the last columns.
void beyond(vec2 place, float past, bool right, out vec4 value, out vec2 slope) {
  vec2 b = bare(place.x);
  int rim = right ? int(uCount.x) - 1 : 0;
  int inner = right ? rim - 4 : 4;
  float row = (place.y - uGrid.z) / uGrid.w;
  int low = int(floor(row));
  vec4 outer = mix(at(ivec2(low, rim)), at(ivec2(low + 1, rim)), row - float(low));
  vec4 within = mix(at(ivec2(low, inner)), at(ivec2(low + 1, inner)), row - float(low));
  vec2 fall = clamp((outer.yw - 20.0) / max(within.yw - 20.0, 1.0), 0.3, 0.98);
  vec2 heat = 20.0 + (outer.yw - 20.0) * pow(fall, vec2(past / (4.0 * uGrid.y)));
  value = vec4(b.x, heat.x, 0.0, heat.y);
  slope = vec2(b.y, 0.0);
}

const float HAS_FLOWED = 750.0;

vec3 metal(vec2 place, float dark) {
  vec4 s;
  vec2 slope;
  float reach = (uCount.x - 1.0) * uGrid.y;
  float fromLeft = place.x - uGrid.x;
  if (fromLeft > uGrid.y && fromLeft < reach - uGrid.y) {
    vec4 near = at(ivec2(int(round((place.y - uGrid.z) / uGrid.w)), int(round(fromLeft / uGrid.y))));
    if (near.w < HAS_FLOWED) {
      flat_(place, s, slope);
    } else {
      vec2 soft;
      surface(place, s, slope, soft);
      slope = mix(slope, soft, smoothstep(1455.0, 1500.0, s.y));
    }
  } else {
    beyond(place, max(0.0, max(fromLeft - reach, -fromLeft)), fromLeft > 0.5 * reach, s, slope);
  }
  vec3 n = normalize(vec3(-slope, 1.0));
  vec3 eye = vec3(0.0, 0.0, 1.0);
  float weld = smoothstep(1370.0, 1450.0, s.w);
  // The liquid's edge by temperature, which runs smoothly between columns, where the liquid flag steps.
  float liquid = smoothstep(1455.0, 1500.0, s.y);
  // The puddle's rim, where a welder keeps his eyes: a thin darker line just inside the solid.
  float rim = smoothstep(1400.0, 1450.0, s.y) * (1.0 - smoothstep(1462.0, 1495.0, s.y));
  vec3 window = normalize(vec3(-0.34, 0.52, 0.80));
  float key = max(dot(n, window), 0.0);

  if (uLook.w > 0.5) {
    vec3 plain = mix(vec3(0.42, 0.42, 0.41), vec3(0.62, 0.60, 0.56), weld) * (0.78 + 0.3 * key);
    plain = mix(plain, plain * 0.16, dark);
    plain = mix(plain, vec3(0.75, 0.16, 0.02), smoothstep(600.0, 1100.0, s.y) * 0.8);
    plain = mix(plain, vec3(1.0, 0.72, 0.36), liquid);
    return plain * (1.0 - 0.6 * rim);
  }

  // Grain and scale are not seen in the dark; noise is dear without a graphics card.
  float grain = 0.5;
  float scale = 0.5;
  if (dark < 0.97) {
    grain = noise(place * vec2(3.1, 0.7)) * 0.6 + noise(place * vec2(9.0, 2.3)) * 0.4;
    scale = noise(place * 0.35 + 7.0);
  }
  vec3 steel = vec3(0.215, 0.225, 0.235) * (0.80 + 0.22 * grain + 0.20 * scale);
  vec4 film = temper(s.w);
  vec3 albedo = mix(steel, film.rgb * (0.85 + 0.3 * grain), film.a);
  albedo = mix(albedo, vec3(0.235, 0.228, 0.218) * (0.90 + 0.14 * grain), weld);
  albedo = mix(albedo, vec3(0.30, 0.28, 0.26), liquid);

  // Room: one soft window above left, and the paper's bounce.
  float root = (1.0 - weld) * 0.42 * exp(-place.x * place.x / 1.1);
  vec3 lit = albedo * (0.40 + 1.55 * key * key + 0.35 * key) * (1.0 - root);
  if (dark < 0.97) {
    float shine = pow(max(dot(n, normalize(window + eye)), 0.0), mix(18.0, 70.0, liquid));
    lit += shine * mix(0.03, mix(0.10, 0.4, liquid), max(weld, liquid));
  }
  lit *= 1.0 - 0.962 * dark;

  // Arc: a small bright sphere just off the surface.
  if (uArc.w > 0.002) {
    vec3 toArc = vec3(uArc.xy - place, uArc.z + 3.0 - s.x);
    float d2 = dot(toArc, toArc);
    vec3 ray = toArc * inversesqrt(d2);
    float facing = max(dot(n, ray), 0.0) * 0.85 + 0.15;
    float glint = weld + liquid > 0.01 ? pow(max(dot(n, normalize(ray + eye)), 0.0), mix(10.0, 26.0, liquid)) : 0.0;
    lit += vec3(0.94, 0.97, 1.0) * (uArc.w * 19.0 / (d2 + 15.0)) * (albedo * facing + glint * mix(0.10, 0.34, liquid));
  }
  if (s.y > 560.0) lit += glow(s.y) * mix(0.8, 0.27, dark) * (0.75 + 0.35 * n.z);
  lit *= 1.0 - 0.38 * rim;
  return 1.0 - exp(-lit * mix(1.55, 1.1, dark));
}

void main() {
  vec2 place = uView.xy + vUv * uView.zw;
  float dark = uLook.x;
  float pixel = uLook.y;
  vec3 color = mix(PAPER, NIGHT, dark);
  vec2 turn = place.x > 0.0 ? vec2(0.0, 1.3) : vec2(2.0, 4.1);
  float wave = 0.8 * sin(place.y * 0.21 + turn.x) + 0.45 * sin(place.y * 0.57 + turn.y);
  float side = uLook.z + wave - abs(place.x);
  float ends = min(place.y - uMetal.z, uMetal.w - place.y);
  float inside = min(side, ends);
  if (inside > -pixel) {
    float line = 1.0 - smoothstep(0.5 * pixel, 1.4 * pixel, inside);
    vec3 light = mix(metal(place, dark), mix(INK, vec3(0.045), dark), line * (inside == side ? 0.55 : 0.9));
    color = mix(color, light, smoothstep(-pixel, 0.0, inside));
  }

  // Arc core and its bloom, over everything near it.
  vec2 off = place - uArc.xy;
  float r2 = dot(off, off);
  if (uArc.w > 0.002 && r2 < 400.0) {
    float core = exp(-r2 / 0.7);
    float halo = 0.34 * exp(-r2 / 4.5) + 0.07 * exp(-r2 / 50.0);
    vec3 bloom = vec3(1.0, 0.985, 0.95) * core * 2.2 + vec3(0.86, 0.93, 1.0) * halo;
    color = 1.0 - (1.0 - clamp(color, 0.0, 1.0)) * exp(-bloom * uArc.w * (uLook.w > 0.5 ? 0.5 : 1.0));
  }
  outColor = vec4(pow(color, vec3(1.0 / 2.2)), 1.0);
}
`;

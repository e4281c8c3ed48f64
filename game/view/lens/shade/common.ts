/** Everything the close view's shaders are told; one block, shared by skin, plate ends and arc. */
const UNIFORMS = `
uniform sampler2D uSkinA;   // height, metal standing on the plate, temperature, ripple phase
uniform sampler2D uSkinB;   // level of melting, peak temperature, weld share, time frozen
uniform sampler2D uNoise;   // grain, its slopes, blobs
uniform vec4 uGrid;         // u and y of the first column, steps, mm
uniform vec2 uCount;        // columns across, slices up
uniform vec4 uMetal;        // 0 tee, 1 lap, 2 corner; plate B with the gap under it; low and high end, mm
uniform vec4 uPlates;       // plate A, plate B, gap, plate width, mm
uniform vec4 uNet;          // y of the farthest row, row step; half width of the broken-off plates or 0, mm
uniform vec4 uTarget;       // place looked at; eye to it, mm
uniform vec4 uLook;         // sine and cosine of the look; millimetres to clip space across and up
uniform vec4 uArc;          // place of the arc, mm; its light 0 to 1
uniform vec4 uFoot;         // place of the arc's foot, mm; time of the attempt, s
uniform vec4 uPaint;        // time of the picture, s; drawn pixels per millimetre; dark 0 to 1; exposure
uniform vec4 uWire;         // wire end and where it leaves the picture, pixels from the top left
uniform vec4 uSpot;         // arc in pixels, pixels per millimetre there, half the wire in pixels
uniform vec4 uSize;         // picture in pixels; unused; wire shown 0 or 1
`;

export const HEAD = `#version 300 es
precision highp float;
precision highp sampler2D;
${UNIFORMS}
`;

/** The look through the pinhole: a place in the joint to clip space. */
export const PINHOLE = `
vec4 pinhole(vec3 place) {
  vec3 r = place - uTarget.xyz;
  float up = r.y * uLook.y + r.z * uLook.x;
  float near = -r.y * uLook.x + r.z * uLook.y;
  float grown = uTarget.w / (uTarget.w - near);
  // Drawn into a texture, which counts its rows from the top.
  return vec4(r.x * grown * uLook.z, -up * grown * uLook.w, 0.0, 1.0);
}
`;

/** Light and colour common to the shaders. */
export const LIGHT = `
const vec3 LAMP = vec3(0.78, 0.91, 1.0);
const float HALF_ROOT2 = 0.70710678;

vec3 eyePlace() {
  return uTarget.xyz + uTarget.w * vec3(0.0, -uLook.x, uLook.y);
}

// Light of the metal's own heat: Wien's law for three colours, brightness halved on the log scale so that red heat is still seen.
vec3 glow(float t_C) {
  float d = 1.0 / 1950.0 - 1.0 / max(t_C + 273.0, 500.0);
  return vec3(1.0, 0.575 * exp(2955.0 * d), 0.20 * exp(7720.0 * d)) * exp(12270.0 * d);
}

// Film curve: keeps the dark plates and the white core in one picture.
vec3 film(vec3 x) {
  x = max(x, 0.0);
  return clamp((2.51 * x * x + 0.03 * x) / (2.43 * x * x + 0.59 * x + 0.14), 0.0, 1.0);
}

vec4 shown(vec3 linear) {
  return vec4(pow(linear, vec3(1.0 / 2.2)), 1.0);
}

// Arc light on a small patch: facing over distance, the arc being a ball and not a point.
float lampOn(vec3 place, vec3 normal) {
  vec3 way = uArc.xyz - place;
  float d2 = dot(way, way);
  return max(dot(normal, way) * inversesqrt(d2), 0.0) / (d2 + 5.0);
}

float arcPower(float d2) {
  return 1.2 * (22.0 / (d2 + 10.0) + 46.0 / (d2 + 110.0)) * uArc.w;
}

float hashOf(vec2 p) {
  return fract(sin(dot(p, vec2(127.1, 311.7))) * 43758.5453);
}
`;

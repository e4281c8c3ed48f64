import Matter from 'matter-js';
import { Buffer, BufferUsage, Geometry, GlProgram, Mesh, Shader } from 'pixi.js';
import type { Camera } from '../core/hand/camera.ts';
import { toPane } from '../core/hand/camera.ts';

/** Grams one drawn ball stands for; spatter balls of 0.5 to 1 mm weigh 0.5 to 4 mg (steel, 7.85 mg/mm3). */
const BALL_G = 0.0025;
const DRIP_G = 0.12;
const MOST_BODIES = 60;
const LIFE_S = 1.6;
/** matter-js multiplies gravity.y by gravity.scale per ms^2; positions here are mm, so 9810 mm/s2 is 0.00981 mm/ms2. */
const GRAVITY_MM_PER_MS2 = 0.00981;
const STEP_MS = 1000 / 60;

/** Numbers per corner of a ball: place in clip space, corner of its square, heat 1 to 0. */
const PER_CORNER = 5;
const CORNERS = [
  [-1, -1],
  [1, -1],
  [1, 1],
  [-1, 1],
] as const;

/** A program of its own is a few lines; the general one for shapes takes a slow machine a second to compile, in mid-weld. */
const VERTEX = `#version 300 es
in vec2 aPlace;
in vec2 aCorner;
in float aHeat;
out vec2 vCorner;
out float vHeat;
void main() {
  vCorner = aCorner;
  vHeat = aHeat;
  gl_Position = vec4(aPlace, 0.0, 1.0);
}
`;

const FRAGMENT = `#version 300 es
precision mediump float;
in vec2 vCorner;
in float vHeat;
out vec4 outColor;
void main() {
  float edge = 1.0 - smoothstep(0.6, 1.0, length(vCorner));
  float alpha = edge * min(1.0, vHeat * 1.6);
  vec3 color = mix(vec3(0.71, 0.22, 0.06), mix(vec3(0.95, 0.64, 0.24), vec3(1.0, 0.945, 0.84), smoothstep(0.6, 0.85, vHeat)), smoothstep(0.3, 0.5, vHeat));
  outColor = vec4(color * alpha, alpha);
}
`;

interface Ball {
  body: Matter.Body;
  age_s: number;
  drip: boolean;
}

/**
 * Spatter and falling drips, for the eye only: masses come from the engine's accounts, flight paths from matter-js. Nothing here is
 * ever read back by the engine.
 */
export class SpatterView {
  readonly mesh: Mesh<Geometry, Shader>;
  private readonly corners = new Float32Array(MOST_BODIES * 4 * PER_CORNER);
  private readonly buffer: Buffer;
  private readonly world = Matter.Engine.create({ gravity: { x: 0, y: 1, scale: GRAVITY_MM_PER_MS2 } });
  private readonly balls: Ball[] = [];
  private owedSpatter_g = 0;
  private owedDrip_g = 0;
  private seed = 1;

  constructor() {
    this.buffer = new Buffer({ data: this.corners, usage: BufferUsage.VERTEX | BufferUsage.COPY_DST });
    const stride = PER_CORNER * Float32Array.BYTES_PER_ELEMENT;
    const indices = new Uint16Array(MOST_BODIES * 6);
    for (let n = 0; n < MOST_BODIES; n++)
      indices.set(
        [0, 1, 2, 0, 2, 3].map((corner) => 4 * n + corner),
        6 * n,
      );
    const geometry = new Geometry({
      attributes: {
        aPlace: { buffer: this.buffer, format: 'float32x2', stride, offset: 0 },
        aCorner: { buffer: this.buffer, format: 'float32x2', stride, offset: 8 },
        aHeat: { buffer: this.buffer, format: 'float32', stride, offset: 16 },
      },
      indexBuffer: indices,
    });
    const glProgram = GlProgram.from({ vertex: VERTEX, fragment: FRAGMENT, name: 'spatter' });
    this.mesh = new Mesh({ geometry, shader: new Shader({ glProgram, resources: {} }) });
  }

  /** Mass that left the puddle since the last call, at a place. */
  add(spatter_g: number, dripped_g: number, u_mm: number, y_mm: number): void {
    this.owedSpatter_g += spatter_g;
    this.owedDrip_g += dripped_g;
    while (this.owedSpatter_g >= BALL_G) {
      this.owedSpatter_g -= BALL_G;
      const angle = this.random() * Math.PI * 2;
      const speed = 0.12 + 0.4 * this.random();
      this.spawn(
        u_mm,
        y_mm,
        0.28 + 0.2 * this.random(),
        Math.cos(angle) * speed,
        -Math.abs(Math.sin(angle)) * speed,
        false,
      );
    }
    while (this.owedDrip_g >= DRIP_G) {
      this.owedDrip_g -= DRIP_G;
      this.spawn(u_mm + (this.random() - 0.5) * 2, y_mm - 2, 1.5, 0, 0.02, true);
    }
  }

  get flying(): boolean {
    return this.balls.length > 0;
  }

  step(dt_s: number): void {
    let left_ms = Math.min(dt_s * 1000, 100);
    while (left_ms > 0 && this.balls.length > 0) {
      Matter.Engine.update(this.world, Math.min(STEP_MS, left_ms));
      left_ms -= STEP_MS;
    }
    for (let i = this.balls.length - 1; i >= 0; i--) {
      const ball = this.balls[i];
      ball.age_s += dt_s;
      if (ball.age_s < LIFE_S) continue;
      Matter.Composite.remove(this.world.world, ball.body);
      this.balls.splice(i, 1);
    }
  }

  draw(camera: Camera): void {
    this.corners.fill(0);
    let o = 0;
    for (const { body, age_s, drip } of this.balls) {
      const at = toPane(camera, body.position.x, -body.position.y);
      const radius = Math.max(drip ? 3 : 1.5, (body.circleRadius ?? 0.3) * camera.scale);
      for (const [x, y] of CORNERS) {
        this.corners[o] = ((at.x_px + x * radius) / camera.width_px) * 2 - 1;
        this.corners[o + 1] = 1 - ((at.y_px + y * radius) / camera.height_px) * 2;
        this.corners[o + 2] = x;
        this.corners[o + 3] = y;
        this.corners[o + 4] = 1 - age_s / LIFE_S;
        o += PER_CORNER;
      }
    }
    this.buffer.update();
  }

  clear(): void {
    Matter.Composite.clear(this.world.world, false);
    this.balls.length = 0;
    this.owedSpatter_g = 0;
    this.owedDrip_g = 0;
  }

  private spawn(u_mm: number, y_mm: number, radius_mm: number, vx: number, vy: number, drip: boolean): void {
    if (this.balls.length >= MOST_BODIES) return;
    // matter-js has y downwards; the joint has it upwards. No collisions: balls of this size pass each other.
    const body = Matter.Bodies.circle(u_mm, -y_mm, radius_mm, { frictionAir: 0.004, collisionFilter: { mask: 0 } });
    Matter.Body.setVelocity(body, { x: vx * STEP_MS, y: vy * STEP_MS });
    Matter.Composite.add(this.world.world, body);
    this.balls.push({ body, age_s: 0, drip });
  }

  private random(): number {
    this.seed = (Math.imul(this.seed, 1664525) + 1013904223) >>> 0;
    return this.seed / 4294967296;
  }
}

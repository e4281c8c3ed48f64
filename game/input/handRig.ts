import Matter from 'matter-js';

export interface RigOptions {
  /** Weight of the gun in the hand, g. */
  gun_g: number;
  /** Drag of the hose, 0 none to 1 stiff. */
  hose: number;
}

export const DEFAULT_RIG: RigOptions = { gun_g: 700, hose: 0.4 };

const STEP_MS = 4;
/** The hand pulls the gun like a spring this soft on matter-js' scale; a heavier gun follows it later. */
const GRIP = 0.06;
const GRIP_DAMPING = 0.12;
/** The hose hangs down the joint: its pull as a share of the gun's weight, on matter-js' force scale. */
const HOSE_PULL = 1.6e-4;

/**
 * The gun's weight and the hose's drag between the pointer and the torch, in joint millimetres. Off unless the user switches it on;
 * what it does is in the recorded poses, so replays need no rig.
 */
export class HandRig {
  private readonly engine = Matter.Engine.create({ gravity: { x: 0, y: 0, scale: 0 } });
  private readonly gun: Matter.Body;
  private readonly grip: Matter.Constraint;

  constructor(options: RigOptions, u_mm: number, y_mm: number) {
    this.gun = Matter.Bodies.circle(u_mm, y_mm, 1, { frictionAir: 0.06 + 0.25 * options.hose });
    Matter.Body.setMass(this.gun, Math.max(0.05, options.gun_g / 1000));
    this.grip = Matter.Constraint.create({
      pointA: { x: u_mm, y: y_mm },
      bodyB: this.gun,
      length: 0,
      stiffness: GRIP / (1 + options.gun_g / 1000),
      damping: GRIP_DAMPING,
    });
    this.hosePull = HOSE_PULL * options.hose;
    Matter.Composite.add(this.engine.world, [this.gun, this.grip]);
  }

  private readonly hosePull: number;

  /** Moves the hand to a place over `dt_ms` and says where the torch got to. */
  follow(u_mm: number, y_mm: number, dt_ms: number): { u_mm: number; y_mm: number } {
    this.grip.pointA = { x: u_mm, y: y_mm };
    for (let left = Math.min(dt_ms, 200); left > 0; left -= STEP_MS) {
      Matter.Body.applyForce(this.gun, this.gun.position, { x: 0, y: -this.hosePull * this.gun.mass });
      Matter.Engine.update(this.engine, Math.min(STEP_MS, left));
    }
    return { u_mm: this.gun.position.x, y_mm: this.gun.position.y };
  }
}

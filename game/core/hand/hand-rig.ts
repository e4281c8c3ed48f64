import Matter from 'matter-js';

export interface RigOptions {
  /** Weight of the gun in the hand, g. */
  gun_g: number;
  /** Drag of the hose, 0 none to 1 stiff. */
  hose: number;
}

export const DEFAULT_RIG: RigOptions = { gun_g: 700, hose: 0.4 };

/**
 * matter-js takes force in kg mm/ms². The hand holds the gun like a spring of 1 N/mm: 700 g swings at 6 Hz, which is how fast a hand
 * corrects (order of magnitude; common sense, no source).
 */
const GRIP = 1e-3;
const STEP_MS = 4;
/** Share of speed lost in 1/60 s: the hand's own damping, and the hose's. */
const HAND_DAMPING = 0.8;
const HOSE_DAMPING = 0.15;
/** Pull of a stiff hose down the joint. */
const HOSE_PULL = 8e-4;

/**
 * The gun's weight and the hose's drag between the pointer and the torch, in joint millimetres. Off unless the user switches it on;
 * what it does is in the recorded poses, so replays need no rig.
 */
export class HandRig {
  private readonly engine = Matter.Engine.create({ gravity: { x: 0, y: 0, scale: 0 } });
  private readonly gun: Matter.Body;
  private readonly pull: number;

  constructor(options: RigOptions, u_mm: number, y_mm: number) {
    this.gun = Matter.Bodies.circle(u_mm, y_mm, 1, { frictionAir: HAND_DAMPING + HOSE_DAMPING * options.hose });
    Matter.Body.setMass(this.gun, Math.max(0.05, options.gun_g / 1000));
    this.pull = HOSE_PULL * options.hose;
    Matter.Composite.add(this.engine.world, this.gun);
  }

  /** Moves the hand to a place over `dt_ms` and says where the torch got to. */
  follow(u_mm: number, y_mm: number, dt_ms: number): { u_mm: number; y_mm: number } {
    const { position } = this.gun;
    for (let left = Math.min(dt_ms, 400); left > 0; left -= STEP_MS) {
      const force = { x: GRIP * (u_mm - position.x), y: GRIP * (y_mm - position.y) - this.pull };
      Matter.Body.applyForce(this.gun, position, force);
      Matter.Engine.update(this.engine, Math.min(STEP_MS, left));
    }
    return { u_mm: position.x, y_mm: position.y };
  }
}

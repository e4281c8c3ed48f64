/**
 * The cross-section as rods: cells of one (a, b) place, contiguous along y. A plan says which rods touch and how well they
 * conduct; the kernels know nothing else. Order of the four slots is a-, a+, b-, b+, and kernels add (a- + a+) + (b- + b+): swapping
 * a and b swaps two equal sums, so a mirrored weld gives mirrored bits.
 *
 *          b+ (slot 3)
 *            |
 *   a- (0) --r-- a+ (1)        y runs out of the page
 *            |
 *          b- (2)
 */

/** 0 void, 1 plate A, 2 plate B, 3 weld metal. */
export const PART = { VOID: 0, A: 1, B: 2, WELD: 3 } as const;

export interface Face {
  p: number;
  q: number;
  /** Width of the face over the distance between centres (dimensionless). */
  shape: number;
  /** Width of the face, mm. */
  width_mm: number;
}

/** A rod held by clamp or bench, and its share of that edge's conductance. */
export interface Sink {
  rod: number;
  share: number;
}

export interface RodList {
  rod: number;
  neighbours: number[];
  shapes: number[];
}

export interface RodPlan {
  count: number;
  /** Metal area of the full rod, mm². */
  area_mm2: Float64Array;
  /** PART of the rod: 1 A, 2 B, 3 room for weld metal. */
  part: Uint8Array;
  /** Neighbour per slot (-1: none) and face width / centre distance. */
  slot: Int32Array;
  shape: Float64Array;
  /** Rods that meet more than four others (fins): neighbours beyond the slots, seen from this rod only. */
  lists: RodList[];
  /** Faying faces: gap conductance until both sides have melted. */
  gaps: Face[];
  /** Free outline losing heat to the room, mm per rod (back faces, plate faces outside the height field). */
  exposed_mm: Float64Array;
  /** Rods clamped to the bench. */
  sinks: Sink[];
  /** Centre of each rod, mm. */
  a_mm: Float64Array;
  b_mm: Float64Array;
}

export class RodBuilder {
  private readonly area: number[] = [];
  private readonly part: number[] = [];
  private readonly slot: number[] = [];
  private readonly shape: number[] = [];
  private readonly exposed: number[] = [];
  private readonly a: number[] = [];
  private readonly b: number[] = [];
  private readonly lists = new Map<number, RodList>();
  readonly gaps: Face[] = [];
  readonly sinks: Sink[] = [];

  add(part: number, a_mm: number, b_mm: number, area_mm2: number): number {
    this.area.push(area_mm2);
    this.part.push(part);
    this.slot.push(-1, -1, -1, -1);
    this.shape.push(0, 0, 0, 0);
    this.exposed.push(0);
    this.a.push(a_mm);
    this.b.push(b_mm);
    return this.area.length - 1;
  }

  /** Joins q to slot s of p and p to the facing slot of q. */
  join(p: number, q: number, s: 1 | 3, shape: number): void {
    this.slot[4 * p + s] = q;
    this.shape[4 * p + s] = shape;
    this.slot[4 * q + s - 1] = p;
    this.shape[4 * q + s - 1] = shape;
  }

  /**
   * Joins a fine rod's slot to a fin, and the fin's list to the fine rod. `shapeFine` is for the full cell: the kernel weighs it with
   * the fine cell's fill; `shape` is the face as it is.
   */
  joinFin(fine: number, fin: number, s: 0 | 1 | 2 | 3, shapeFine: number, shape: number): void {
    this.slot[4 * fine + s] = fin;
    this.shape[4 * fine + s] = shapeFine;
    let list = this.lists.get(fin);
    if (!list) {
      list = { rod: fin, neighbours: [], shapes: [] };
      this.lists.set(fin, list);
    }
    list.neighbours.push(fine);
    list.shapes.push(shape);
  }

  /** Plate metal, not room for weld metal. */
  isPlate(rod: number): boolean {
    return this.part[rod] !== 3;
  }

  expose(rod: number, width_mm: number): void {
    this.exposed[rod]! += width_mm;
  }

  build(): RodPlan {
    return {
      count: this.area.length,
      area_mm2: Float64Array.from(this.area),
      part: Uint8Array.from(this.part),
      slot: Int32Array.from(this.slot),
      shape: Float64Array.from(this.shape),
      lists: [...this.lists.values()],
      gaps: this.gaps,
      exposed_mm: Float64Array.from(this.exposed),
      sinks: this.sinks,
      a_mm: Float64Array.from(this.a),
      b_mm: Float64Array.from(this.b),
    };
  }
}

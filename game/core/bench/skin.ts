import type { SurfaceView } from '../../../engine/index.ts';
import type { RippleClock } from './ripple-clock.ts';

/**
 * What the close view's shaders read of a column, in two texels:
 * height mm, metal standing on the plate mm, temperature °C, ripple phase | level of melting, peak °C, weld share, time frozen s.
 */
export const SKIN_FLOATS = 8;

/** Middle of the melting range, °C, and the temperature away from it at which the level is 1. */
const MELTING_C = 1475;
const LEVEL_SPAN_C = 130;
/** A column that is liquid is never shown colder than this above the middle, a solid one never warmer than this below it. */
const OWN_SIDE_C = 12;
const HOTTEST_C = 1900;
const HOTTEST_PEAK_C = 1700;
/** Cells by which freeze times are grown into metal that was never liquid, so that ripples run out to the toe. */
const GROW_CELLS = 4;
/** The toes advance by whole columns; what stands on them is shown over this time, so that the toe's light does not jump. */
const STAND_TAU_S = 0.12;

/** Slices of the surface that are worked on: `from` up to but not including `to`. */
export interface Slices {
  from: number;
  to: number;
}

/**
 * Makes the close view's skin out of the engine's surface: a level of melting that is zero on the puddle's edge between the columns,
 * freeze times without holes, ripple phases, all softened by a 1-2-1 bell. Works in place; one of these per piece on the bench.
 */
export class Skin {
  /** Index `(k * ny + j) * SKIN_FLOATS`: first all columns' first texels, then all their second ones. */
  readonly texels: Float32Array;
  private readonly level: Float32Array;
  private readonly temp: Float32Array;
  private readonly weld: Float32Array;
  private readonly phase: Float32Array;
  private readonly frozen_s: Float32Array;
  private readonly known: Uint8Array;
  private readonly soft: Float32Array;
  private readonly across: Float64Array;
  /** Columns that touch known ones, to be known after the pass. */
  private readonly edge: Int32Array;
  private readonly stand: Float32Array;
  private shown_s = Number.NaN;

  constructor(
    readonly nu: number,
    readonly ny: number,
  ) {
    const n = nu * ny;
    this.texels = new Float32Array(n * SKIN_FLOATS);
    this.level = new Float32Array(n);
    this.temp = new Float32Array(n);
    this.weld = new Float32Array(n);
    this.phase = new Float32Array(n);
    this.frozen_s = new Float32Array(n);
    this.known = new Uint8Array(n);
    this.soft = new Float32Array(n);
    this.across = new Float64Array(ny);
    this.edge = new Int32Array(n);
    this.stand = new Float32Array(n);
  }

  /** Reads the surface as it is at `now_s` in the slices given; the rest keeps what it was. */
  read(view: SurfaceView, now_s: number, ripples: RippleClock, slices: Slices = { from: 0, to: this.ny }): void {
    const from = Math.max(0, slices.from);
    const to = Math.min(this.ny, slices.to);
    this.levels(view, now_s, from, to);
    this.grow(from, to);
    for (let k = 0; k < this.nu; k++)
      for (let i = k * this.ny + from; i < k * this.ny + to; i++) {
        if (!this.known[i]) this.frozen_s[i] = now_s;
        this.phase[i] = ripples.phaseAt(this.frozen_s[i]);
      }
    this.settleStand(view, now_s, from, to);
    const second = this.nu * this.ny * 4;
    this.put(view.height_mm, 0, from, to);
    this.put(this.stand, 1, from, to);
    // Glow goes with the steeply with temperature: what is left of the columns after one bell would show as teeth.
    this.keep(this.soften(this.temp, from, to), this.temp, from, to);
    this.put(this.soften(this.temp, from, to), 2, from, to);
    this.put(this.soften(this.phase, from, to), 3, from, to);
    this.put(this.soften(this.level, from, to), second, from, to);
    this.put(this.soften(view.peak_C, from, to), second + 1, from, to);
    this.put(this.soften(this.weld, from, to), second + 2, from, to);
    this.put(this.frozen_s, second + 3, from, to);
  }

  private levels(view: SurfaceView, now_s: number, from: number, to: number): void {
    for (let k = 0; k < this.nu; k++)
      for (let i = k * this.ny + from; i < k * this.ny + to; i++) {
        const liquid = view.liquid[i] > 0.5;
        const t = liquid
          ? Math.max(view.temp_C[i], MELTING_C + OWN_SIDE_C)
          : Math.min(view.temp_C[i], MELTING_C - OWN_SIDE_C);
        this.level[i] = Math.max(-1, Math.min(1, (t - MELTING_C) / LEVEL_SPAN_C));
        this.temp[i] = Math.min(t, HOTTEST_C);
        const once = !Number.isNaN(view.frozen_s[i]);
        this.weld[i] = liquid || once ? 1 : 0;
        this.known[i] = this.weld[i];
        this.frozen_s[i] = liquid ? now_s : once ? view.frozen_s[i] : 0;
      }
  }

  private grow(from: number, to: number): void {
    for (let pass = 0; pass < GROW_CELLS; pass++) {
      const found = this.findEdge(from, to);
      for (let n = 0; n < found; n++) this.frozen_s[this.edge[n]] = this.meanAround(this.edge[n], from, to);
      // Known only now, so that no column of this pass leans on another of it.
      for (let n = 0; n < found; n++) this.known[this.edge[n]] = 1;
    }
  }

  /** Lists the columns that are not known and touch a known one; returns how many. */
  private findEdge(from: number, to: number): number {
    const { nu, ny, known, edge } = this;
    let found = 0;
    for (let k = 0; k < nu; k++)
      for (let j = from; j < to; j++) {
        const i = k * ny + j;
        if (known[i]) continue;
        const left = j > from ? 1 : 0;
        const right = j < to - 1 ? 1 : 0;
        const touches =
          (left && known[i - 1]) ||
          (right && known[i + 1]) ||
          (k > 0 && (known[i - ny] || (left && known[i - ny - 1]) || (right && known[i - ny + 1]))) ||
          (k < nu - 1 && (known[i + ny] || (left && known[i + ny - 1]) || (right && known[i + ny + 1])));
        if (touches) edge[found++] = i;
      }
    return found;
  }

  private meanAround(i: number, from: number, to: number): number {
    const { nu, ny, known, frozen_s } = this;
    const k = Math.floor(i / ny);
    const j = i % ny;
    let sum = 0;
    let count = 0;
    for (let dk = -1; dk <= 1; dk++)
      for (let dj = -1; dj <= 1; dj++) {
        if (k + dk < 0 || k + dk >= nu || j + dj < from || j + dj >= to) continue;
        const q = i + dk * ny + dj;
        if (!known[q]) continue;
        sum += frozen_s[q];
        count += 1;
      }
    return sum / count;
  }

  private settleStand(view: SurfaceView, now_s: number, from: number, to: number): void {
    const dt = now_s - this.shown_s;
    this.shown_s = now_s;
    // A first picture, a replay that jumps or runs back: nothing to settle from.
    const share = dt >= 0 && dt < 4 * STAND_TAU_S ? 1 - Math.exp(-dt / STAND_TAU_S) : 1;
    for (let k = 0; k < this.nu; k++)
      for (let i = k * this.ny + from; i < k * this.ny + to; i++)
        this.stand[i] += (view.height_mm[i] - view.plate_mm[i] - this.stand[i]) * share;
  }

  /** 1-2-1 across and up; edges repeat their last value. Leaves the result in a scratch array that the next call overwrites. */
  private soften(of: Float32Array, from: number, to: number): Float32Array {
    const { nu, ny, soft, across } = this;
    for (let k = 0; k < nu; k++) {
      const low = Math.max(0, k - 1) * ny;
      const mid = k * ny;
      const high = Math.min(nu - 1, k + 1) * ny;
      for (let j = from; j < to; j++) across[j] = of[low + j] + 2 * of[mid + j] + of[high + j];
      for (let j = from; j < to; j++) {
        const down = Math.max(from, j - 1);
        const up = Math.min(to - 1, j + 1);
        soft[mid + j] = (across[down] + 2 * across[j] + across[up]) / 16;
      }
    }
    return soft;
  }

  private keep(of: Float32Array, into: Float32Array, from: number, to: number): void {
    for (let k = 0; k < this.nu; k++) into.set(of.subarray(k * this.ny + from, k * this.ny + to), k * this.ny + from);
  }

  private put(of: Float32Array, offset: number, from: number, to: number): void {
    const peak = offset === this.nu * this.ny * 4 + 1;
    for (let k = 0; k < this.nu; k++)
      for (let i = k * this.ny + from; i < k * this.ny + to; i++)
        this.texels[4 * i + offset] = peak ? Math.min(of[i], HOTTEST_PEAK_C) : of[i];
  }
}

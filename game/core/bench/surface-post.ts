import type { Simulation } from '../../../engine/index.ts';
import type { SurfaceMessage } from './protocol.ts';
import { RippleClock } from './ripple-clock.ts';
import { SKIN_FLOATS, Skin, type Slices } from './skin.ts';
import type { TraceLog } from './trace-log.ts';

/** Buffers on the road between Worker and page; more only make the picture later. */
const IN_FLIGHT = 2;
/** While welding this much either side of the arc is read for every picture, the whole joint for every so many. */
const NEAR_MM = 30;
const WHOLE_EVERY = 12;

/**
 * Packs surfaces for the page. Buffers are transferred, not copied, and come back to be filled again; while all are on the road there
 * is nothing to send into, which is how a slow page slows the pictures and not the weld.
 */
export class SurfacePost {
  private free: ArrayBuffer[] = [];
  private made = 0;
  private size = 0;
  private skin: Skin | null = null;
  private readonly ripples = new RippleClock();
  private counted = 0;
  private packed = 0;

  takeBack(buffer: ArrayBuffer): void {
    if (buffer.byteLength === this.size) this.free.push(buffer);
  }

  /** Another piece lies on the bench: its ripples are its own. */
  reset(): void {
    this.skin = null;
    this.ripples.clear();
    this.counted = 0;
  }

  /**
   * A message ready to post with its buffers, or null while the page has not handed a buffer back.
   * @param trace the attempt so far; null before the strike
   * @param posted rows of it the page already has
   */
  pack(
    job: number,
    t_s: number,
    simulation: Simulation,
    trace: TraceLog | null,
    posted: number,
  ): SurfaceMessage | null {
    const view = simulation.surface();
    const { nu, ny, u0_mm, du_mm, y0_mm, dy_mm } = view;
    const columns = nu * ny;
    const size = columns * SKIN_FLOATS * Float32Array.BYTES_PER_ELEMENT;
    if (size !== this.size) {
      this.size = size;
      this.free = [];
      this.made = 0;
    }
    let buffer = this.free.pop();
    if (!buffer) {
      if (this.made >= IN_FLIGHT) return null;
      buffer = new ArrayBuffer(size);
      this.made += 1;
    }
    this.count(trace);
    this.packed += 1;
    const whole = this.skin?.nu !== nu || this.skin.ny !== ny || this.packed % WHOLE_EVERY === 0;
    if (this.skin?.nu !== nu || this.skin.ny !== ny) this.skin = new Skin(nu, ny);
    this.skin.read(view, t_s, this.ripples, whole ? undefined : this.slices(trace, y0_mm, dy_mm));
    new Float32Array(buffer).set(this.skin.texels);
    const rows = trace?.slice(posted) ?? new Float32Array(0);
    return { type: 'surface', job, t_s, nu, ny, u0_mm, du_mm, y0_mm, dy_mm, skin: buffer, trace: rows.buffer };
  }

  private count(trace: TraceLog | null): void {
    if (!trace) return;
    for (; this.counted < trace.length; this.counted++)
      if (trace.value(this.counted, 'arcOn') === 1)
        this.ripples.add(trace.value(this.counted, 't_s'), trace.value(this.counted, 'footU_mm'));
  }

  /** Round the arc while it burns; everything otherwise. */
  private slices(trace: TraceLog | null, y0_mm: number, dy_mm: number): Slices | undefined {
    if (!trace || trace.length === 0) return undefined;
    const last = trace.length - 1;
    if (trace.value(last, 'arcOn') !== 1) return undefined;
    const at = (trace.value(last, 'footY_mm') - y0_mm) / dy_mm;
    const reach = NEAR_MM / dy_mm;
    return { from: Math.floor(at - reach), to: Math.ceil(at + reach) };
  }
}

import type { Simulation } from '../../../engine/index.ts';
import type { SurfaceMessage } from './protocol.ts';
import { TEXEL } from './surface-frame.ts';

/** Buffers on the road between Worker and page; more only make the picture later. */
const IN_FLIGHT = 2;

/**
 * Packs surfaces for the page. Buffers are transferred, not copied, and come back to be filled again; while all are on the road there
 * is nothing to send into, which is how a slow page slows the pictures and not the weld.
 */
export class SurfacePost {
  private free: ArrayBuffer[] = [];
  private made = 0;
  private size = 0;

  takeBack(buffer: ArrayBuffer): void {
    if (buffer.byteLength === this.size) this.free.push(buffer);
  }

  /** A message ready to post with its buffers, or null while the page has not handed a buffer back. */
  pack(job: number, t_s: number, simulation: Simulation, trace: Float32Array<ArrayBuffer>): SurfaceMessage | null {
    const view = simulation.surface();
    const columns = view.nu * view.ny;
    const size = columns * TEXEL * Float32Array.BYTES_PER_ELEMENT;
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
    const texels = new Float32Array(buffer);
    const { height_mm, temp_C, liquid, peak_C } = view;
    for (let i = 0, o = 0; i < columns; i++, o += TEXEL) {
      texels[o] = height_mm[i];
      texels[o + 1] = temp_C[i];
      texels[o + 2] = liquid[i];
      texels[o + 3] = peak_C[i];
    }
    return {
      type: 'surface',
      job,
      t_s,
      nu: view.nu,
      ny: view.ny,
      u0_mm: view.u0_mm,
      du_mm: view.du_mm,
      y0_mm: view.y0_mm,
      dy_mm: view.dy_mm,
      texels: buffer,
      trace: trace.buffer,
    };
  }
}

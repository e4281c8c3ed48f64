import type { TraceSample } from '../../../engine/index.ts';

/** Columns kept of each trace sample; NaN stands for "there was none". */
const TRACE_COLUMNS = [
  't_s',
  'arcOn',
  'trigger',
  'aimU_mm',
  'aimY_mm',
  'footU_mm',
  'footY_mm',
  'tipToWork_mm',
  'workAngle_deg',
  'travelAngle_deg',
  'current_A',
  'frontY_mm',
  'puddleBottom_mm',
  'puddleTop_mm',
  'wetA_mm',
  'wetB_mm',
  'nozzleTouching',
  'dripped_g',
  'spatter_g',
] as const satisfies readonly (keyof TraceSample)[];

export type TraceColumn = (typeof TRACE_COLUMNS)[number];

export const TRACE_STRIDE = TRACE_COLUMNS.length;

const INDEX = Object.fromEntries(TRACE_COLUMNS.map((name, i) => [name, i])) as Record<TraceColumn, number>;

/** What the weld did, one row a pose interval, in one growing array that can be posted. */
export class TraceLog {
  private rows: Float32Array = new Float32Array(TRACE_STRIDE * 1024);
  length = 0;

  push(sample: TraceSample): void {
    const at = this.length * TRACE_STRIDE;
    if (at + TRACE_STRIDE > this.rows.length) {
      const grown = new Float32Array(this.rows.length * 2);
      grown.set(this.rows);
      this.rows = grown;
    }
    for (let i = 0; i < TRACE_STRIDE; i++) {
      const value = sample[TRACE_COLUMNS[i]];
      this.rows[at + i] = value === null ? Number.NaN : Number(value);
    }
    this.length += 1;
  }

  /** Adds rows cut from another log by `slice`. */
  append(rows: Float32Array): void {
    const count = rows.length / TRACE_STRIDE;
    let size = this.rows.length;
    while ((this.length + count) * TRACE_STRIDE > size) size *= 2;
    if (size > this.rows.length) {
      const grown = new Float32Array(size);
      grown.set(this.rows);
      this.rows = grown;
    }
    this.rows.set(rows, this.length * TRACE_STRIDE);
    this.length += count;
  }

  /** A copy of rows from `from` on, ready to be transferred. */
  slice(from: number): Float32Array<ArrayBuffer> {
    return new Float32Array(this.rows.subarray(from * TRACE_STRIDE, this.length * TRACE_STRIDE));
  }

  value(row: number, column: TraceColumn): number {
    return this.rows[row * TRACE_STRIDE + INDEX[column]];
  }

  /** When the arc first came to a height, s; null if it never did. */
  firstAt(y_mm: number): number | null {
    for (let row = 0; row < this.length; row++)
      if (this.value(row, 'arcOn') === 1 && this.value(row, 'footY_mm') >= y_mm) return this.value(row, 't_s');
    return null;
  }

  clear(): void {
    this.length = 0;
  }
}

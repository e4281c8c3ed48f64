import { POSE_RATE_HZ, type Pose, type TraceSample } from '../../engine/index.ts';

/** Numbers of a trace sample that are kept, one column each; a missing value is NaN in its column. */
const COLUMNS = [
  't_s',
  'aimU_mm',
  'aimY_mm',
  'footU_mm',
  'footY_mm',
  'tipToWork_mm',
  'workAngle_deg',
  'travelAngle_deg',
  'frontY_mm',
  'puddleBottom_mm',
  'puddleTop_mm',
  'wetA_mm',
  'wetB_mm',
  'fillA_mm',
  'fillB_mm',
  'dripped_g',
] as const;

export type TraceColumn = (typeof COLUMNS)[number];

/**
 * The trace of an attempt as columns, one entry per 1/100 s. The engine reuses its sample, so values are copied here.
 */
export class Trace {
  length = 0;
  arcOn = new Uint8Array(4096);
  private columns = new Map<TraceColumn, Float64Array>(COLUMNS.map((name) => [name, new Float64Array(4096)]));

  /** Copies one sample to the end of the columns. */
  add(sample: TraceSample): void {
    if (this.length === this.arcOn.length) this.grow();
    const i = this.length++;
    this.arcOn[i] = sample.arcOn ? 1 : 0;
    for (const name of COLUMNS) this.columns.get(name)![i] = sample[name] ?? Number.NaN;
  }

  /** Values of one column; entries from `length` on are spare room. */
  column(name: TraceColumn): Float64Array {
    return this.columns.get(name)!;
  }

  private grow(): void {
    const arcOn = new Uint8Array(this.arcOn.length * 2);
    arcOn.set(this.arcOn);
    this.arcOn = arcOn;
    for (const [name, old] of this.columns) {
      const values = new Float64Array(old.length * 2);
      values.set(old);
      this.columns.set(name, values);
    }
  }
}

/** A stretch of samples, `from` to `to` (not included). */
export interface Span {
  from: number;
  to: number;
}

/** Samples from the first to the last with an arc between two heights; null when the arc never burned there. */
export function spanBetween(trace: Trace, from_mm: number, to_mm: number): Span | null {
  const y = trace.column('aimY_mm');
  let first = -1;
  let last = -1;
  for (let i = 0; i < trace.length; i++) {
    if (trace.arcOn[i] === 0 || y[i]! < from_mm || y[i]! > to_mm) continue;
    if (first < 0) first = i;
    last = i;
  }
  return first < 0 ? null : { from: first, to: last + 1 };
}

/** A trace of a hand alone, nothing welded: where it aimed and how it held the torch, the arc burning while the trigger is down. */
export function traceOfHand(poses: Iterable<Pose>): Trace {
  const trace = new Trace();
  const sample = nothingWelded();
  for (const p of poses) {
    sample.t_s = trace.length / POSE_RATE_HZ;
    sample.trigger = p.trigger;
    sample.arcOn = p.trigger;
    sample.aimU_mm = p.u_mm;
    sample.aimY_mm = p.y_mm;
    sample.footU_mm = p.u_mm;
    sample.footY_mm = p.y_mm;
    sample.tipToWork_mm = p.tipToWork_mm;
    sample.workAngle_deg = p.workAngle_deg;
    sample.travelAngle_deg = p.travelAngle_deg;
    trace.add(sample);
  }
  return trace;
}

function nothingWelded(): TraceSample {
  return {
    t_s: 0,
    trigger: false,
    arcOn: false,
    regime: 'off',
    aimU_mm: 0,
    aimY_mm: 0,
    footU_mm: 0,
    footY_mm: 0,
    tipToWork_mm: 0,
    workAngle_deg: 0,
    travelAngle_deg: 0,
    current_A: 0,
    power_W: 0,
    frontY_mm: null,
    puddleBottom_mm: null,
    puddleTop_mm: null,
    puddleVolume_mm3: 0,
    wetA_mm: null,
    wetB_mm: null,
    fillA_mm: null,
    fillB_mm: null,
    nozzleTouching: false,
    dripped_g: 0,
    spatter_g: 0,
  };
}

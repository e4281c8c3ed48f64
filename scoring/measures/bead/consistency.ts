import type { Consistency, Station } from '../../schema/station.ts';
import { milli } from '../round.ts';

/** Fewer stations than this have no spread to speak of. */
const LEAST_STATIONS = 5;

/**
 * **Consistency along the length**: standard deviation of size, width of face and convexity over the stations of the judged length, mm; the
 * ripples of the weave are in it. Common practice, no source: an inspector walks the gauge along the weld and looks for what changes.
 * ±0.1: what the mesh moves it moves alike along the run, so the spread is surer than the readings.
 */
export function consistencyOf(stations: readonly Station[]): Consistency | null {
  if (stations.length < LEAST_STATIONS) return null;
  const spread = (read: (s: Station) => number): number => {
    let sum = 0;
    for (const s of stations) sum += read(s);
    const mean = sum / stations.length;
    let square = 0;
    for (const s of stations) square += (read(s) - mean) * (read(s) - mean);
    return milli(Math.sqrt(square / (stations.length - 1)));
  };
  return {
    size_mm: spread((s) => s.size_mm),
    faceWidth_mm: spread((s) => s.faceWidth_mm),
    convexity_mm: spread((s) => s.convexity_mm),
  };
}

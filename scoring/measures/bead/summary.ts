import { type Asked, sizeAsked } from '../../schema/exercise.ts';
import type { Result } from '../../schema/result.ts';
import type { Consistency, Station, StationMeasure } from '../../schema/station.ts';
import { milli, tenth } from '../precision.ts';
import type { FreezeStamps } from '../section/station.ts';
import { SLICE_MM, type Survey } from './survey.ts';

/** For which measures more is worse, and for which less; the rest have no worse side and keep their mean. */
const MORE_IS_WORSE = new Set<StationMeasure>([
  'convexity_mm',
  'concavity_mm',
  'undercutA_mm',
  'undercutB_mm',
  'overlapA_mm',
  'overlapB_mm',
  'toeRiskA_mm',
  'toeRiskB_mm',
  'edgeMeltedBack_mm',
  'hazA_mm',
  'hazB_mm',
]);

export interface BeadReading {
  bead: Omit<Result['bead'], 'start' | 'stops'>;
  /** Freeze stamps of each station, same order. */
  stamps: FreezeStamps[];
}

/**
 * Reads the bead every millimetre over a stretch and sums the stations up.
 * @param legGive_mm how far a leg may be off, below and above which a size counts as short or over
 */
export function readBead(
  survey: Survey,
  legGive_mm: number,
  judged: { from_mm: number; to_mm: number },
  asked: Asked | null,
): BeadReading {
  const stations: Station[] = [];
  const stamps: FreezeStamps[] = [];
  const bare_mm: number[] = [];
  const count = Math.floor((judged.to_mm - judged.from_mm) / SLICE_MM + 1e-9);
  for (let k = 0; k <= count; k++) {
    const y = judged.from_mm + k * SLICE_MM;
    const reading = survey.at(y);
    if (reading === null) bare_mm.push(milli(y));
    else {
      stations.push(reading.station);
      stamps.push(reading.stamps);
    }
  }
  const leg = asked === null ? null : sizeAsked(asked).leg_mm;
  const most =
    asked === null || asked.atMost_mm === null ? null : sizeAsked({ ...asked, size_mm: asked.atMost_mm }).leg_mm;
  const fused = stations.filter((s) => s.rootFused).length;
  return {
    bead: {
      stations,
      bare_mm,
      ...worstOf(stations),
      mean: meanOf(stations),
      rootFusedShare: stations.length > 0 ? milli(fused / stations.length) : null,
      consistency: consistencyOf(stations),
      undersize_mm: leg === null ? 0 : stations.filter((s) => s.size_mm + legGive_mm < leg).length * SLICE_MM,
      oversize_mm: most === null ? 0 : stations.filter((s) => s.size_mm - legGive_mm > most).length * SLICE_MM,
    },
    stamps,
  };
}

function measuresOf(s: Station): StationMeasure[] {
  return (Object.keys(s) as (keyof Station)[]).filter((k): k is StationMeasure => k !== 'y_mm' && k !== 'rootFused');
}

function worstOf(stations: readonly Station[]): { worst: Station | null; worstAt_mm: Record<string, number> } {
  const first = stations[0];
  if (first === undefined) return { worst: null, worstAt_mm: {} };
  const worst: Station = { ...first };
  const worstAt_mm: Record<string, number> = {};
  for (const name of measuresOf(first)) {
    const sign = MORE_IS_WORSE.has(name) ? 1 : -1;
    let at = first;
    for (const s of stations) if (sign * (s[name] ?? 0) > sign * (at[name] ?? 0)) at = s;
    assign(worst, name, at[name]);
    worstAt_mm[name] = at.y_mm;
  }
  worst.rootFused = stations.every((s) => s.rootFused);
  worst.y_mm = worstAt_mm.rootFusion_mm ?? first.y_mm;
  return { worst, worstAt_mm };
}

function meanOf(stations: readonly Station[]): Station | null {
  const first = stations[0];
  if (first === undefined) return null;
  const mean: Station = { ...first, rootFused: stations.every((s) => s.rootFused) };
  for (const name of measuresOf(first)) {
    if (first[name] === null) continue;
    let sum = 0;
    for (const s of stations) sum += s[name] ?? 0;
    assign(mean, name, name.endsWith('_deg') ? tenth(sum / stations.length) : milli(sum / stations.length));
  }
  mean.y_mm = milli((first.y_mm + stations[stations.length - 1]!.y_mm) / 2);
  return mean;
}

function assign(s: Station, name: StationMeasure, value: number | null): void {
  if (name === 'edgeMeltedBack_mm') s.edgeMeltedBack_mm = value;
  else if (value !== null) s[name] = value;
}

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

import { causeOf } from './cause.ts';
import { broken, type Facts, meanOver, outside } from './facts.ts';
import { type Found, NOWHERE } from './found.ts';

/** Legs this far apart on the whole are a weave off the middle, mm. */
export const UNEVEN_LEGS_MM = 0.6;
/** The face this much wider at the top than at the bottom, and at least so many mm, is a hot top end. */
const HOT_TOP_SHARE = 1.12;
const HOT_TOP_MM = 0.8;

export function edgeMelted(f: Facts): Found | null {
  const line = outside(f, 'edge melted back');
  if (line === null) return null;
  return {
    code: 'edge-melted-back',
    data: { back_mm: line.reading, y_mm: line.y_mm },
    ...causeOf(f, line.y_mm, 'B'),
    side: 'B',
    change: { what: 'pauseB_s', by: -0.1 },
  };
}

/** A bead to one side although the weave lay in the middle. */
export function oneSided(f: Facts): Found | null {
  const mean = f.bead.mean;
  if (mean === null || f.joint.kind === 'lap') return null;
  const apart = mean.legA_mm - mean.legB_mm;
  if (Math.abs(apart) < UNEVEN_LEGS_MM) return null;
  const shorter = apart > 0 ? 'B' : 'A';
  const y = f.bead.worstAt_mm[shorter === 'A' ? 'legA_mm' : 'legB_mm'] ?? mean.y_mm;
  const shift = Math.max(0.5, Math.round(Math.abs(apart) / Math.SQRT2) / 2);
  return {
    code: 'one-sided',
    data: {
      joint: f.joint.kind,
      side: shorter,
      legLong_mm: Math.max(mean.legA_mm, mean.legB_mm),
      legShort_mm: Math.min(mean.legA_mm, mean.legB_mm),
      shift_mm: shift,
    },
    ...causeOf(f, y, shorter),
    side: shorter,
    change: { what: 'centre_mm', by: shorter === 'A' ? shift : -shift },
  };
}

export function hotTop(f: Facts): Found | null {
  const third = Math.floor(f.bead.stations.length / 3);
  if (third < 4) return null;
  const low = meanOver(f.bead.stations.slice(0, third), (s) => s.faceWidth_mm);
  const high = meanOver(f.bead.stations.slice(-third), (s) => s.faceWidth_mm);
  if (low === null || high === null || high < HOT_TOP_SHARE * low || high - low < HOT_TOP_MM) return null;
  const top = f.bead.stations[f.bead.stations.length - 1]!;
  return {
    code: 'hot-top',
    data: { low_mm: low, high_mm: high },
    ...causeOf(f, top.y_mm, 'root'),
    side: null,
    change: { what: 'travel_mmps', by: 0.2 },
  };
}

export function closeCall(f: Facts): Found | null {
  const line = f.lines.find((l) => l.verdict === 'too close to call');
  if (line === undefined) return null;
  return {
    code: 'measure-a-real-one',
    data: {
      measure: line.measure,
      limit: line.limit,
      reading: line.reading,
      plusMinus: line.plusMinus,
      unit: line.unit,
    },
    ...causeOf(f, line.y_mm, line.side ?? 'root'),
    side: line.side,
    change: null,
  };
}

export function unexplained(f: Facts): Found | null {
  const line = f.lines.find((l) => l.verdict === 'outside');
  if (line === undefined) return null;
  return {
    code: 'see-the-cut',
    data: { measure: line.measure, y_mm: line.y_mm },
    ...causeOf(f, line.y_mm, line.side ?? 'root'),
    side: line.side,
    change: null,
  };
}

export function keepIt(f: Facts): Found | null {
  const worst = f.bead.worst;
  if (f.verdict !== 'within' || worst === null || broken(f, 'root fusion') !== null) return null;
  return {
    code: 'keep-it',
    data: { root_mm: worst.rootFusion_mm, convexity_mm: worst.convexity_mm },
    ...NOWHERE,
  };
}

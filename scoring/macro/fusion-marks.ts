import type { Place } from '../draw/zones.ts';
import { FARTHEST_SHORT_MM } from '../measures/section/isotherm.ts';
import { BARELY_SHORT_MM, READ_AT_MM } from '../measures/section/root-fusion.ts';

/** What fusion points on one plate say; null: the points do not reach that far. */
export interface MarkedFusion {
  deepest_mm: number | null;
  /** Least depth between root and toe, the first and last millimetre left out as in a model's cut. */
  least_mm: number | null;
  /** Past the root line, or minus the unfused land along the face. */
  root_mm: number | null;
}

interface Depth {
  /** Along the plate's face from the root's end of it. */
  along: number;
  /** Square to the face. */
  deep: number;
}

const END_MM = 1;
/** A line marked to within this of a place is read there. */
const NEAR_MM = 0.3;

/**
 * Fusion read off points set along the fusion line, straight between them.
 * @param points in the joint's frame, any order
 * @param gap_mm the plate of side B begins so far up
 * @param leg_mm leg on this plate
 */
export function markedFusion(points: readonly Place[], side: 'A' | 'B', gap_mm: number, leg_mm: number): MarkedFusion {
  const line = points.map((p) => depthAt(p, side, gap_mm)).sort((p, q) => p.along - q.along);
  const first = line[0];
  const last = line[line.length - 1];
  if (first === undefined || last === undefined) return { deepest_mm: null, least_mm: null, root_mm: null };
  const to = leg_mm - (side === 'B' ? gap_mm : 0) - END_MM;
  const whole = line.length > 1 && first.along <= END_MM + NEAR_MM && last.along >= to - NEAR_MM && to > END_MM;
  return {
    deepest_mm: Math.max(...line.map((p) => p.deep)),
    least_mm: whole
      ? Math.min(
          between(line, END_MM),
          between(line, to),
          ...line.filter((p) => p.along > END_MM && p.along < to).map((p) => p.deep),
        )
      : null,
    root_mm: atRoot(line, first, last),
  };
}

export function depthAt(p: Place, side: 'A' | 'B', gap_mm: number): Depth {
  return side === 'A' ? { along: p.a, deep: -p.b } : { along: p.b - gap_mm, deep: -p.a };
}

function atRoot(line: readonly Depth[], first: Depth, last: Depth): number | null {
  if (first.along > READ_AT_MM + NEAR_MM)
    // A line that starts on the face away from the root has bare face before it.
    return first.deep <= NEAR_MM ? -Math.min(FARTHEST_SHORT_MM, landTo(line) ?? first.along) : null;
  if (last.along < READ_AT_MM - NEAR_MM) return null;
  const deep = between(line, READ_AT_MM);
  return deep > BARELY_SHORT_MM ? deep : -Math.min(FARTHEST_SHORT_MM, landTo(line) ?? last.along);
}

/** Where along the face fusion first gets deeper than nothing. */
function landTo(line: readonly Depth[]): number | null {
  for (let i = 0; i < line.length; i++) {
    const here = line[i]!;
    if (here.deep <= BARELY_SHORT_MM || here.along <= 0) continue;
    const before = line[i - 1];
    if (before === undefined) return here.along;
    const share = Math.max(0, BARELY_SHORT_MM - before.deep) / Math.max(1e-9, here.deep - before.deep);
    return Math.max(0, before.along + share * (here.along - before.along));
  }
  return null;
}

/** Depth at a place, straight between the points, flat beyond the ends. */
function between(line: readonly Depth[], along: number): number {
  const after = line.findIndex((p) => p.along >= along);
  if (after < 0) return line[line.length - 1]!.deep;
  const q = line[after]!;
  const p = line[after - 1];
  if (p === undefined || q.along === p.along) return q.deep;
  return p.deep + ((along - p.along) / (q.along - p.along)) * (q.deep - p.deep);
}

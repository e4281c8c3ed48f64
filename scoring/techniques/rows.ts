import type { JointOptions } from '../../engine/index.ts';
import { type PlusMinusName, plusMinusAt, runKindOf } from '../measures/precision.ts';
import type { Motion } from '../schema/motion.ts';
import type { Station } from '../schema/station.ts';
import { plateName, toeName } from '../words/names.ts';
import type { TechniquePart } from './part.ts';

/** One reading of both parts. */
export interface TechniqueRow {
  what: string;
  unit: string;
  /** Of the bead, read off every cut; or of the hand. */
  of: 'bead' | 'hand';
  first: number | null;
  second: number | null;
  /** Second less first; null where either is missing. */
  difference: number | null;
  /** How far the difference may be off; null: of the hand, which is as it was recorded. */
  plusMinus: number | null;
  /** Whether the two differ by more than that; null where it cannot be told. */
  differs: boolean | null;
}

interface BeadReading {
  what: string;
  name: PlusMinusName;
  of: (s: Station) => number;
}

function beadReadings(kind: JointOptions['kind']): BeadReading[] {
  const [right, left] = [plateName(kind, 'A'), plateName(kind, 'B')];
  return [
    { what: `leg, ${right}`, name: 'leg', of: (s) => s.legA_mm },
    { what: `leg, ${left}`, name: 'leg', of: (s) => s.legB_mm },
    { what: 'throat', name: 'throat', of: (s) => s.throat_mm },
    { what: 'convexity', name: 'convexity', of: (s) => s.convexity_mm },
    { what: 'past the corner at the root', name: 'root fusion', of: (s) => s.rootFusion_mm },
    { what: `fused into the ${right}`, name: 'fusion', of: (s) => s.fusionDepthA_mm },
    { what: `fused into the ${left}`, name: 'fusion', of: (s) => s.fusionDepthB_mm },
  ];
}

/**
 * Both parts in numbers: means over every cut of each part, and what the hand did there. Two means of one model differ when they are farther apart
 * than both plus-minus together, added as independent errors; that is the model's doubt, not the spread along the bead.
 */
export function techniqueRows(first: TechniquePart, second: TechniquePart): TechniqueRow[] {
  const { joint, cell_mm } = first.attempt.simulation;
  const bead = beadReadings(joint.kind).map(({ what, name, of }): TechniqueRow => {
    const give = Math.hypot(
      ...[first, second].map((p) => plusMinusAt(name, cell_mm, runKindOf(p.measures.motion.width_mm))),
    );
    return row(what, 'mm', 'bead', meanOf(first, of), meanOf(second, of), Math.round(100 * give) / 100);
  });
  const share = (p: TechniquePart): number | null => {
    const { rootFusedShare } = p.measures.bead;
    return rootFusedShare === null ? null : 100 * rootFusedShare;
  };
  const hand = (what: string, unit: string, of: (m: Motion) => number | null): TechniqueRow =>
    row(what, unit, 'hand', of(first.measures.motion), of(second.measures.motion), null);
  return [
    ...bead,
    row('tied in at the root', '% of the length', 'bead', share(first), share(second), null),
    hand(`wait, ${toeName(joint.kind, 'A')}`, 's', (m) => m.pauseA_s),
    hand(`wait, ${toeName(joint.kind, 'B')}`, 's', (m) => m.pauseB_s),
    hand('beat', 'cycles a second', (m) => (m.period_s === null ? null : 1 / m.period_s)),
    hand('width', 'mm', (m) => m.width_mm),
    hand('step up', 'mm', (m) => m.stepUp_mm),
    hand('climb', 'mm/s', (m) => m.travel_mmps),
    hand('arc at the root, ahead of the front', 'mm', (m) => m.lead_mm),
  ];
}

function row(
  what: string,
  unit: string,
  of: TechniqueRow['of'],
  first: number | null,
  second: number | null,
  plusMinus: number | null,
): TechniqueRow {
  const difference = first === null || second === null ? null : hundredth(second - first);
  return {
    what,
    unit,
    of,
    first: first === null ? null : hundredth(first),
    second: second === null ? null : hundredth(second),
    difference,
    plusMinus,
    differs: difference === null || plusMinus === null ? null : Math.abs(difference) > plusMinus,
  };
}

function meanOf({ measures }: TechniquePart, of: (s: Station) => number): number | null {
  const { stations } = measures.bead;
  return stations.length === 0 ? null : stations.reduce((sum, s) => sum + of(s), 0) / stations.length;
}

function hundredth(x: number): number {
  return Math.round(100 * x) / 100 + 0;
}

import { sizeAsked } from '../schema/exercise.ts';
import type { Line } from '../schema/result.ts';
import { causeOf } from './cause.ts';
import { broken, type Facts, isWeave, outside, stationAt } from './facts.ts';
import type { Found } from './found.ts';
import { leftEarly } from './toes.ts';

/** Metal laid over metal held beyond which the crown is the settings' doing. A flat fillet is never exactly full. */
const TOO_MUCH = 1.25;

/** More metal is laid than the joint holds, by so much that the crown is no matter of skill; null where it is not, or not known. */
export function overfull({ laid_mm2, holds_mm2 }: Facts['figures']): { laid_mm2: number; holds_mm2: number } | null {
  return laid_mm2 === null || holds_mm2 === null || laid_mm2 < TOO_MUCH * holds_mm2 ? null : { laid_mm2, holds_mm2 };
}

/** Metal laid against metal the joint holds: anything over is crown, before any skill. */
export function tooMuchMetal(f: Facts): Found | null {
  const metal = overfull(f.figures);
  const travel = f.motion.travel_mmps;
  if (metal === null || travel === null) return null;
  const { laid_mm2, holds_mm2 } = metal;
  const fault = outside(f, 'convexity') ?? outside(f, 'size over') ?? sizeLine(f, 'at most') ?? outside(f, 'toe angle');
  if (fault === null) return null;
  const handFine = (f.motion.arcOnFrontShare ?? 0) >= 0.7 && isWeave(f) && broken(f, 'root fusion') === null;
  // Steps a hand can feel: 0.2 mm/s, as many as bring the metal down to a tenth over what the joint holds.
  const steps = Math.max(1, Math.round((travel * (laid_mm2 / (1.1 * holds_mm2) - 1)) / 0.2));
  return {
    code: 'too-much-metal',
    data: { laid_mm2, holds_mm2, handFine },
    ...causeOf(f, fault.y_mm, 'root'),
    side: null,
    change: { what: 'travel_mmps', by: Math.round(Math.min(steps, 5) * 2) / 10 },
  };
}

/** Size asked for, missed either way. */
export function wrongSize(f: Facts): Found | null {
  const { asked } = f.exercise;
  const short = sizeLine(f, 'at least') ?? outside(f, 'throat short, length');
  if (short !== null) {
    const at = f.bead.worst;
    if (at === null) return null;
    const y = f.bead.worstAt_mm.size_mm ?? short.y_mm;
    const there = metalIsThere(f, y);
    if (there !== 'no') return there;
    return {
      code: 'undersize',
      data: {
        size_mm: at.size_mm,
        asked_mm: sizeAsked(asked).leg_mm,
        length_mm: f.bead.undersize_mm,
        laid_mm2: f.figures.laid_mm2,
        holds_mm2: f.figures.holds_mm2,
        metalIsThere: false,
      },
      ...causeOf(f, y, 'root'),
      side: null,
      change: { what: 'travel_mmps', by: -0.2 },
    };
  }
  const over = outside(f, 'size over') ?? sizeLine(f, 'at most');
  if (over === null) return null;
  const most = asked.atMost_mm ?? asked.size_mm;
  return {
    code: 'oversize',
    data: { size_mm: largestSize(f), most_mm: most, length_mm: f.bead.oversize_mm },
    ...causeOf(f, over.y_mm, 'root'),
    side: null,
    change: { what: 'travel_mmps', by: 0.2 },
  };
}

function largestSize(f: Facts): number {
  return Math.max(...f.bead.stations.map((s) => s.size_mm));
}

/** The line on leg or throat that limits the size from one side, if it is broken for sure. */
function sizeLine(f: Facts, sense: Line['sense']): Line | null {
  const lines = f.lines.filter((l) => (l.measure === 'leg' || l.measure === 'throat') && l.sense === sense);
  return lines.find((l) => l.verdict === 'outside') ?? null;
}

/**
 * Short legs although the metal is laid: it stands in the wrong place, and slower would only crown it. A toe left early is the first
 * thing to mend; a crown that is outside has been spoken of already.
 */
function metalIsThere(f: Facts, y_mm: number): Found | null | 'no' {
  const metal = overfull(f.figures);
  const at = stationAt(f, y_mm);
  if (metal === null || at === null) return 'no';
  const early = leftEarly(f, y_mm, at.legA_mm < at.legB_mm ? 'A' : 'B');
  if (early !== null) return early;
  if (outside(f, 'convexity') !== null) return null;
  return {
    code: 'undersize',
    data: {
      ...metal,
      size_mm: at.size_mm,
      asked_mm: sizeAsked(f.exercise.asked).leg_mm,
      length_mm: f.bead.undersize_mm,
      metalIsThere: true,
    },
    ...causeOf(f, y_mm, 'root'),
    side: null,
    change: { what: 'width_mm', by: 1 },
  };
}

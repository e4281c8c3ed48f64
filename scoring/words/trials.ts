import type { JointOptions } from '../../engine/index.ts';
import type { LineMeasure } from '../schema/profile.ts';
import { DROPPED } from '../schema/proved.ts';
import type { Change, Line } from '../schema/result.ts';
import { measureName, said, toeName, upper } from './names.ts';

type Kind = JointOptions['kind'];

/** A reading that is not within, as it is said. */
export interface Fault extends Pick<Line, 'side' | 'sense' | 'limit' | 'plusMinus' | 'reading' | 'y_mm'> {
  measure: LineMeasure | typeof DROPPED;
  unit: string;
}

/** Every sentence about what was tried. Numbers come from the re-run. */
export const proofSentences = {
  metalFirst: (p: { laid_mm2: number; holds_mm2: number }): string =>
    `You're laying ${said(p.laid_mm2, 0)} mm² and the joint holds ${said(p.holds_mm2, 0)}: that comes before any skill.`,

  fault: (f: Fault, kind: Kind): string =>
    f.measure === DROPPED
      ? `${said(f.reading, 2)} g dropped out of the joint.`
      : `${upper(measureName(f.measure, f.side, kind))} ${number(f.reading, f)} at ${said(f.y_mm, 0)} mm; ${f.sense} ${number(f.limit, f)}, give or take ${number(f.plusMinus, f)}.`,

  proved: (change: Change, before: Fault, after: Fault, kind: Kind): string =>
    `Welded again with your own hand and one thing changed: ${changeSaid(change, kind)}. ${upper(
      before.measure === DROPPED ? 'metal lost' : measureName(before.measure, before.side, kind),
    )} goes from ${number(before.reading, before)} to ${number(after.reading, after)}, and no other line goes outside; it holds for a slightly different go, too.`,

  notMended: (tried: number, nearest: { change: Change; after: Fault } | null, drill: string, kind: Kind): string =>
    `No single change mends it: ${tried === 0 ? 'none that can be made to this hand' : `${tried} tried`}${
      nearest === null
        ? ''
        : `, nearest was ${changeSaid(nearest.change, kind)} (${number(nearest.after.reading, nearest.after)})`
    }. The drill for it: ${drill}.`,
};

export type ProofSentences = typeof proofSentences;

/** A change as it would be said at the bench. */
export function changeSaid({ what, by }: Change, kind: Kind): string {
  const size = said(Math.abs(by), 2);
  const up = by > 0;
  switch (what) {
    case 'pauseA_s':
    case 'pauseB_s':
      return `wait ${size} s ${up ? 'longer' : 'less'} at the ${toeName(kind, what === 'pauseA_s' ? 'A' : 'B')}`;
    case 'width_mm':
      return `weave ${size} mm ${up ? 'wider' : 'narrower'}`;
    case 'lead_mm':
      return up ? `reach ${size} mm farther ahead where you cross the root` : `reach ${size} mm less ahead at the root`;
    case 'centre_mm':
      return `shift the weave ${size} mm to the ${up ? 'right' : 'left'}`;
    case 'travel_mmps':
      return `climb ${size} mm/s ${up ? 'faster' : 'slower'}`;
    case 'tipToWork_mm':
      return `hold the tip ${size} mm ${up ? 'farther out' : 'closer'}`;
    case 'workAngle_deg':
      return `lean the torch ${size}° ${up ? 'away from' : 'towards'} the ${kind === 'lap' ? 'back' : 'right'} plate`;
    case 'travelAngle_deg':
      return `push ${size}° ${up ? 'more' : 'less'}`;
    case 'volts_V':
      return `${size} V ${up ? 'more' : 'less'}`;
    case 'feed_mpmin':
      return `${size} m/min ${up ? 'more' : 'less'} wire`;
    case 'cyclesPerSecond':
      return `${size} cycles a second ${up ? 'quicker' : 'slower'}`;
  }
}

function number(x: number, f: Fault): string {
  const digits = f.unit === 'in' ? 3 : f.unit === 'mm' || f.unit === 'g' ? 2 : 0;
  return `${said(x, digits)}${f.unit === 'deg' ? '°' : ` ${f.unit}`}`;
}

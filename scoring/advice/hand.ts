import type { Change } from '../schema/result.ts';
import { causeOf } from './cause.ts';
import { type Facts, isWeave } from './facts.ts';
import type { Found } from './found.ts';
import type { Off } from './off.ts';
import { worstSeen } from './seen.ts';

/** A way in which the hand was off, as advice: what was asked is what to go back to. */
export function handFault(f: Facts, off: Off): Found {
  const seen = worstSeen(f);
  const y = off.y_mm ?? (seen?.what === 'line' ? seen.y_mm : null);
  const { t_s, cycle } = y === null ? { t_s: null, cycle: null } : causeOf(f, y, off.side ?? 'root');
  return {
    code: off.code,
    data: {
      joint: f.joint.kind,
      side: off.side,
      is: off.is,
      asked: off.asked,
      stretch: off.stretch,
      weave: isWeave(f),
      seen,
      verdict: f.verdict,
    },
    y_mm: y,
    t_s: off.t_s ?? t_s,
    cycle: off.t_s === null ? cycle : null,
    side: off.side,
    change: wayBack(off),
  };
}

/** The change that goes back to what was asked; null where no one change does. */
function wayBack({ code, is, asked, side }: Off): Change | null {
  const by = (what: Change['what'], grain: number): Change | null => {
    const way = Math.round((asked - is) / grain) * grain;
    return way === 0 ? null : { what, by: Math.round(way * 100) / 100 };
  };
  switch (code) {
    case 'arc-back-on-puddle':
      return by('lead_mm', 0.5);
    case 'tip-too-far':
    case 'tip-too-close':
      return by('tipToWork_mm', 1);
    case 'pushed-far':
    case 'dragged':
      return by('travelAngle_deg', 1);
    case 'work-angle-off':
      return by('workAngle_deg', 1);
    case 'too-narrow':
    case 'too-wide':
      return by('width_mm', 0.5);
    case 'to-one-side':
      return by('centre_mm', 0.5);
    case 'toe-left-early':
    case 'waited-long':
      return side === null ? null : by(side === 'A' ? 'pauseA_s' : 'pauseB_s', 0.05);
    case 'climbed-fast':
    case 'climbed-slowly':
      return by('travel_mmps', 0.1);
    default:
      return null;
  }
}

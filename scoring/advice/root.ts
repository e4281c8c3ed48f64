import { causeOf } from './cause.ts';
import { broken, type Facts, isWeave } from './facts.ts';
import type { Found } from './found.ts';
import { worstSeen } from './seen.ts';

/** Fewer crossings than this on the front of the puddle, and the arc is what to talk about. */
const MOSTLY = 0.6;
/** A straight run has no toes to hold its aim against: the arc's own place on the puddle tells. */
export function straightArcBack(f: Facts): Found | null {
  const line = broken(f, 'root fusion');
  const band = f.exercise.target.lead_mm;
  const known = f.motion.crossings.filter((c) => c.lead_mm !== null);
  const back = known.filter((c) => c.lead_mm! < band.from);
  if (line === null || isWeave(f) || known.length === 0 || back.length <= (1 - MOSTLY) * known.length) return null;
  const at = back.map((c) => c.y_mm);
  return {
    code: 'arc-back-on-puddle',
    data: {
      joint: f.joint.kind,
      side: null,
      is: back.reduce((sum, c) => sum + c.lead_mm!, 0) / back.length,
      asked: 0,
      stretch: { from_mm: Math.min(...at), to_mm: Math.max(...at) },
      weave: false,
      seen: worstSeen(f),
      verdict: f.verdict,
    },
    ...causeOf(f, line.y_mm, 'root'),
    side: null,
    change: { what: 'lead_mm', by: 0.5 },
  };
}

/** The root in doubt and nothing else to speak of. */
export function rootJustShort(f: Facts): Found | null {
  const line = broken(f, 'root fusion');
  if (line === null || line.verdict !== 'too close to call') return null;
  return {
    code: 'root-just-short',
    data: { root_mm: line.reading, plusMinus_mm: line.plusMinus, y_mm: line.y_mm },
    ...causeOf(f, line.y_mm, 'root'),
    side: null,
    change: null,
  };
}

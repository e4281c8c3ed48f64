import { worse } from '../lines/compare.ts';
import type { Line, Reason, Verdict } from '../schema/result.ts';

/** The worst line decides; a reason against judging goes before all lines. The hand has no say. */
export function verdictOf(lines: readonly Line[], reasons: readonly Reason[]): Verdict {
  if (reasons.length > 0 || lines.length === 0) return 'no verdict';
  return lines.map((l) => l.verdict).reduce(worse);
}

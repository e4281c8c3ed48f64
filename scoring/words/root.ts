import type { Result } from '../schema/result.ts';

/** A share as a whole percentage that never says all of something, or none of it, where that is not so. */
export function wholePercent(share: number): number {
  if (share <= 0 || share >= 1) return share <= 0 ? 0 : 100;
  return Math.min(99, Math.max(1, Math.round(100 * share)));
}

/** The bead was laid from the top down: the model is set by climbing welds, and what it reads of such a root is shown as not judged. */
export function weldedDown({ reasons }: Pick<Result, 'reasons'>): boolean {
  return reasons.some((r) => r.code === 'vertical-down');
}

/** How much of the root is tied in, of what length, as the papers say it; null where there is no bead to say it of. */
export function tiedInSaid(r: Pick<Result, 'bead' | 'reasons'>): string | null {
  const { rootFusedShare, bare_mm } = r.bead;
  if (rootFusedShare === null) return null;
  if (weldedDown(r)) return 'root not judged: welded downwards';
  const percent = wholePercent(rootFusedShare);
  if (bare_mm.length === 0) return `tied in at the root over ${percent} % of the judged length`;
  return `tied in at the root over ${percent} % of the weld there is; ${bare_mm.length} mm of the judged length are bare`;
}

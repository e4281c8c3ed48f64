import { tiedIn } from '../measures/bead/survey.ts';
import { plusMinus } from '../measures/precision.ts';
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

/** Shares of the heights that carry metal: tied in for sure, and too close to tell; null where there is no bead. */
export function tiedInShares({ bead, lines }: Pick<Result, 'bead' | 'lines'>): { sure: number; doubt: number } | null {
  const { stations } = bead;
  if (stations.length === 0) return null;
  const pm = lines.find((l) => l.measure === 'root fusion')?.plusMinus ?? plusMinus['root fusion'].value;
  const doubt = stations.filter((s) => tiedIn(s.rootFusion_mm, pm) === 'in doubt').length;
  const sure = stations.filter((s) => s.rootFused && tiedIn(s.rootFusion_mm, pm) === 'tied in').length;
  return { sure: sure / stations.length, doubt: doubt / stations.length };
}

/** How much of the root is tied in, of what length, as the papers say it; null where there is no bead to say it of. */
export function tiedInSaid(r: Pick<Result, 'bead' | 'reasons' | 'lines'>): string | null {
  const shares = tiedInShares(r);
  const { bare_mm } = r.bead;
  if (shares === null) return null;
  if (weldedDown(r)) return 'root not judged: welded downwards';
  const percent = wholePercent(shares.sure);
  const doubt = shares.doubt === 0 ? '' : `, in doubt over ${wholePercent(shares.doubt)} %`;
  if (bare_mm.length === 0) return `tied in at the root over ${percent} % of the judged length${doubt}`;
  return `tied in at the root over ${percent} % of the weld there is${doubt}; ${bare_mm.length} mm of the judged length are bare`;
}

/** One tick of heat after the arc has had its turn: potential, conduction, faying face, losses. */
import { conductFaying } from './faying.ts';
import type { Heated } from './heated.ts';
import { LOSS_INTERVAL, lose } from './losses.ts';
import { refreshFlags } from './state.ts';

export function tickHeat(s: Heated): void {
  const { heat, plan } = s;
  if (heat.flagsStale) refreshFlags(heat);
  heat.kernel.potential(0, plan.ny);
  heat.kernel.conduct(0, plan.ny);
  conductFaying(s);
  if (s.tick % LOSS_INTERVAL === 0) lose(s);
}

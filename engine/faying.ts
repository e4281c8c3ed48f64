/** Heat across the faying face: gap conductance until both plates there have melted together, then like solid metal. */
import type { Heated } from './heated.ts';
import { LEAST_FILL, PAD } from './kernel/layout.ts';
import { DENSITY_GPMM3, lookup } from './material.ts';

export function conductFaying(s: Heated): void {
  const { plan, heat, cal, dt } = s;
  const { H, fill, peak, potential, layout, table } = heat;
  const { gaps, area_mm2 } = plan.rods;
  const { temperature, solidus_JPG: solidus } = table;
  const { from, to } = s.fine;
  for (const gap of gaps) {
    const first = gap.p * layout.stride + PAD;
    const across = gap.q * layout.stride + PAD - first;
    const massP = area_mm2[gap.p]! * DENSITY_GPMM3;
    const massQ = area_mm2[gap.q]! * DENSITY_GPMM3;
    const open = cal.gapConductance * gap.width_mm;
    for (let p = first + from; p < first + to; p++) {
      const q = p + across;
      const fillP = fill[p]!;
      const fillQ = fill[q]!;
      const through = Math.min(fillP, fillQ);
      if (through < LEAST_FILL) continue;
      const solid = gap.shape * (potential[q]! - potential[p]!);
      let flow = solid;
      if (!(peak[p]! > solidus && peak[q]! > solidus)) {
        const gapped = open * (lookup(temperature, H[q]!) - lookup(temperature, H[p]!));
        if (Math.abs(gapped) < Math.abs(solid)) flow = gapped;
      }
      const joules = dt * flow * through;
      H[p]! += joules / (massP * fillP);
      H[q]! -= joules / (massQ * fillQ);
    }
  }
}

/** Heat across the faying face: gap conductance until both plates there have melted together, then like solid metal. */
import type { Heated } from './heated.ts';
import { LEAST_FILL, PAD } from './kernel/layout.ts';
import { DENSITY_GPMM3, lookup } from './material.ts';

export function conductFaying(s: Heated): void {
  const { plan, heat, cal, dt } = s;
  const { H, fill, peak, potential, layout, table } = heat;
  const { gaps, area_mm2 } = plan.rods;
  const solidus = table.solidus_JPG;
  for (const gap of gaps) {
    const p = gap.p * layout.stride + PAD;
    const q = gap.q * layout.stride + PAD;
    const massP = area_mm2[gap.p]! * DENSITY_GPMM3;
    const massQ = area_mm2[gap.q]! * DENSITY_GPMM3;
    for (let j = s.fine.from; j < s.fine.to; j++) {
      const solid = gap.shape * (potential[q + j]! - potential[p + j]!);
      let flow = solid;
      if (!(peak[p + j]! > solidus && peak[q + j]! > solidus)) {
        const across =
          cal.gapConductance *
          gap.width_mm *
          (lookup(table.temperature, H[q + j]!) - lookup(table.temperature, H[p + j]!));
        if (Math.abs(across) < Math.abs(solid)) flow = across;
      }
      const fillP = fill[p + j]!;
      const fillQ = fill[q + j]!;
      const through = Math.min(fillP, fillQ);
      if (through < LEAST_FILL) continue;
      H[p + j]! += (dt * flow * through) / (massP * fillP);
      H[q + j]! -= (dt * flow * through) / (massQ * fillQ);
    }
  }
}

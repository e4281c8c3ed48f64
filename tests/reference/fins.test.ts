/** Far field: heat that has run out of the fine cells into the plates' wide rods. */
import { describe, expect, it } from 'vitest';
import { layColdPiece } from '../../engine/cold-piece.ts';
import { PART } from '../../engine/grid/rods.ts';
import { tickHeat } from '../../engine/heat/step.ts';
import { defaultJoint, defaultProcess } from '../../engine/index.ts';
import { PAD } from '../../engine/kernel/layout.ts';
import { enthalpyAt, lookup } from '../../engine/physics/steel.ts';

const HOT_C = 1400;
const HOT_RADIUS_MM = 5;
const AFTER_S = 5;
const UP_MM = 20;

/** Temperature `UP_MM` up the standing plate, between rods; logarithmic, because far from a source warmth falls off like an exponential. */
function farField(cell_mm: number): number {
  const s = layColdPiece(
    {
      joint: { ...defaultJoint(), plateA_mm: 8, plateB_mm: 8, length_mm: 20, sink_WpmmK: 0 },
      process: defaultProcess(),
      cell_mm,
    },
    { fineEverywhere: true, calibration: { emissivity: 0, convection: 0 } },
  );
  const { rods, ny } = s.plan;
  const { H, layout, table } = s.heat;
  const hot = enthalpyAt(table, HOT_C);
  for (let r = 0; r < rods.count; r++)
    if (Math.hypot(rods.a_mm[r]!, rods.b_mm[r]!) < HOT_RADIUS_MM)
      H.fill(hot, r * layout.stride, (r + 1) * layout.stride);
  for (const end = Math.round(AFTER_S / s.dt); s.tick < end; ) {
    s.tick++;
    tickHeat(s);
  }
  const rows = new Map<number, { sum: number; count: number }>();
  for (let r = 0; r < rods.count; r++) {
    if (rods.part[r] !== PART.B) continue;
    const row = rows.get(rods.b_mm[r]!) ?? { sum: 0, count: 0 };
    row.sum += lookup(table.temperature, H[r * layout.stride + PAD + (ny >> 1)]!);
    row.count++;
    rows.set(rods.b_mm[r]!, row);
  }
  const line = [...rows].map(([b, row]) => ({ b, rise: row.sum / row.count - 20 })).sort((p, q) => p.b - q.b);
  const above = line.findIndex((p) => p.b >= UP_MM);
  const [p, q] = [line[above - 1]!, line[above]!];
  return 20 + p.rise * (q.rise / p.rise) ** ((UP_MM - p.b) / (q.b - p.b));
}

describe('tee of 8 mm plates, its corner set to 1400 °C, insulated', () => {
  // A finite-element solution of the same section made for this check gives 82 °C.
  it.each([1, 0.75, 0.6, 0.5])('20 mm up the standing plate after 5 s, cells of %d mm', (cell_mm) => {
    const got = farField(cell_mm);
    expect(Math.abs(got - 82)).toBeLessThan(0.05 * (82 - 20));
  });
});

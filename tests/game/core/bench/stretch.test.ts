import { beforeAll, describe, expect, it } from 'vitest';
import { createSimulation, type Pose, poses, type Recording, type Simulation } from '../../../../engine/index.ts';
import { type Lay, weldStretch } from '../../../../game/core/bench/stretch.ts';
import { applyChange, readSection } from '../../../../scoring/index.ts';
import { weld } from '../../../scoring/welds.ts';

const CUT_MM = 26;
const recording = weld({
  joint: { length_mm: 34, plateA_mm: 5, plateB_mm: 5 },
  process: { feed_mpmin: 5, volts_V: 19 },
  weave: { travel_mmps: 3, shelf_s: 0.3, length_mm: 30 },
});
const list: Pose[] = [...poses(recording as unknown as Recording)];

/** The attempt welded once with how it lay each half second, as the bench keeps it. */
function laid(of: Recording): { piece: Simulation; lays: Lay[] } {
  const piece = createSimulation(of.simulation);
  const lays: Lay[] = [];
  for (const [n, pose] of [...poses(of)].entries()) {
    if (n % 50 === 0) lays.push({ step: n, state: piece.snapshot() });
    piece.step(pose);
  }
  return { piece, lays };
}

describe('the stretch about a cut, welded anew', () => {
  let own: ReturnType<typeof laid>;
  const legs = (piece: Simulation) => {
    const { station } = readSection(piece.section(CUT_MM))!;
    return [station.legA_mm, station.legB_mm, station.rootFusion_mm];
  };

  beforeAll(() => {
    own = laid(recording as unknown as Recording);
  });

  it('comes to the cut of the whole where nothing was changed', () => {
    const piece = weldStretch(list, own.lays, recording as unknown as Recording, CUT_MM)!;
    for (const [i, reading] of legs(piece).entries())
      expect(Math.abs(reading - legs(own.piece)[i]!)).toBeLessThan(0.15);
  });

  it('goes where the whole goes with a change, at a part of the work', () => {
    const changed = applyChange(recording, { what: 'feed_mpmin', by: 1 }) as unknown as Recording;
    const piece = weldStretch(list, own.lays, changed, CUT_MM)!;
    const whole = laid(changed).piece;
    const gained = legs(whole)[0]! - legs(own.piece)[0]!;
    expect(gained).toBeGreaterThan(0.1);
    expect(Math.abs(legs(piece)[0]! - legs(whole)[0]!)).toBeLessThan(0.6 * gained);
  });

  it('is nothing where the arc never came', () => {
    expect(weldStretch(list, own.lays, recording as unknown as Recording, 33.9)).toBeNull();
  });
});

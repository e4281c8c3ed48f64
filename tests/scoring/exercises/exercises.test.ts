import { describe, expect, it } from 'vitest';
import { noFaults, weaveHand } from '../../../engine/index.ts';
import { exercises } from '../../../scoring/index.ts';
import { share } from '../../support/share.ts';
import { judge, ROBOT, record } from '../welds.ts';

describe('a ready exercise passes its own lines for certain as it is shown', () => {
  it.each(share(exercises, 1).map((e) => [e.name, e] as const))('%s', (name, e) => {
    const recording = record(
      {
        simulation: { joint: e.joint, process: e.process, cell_mm: 0.75 },
        origin: { kind: 'robot', weave: e.demonstration, faults: noFaults(1) },
        device: ROBOT,
        aids: { pacer: false, beat: false, toeMarks: false, plainView: false, handRig: null },
        exercise: e,
      },
      weaveHand(e.demonstration, noFaults(1)),
    );
    const r = judge(recording);
    expect(r.reasons).toEqual([]);
    // The machine that somebody turned down is the one exercise whose settings are to be mended first.
    if (name === 'settings-by-ear') expect(r.verdict).toBe('outside');
    else {
      expect(r.lines.filter((l) => l.verdict !== 'within').map((l) => `${l.measure} ${l.reading}`)).toEqual([]);
      expect(r.verdict).toBe('within');
      // A demonstration shows how an end is made, too.
      expect(r.bead.stops.at(-1)!.filled).toBe(true);
      expect(r.bead.start!.lump_mm).toBeLessThanOrEqual(r.bead.start!.plusMinus_mm);
    }
    expect(r.exercise!.ready).toBe(true);
  });
});

import { describe, expect, it } from 'vitest';
import { defaultWeave, handOfAmount, noFaults, type Pose, type Recording, weaveHand } from '../../../engine/index.ts';
import { checkRecording, exerciseNamed } from '../../../scoring/index.ts';
import type { NoteCode } from '../../../scoring/schema/result.ts';
import { findingsIn } from '../../../scoring/verdict/findings.ts';
import { MOUSE, weld } from '../welds.ts';

const exercise = exerciseNamed('tee-inverted-v')!;
const shown = { ...defaultWeave(), ...exercise.demonstration };
/** A short honest weld whose poses are put in place of: findings are about the file, not the bead. */
const honest = weld({ joint: { length_mm: 30 }, weave: { length_mm: 3 }, device: MOUSE });

function file(poses: readonly Pose[], change: (r: Recording) => void = () => undefined) {
  const r = structuredClone(honest) as unknown as Recording;
  r.poses = {
    u: poses.map((p) => Math.round(100 * p.u_mm) || 0),
    y: poses.map((p) => Math.round(100 * p.y_mm) || 0),
    tip: poses.map(() => 1200),
    work: poses.map(() => 450),
    travel: poses.map(() => 80),
    trigger: poses.map((p) => (p.trigger ? 1 : 0)),
  };
  change(r);
  return checkRecording(JSON.parse(JSON.stringify(r)), 'file');
}

const hand = [...weaveHand(shown, handOfAmount(3, 0.4))];
const codes = (r: ReturnType<typeof file>): NoteCode[] => findingsIn(r, exercise).map((f) => f.code);

describe('what a file says against itself', () => {
  it('is nothing for an honest hand', () => {
    expect(codes(file(hand))).toEqual([]);
  });

  const cases: [NoteCode, ReturnType<typeof file>][] = [
    ['robot-left-in-origin', file(hand, (r) => (r.origin = { kind: 'hand', faults: noFaults() }))],
    ['unmeasured-varies', file(hand, (r) => (r.poses.tip = r.poses.tip.map((t, n) => t + (n % 200))))],
    ['no-check-number', file(hand, (r) => (r.stateHash = null))],
    ['study-cell', file(hand, (r) => (r.simulation.cell_mm = 1))],
    ['follows-demonstration', file([...weaveHand(shown, { ...noFaults(3), tremor_mm: 0.1, lag_s: 0.03 })])],
    ['follows-demonstration', file([...weaveHand(shown, noFaults())].map((p) => ({ ...p, u_mm: 0.4 - p.u_mm })))],
    ['machine-beat', file([...weaveHand({ ...shown, width_mm: 4, cyclesPerSecond: 0.8 }, noFaults())])],
  ];
  it.each(cases)('%s', (code, recording) => {
    expect(codes(recording)).toContain(code);
  });

  it('does not take a steady hand for the demonstration (hands of 0.25, seeds 1 to 12)', () => {
    for (let seed = 1; seed <= 12; seed++)
      expect(codes(file([...weaveHand(shown, handOfAmount(seed, 0.25))]))).toEqual([]);
  });
});

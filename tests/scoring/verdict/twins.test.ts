/** Near-twins by distance: what a copier does to a file is found, what another go of the same hand does is not. */
import { describe, expect, it } from 'vitest';
import { createRandom, defaultWeave, handOfAmount, noFaults, type Pose, weaveHand } from '../../../engine/index.ts';
import { type MotionPath, motionPath } from '../../../scoring/verdict/motion-path.ts';
import { sameRhythm } from '../../../scoring/verdict/rhythm.ts';
import { copyOf, type Twin, twinOf } from '../../../scoring/verdict/twins.ts';

const weave = { ...defaultWeave(), length_mm: 70 };
const hand = (seed: number, amount = 0.35): Pose[] => [...weaveHand(weave, handOfAmount(seed, amount))];

function path(poses: readonly Pose[]): MotionPath {
  return motionPath({
    u: poses.map((p) => Math.round(100 * p.u_mm)),
    y: poses.map((p) => Math.round(100 * p.y_mm)),
    trigger: poses.map((p) => (p.trigger ? 1 : 0)),
  });
}

const seen = (poses: readonly Pose[], other: readonly Pose[]) => twinOf(path(poses), path(other));

describe('near-twins (hands of seeds 1 to 30)', () => {
  const original = hand(1);

  const copies: [string, Pose[], Partial<Twin>][] = [
    ['the same poses', hand(1), { kind: 'whole', mirrored: false }],
    ['one quantum off', original.map((p, n) => ({ ...p, u_mm: p.u_mm + (n % 2 ? 0.01 : 0) })), { kind: 'whole' }],
    ['moved up and aside', original.map((p) => ({ ...p, u_mm: p.u_mm + 0.7, y_mm: p.y_mm + 3 })), { kind: 'whole' }],
    ['mirrored', original.map((p) => ({ ...p, u_mm: -p.u_mm })), { kind: 'whole', mirrored: true }],
    [
      'a second later',
      [...original.slice(0, 1), ...Array.from({ length: 100 }, () => original[0]!), ...original],
      { kind: 'whole' },
    ],
    ['cut short at both ends', original.slice(150, -500), { kind: 'whole' }],
    [
      'spliced into another hand',
      [...hand(2).slice(0, 1200), ...original.slice(1200, 2400), ...hand(2).slice(2400)],
      { kind: 'stretch' },
    ],
  ];
  it.each(copies)('are found: %s', (_name, poses, what) => {
    expect(seen(original, poses)).toMatchObject(what);
  });

  it('are found under noise of 0.15 mm', () => {
    const random = createRandom(5);
    const noisy = original.map((p) => ({
      ...p,
      u_mm: p.u_mm + 0.15 * random.normal(),
      y_mm: p.y_mm + 0.15 * random.normal(),
    }));
    expect(seen(original, noisy)).toMatchObject({ kind: 'whole' });
  });

  it('say where and by how much', () => {
    const moved = original.map((p) => ({ ...p, u_mm: 0.5 - p.u_mm, y_mm: p.y_mm + 2 }));
    const twin = seen(original, moved)!;
    expect(twin.apart_mm).toBeLessThan(0.02);
    expect(twin.moved.y_mm).toBeCloseTo(2, 1);
    expect(twin.mirrored).toBe(true);
  });

  it('are not seen in other goes of the same kind of hand, at the same weave', () => {
    const hands = Array.from({ length: 30 }, (_, n) => path(hand(n + 1, 0.2 + 0.02 * n)));
    const taken: string[] = [];
    hands.forEach((a, i) => {
      hands.forEach((b, k) => {
        if (i < k && twinOf(a, b) !== null) taken.push(`${i + 1} and ${k + 1}`);
      });
    });
    expect(taken).toEqual([]);
  });
});

/** At another tempo, the places between two poses put in between. */
function inTime(poses: readonly Pose[], by: number): Pose[] {
  return Array.from({ length: Math.floor((poses.length - 1) * by) }, (_, i) => {
    const at = i / by;
    const a = poses[Math.floor(at)]!;
    const b = poses[Math.floor(at) + 1]!;
    const share = at - Math.floor(at);
    return { ...a, u_mm: a.u_mm + share * (b.u_mm - a.u_mm), y_mm: a.y_mm + share * (b.y_mm - a.y_mm) };
  });
}

describe('one rhythm (hands of seeds 1 to 60)', () => {
  const original = hand(1);

  it.each([0.8, 0.93, 1.08, 1.25])('is found in motion stretched in time, and by how much: %d times', (by) => {
    const copy = copyOf(path(original), path(inTime(original, by)));
    if (copy?.kind !== 'rhythm') throw new Error(`found ${copy?.kind}`);
    expect(copy.alike).toBeGreaterThan(0.97);
    expect(copy.stretched).toBeCloseTo(by, 2);
  });

  it('is found in motion that was widened, mirrored and made to drift, and begun later', () => {
    const changed = original.slice(300).map((p, n) => ({ ...p, u_mm: -1.3 * p.u_mm + n / 3000 }));
    expect(seen(original, changed)).toBeNull();
    expect(copyOf(path(original), path(changed))).toMatchObject({ kind: 'rhythm' });
  });

  it('is nobody else’s, however steady, and not that of a machine, which has none', () => {
    const hands = Array.from({ length: 60 }, (_, n) => path(hand(n + 1, 0.1 + 0.015 * n)));
    const robot = path([...weaveHand(weave, noFaults(1))]);
    const taken: string[] = [];
    [robot, ...hands].forEach((a, i, all) => {
      for (let k = 0; k < i; k++) if (sameRhythm(all[k]!.rhythm, a.rhythm) !== null) taken.push(`${k} and ${i}`);
    });
    expect(taken).toEqual([]);
    expect(sameRhythm(robot.rhythm, path(inTime([...weaveHand(weave, noFaults(1))], 1.1)).rhythm)).toBeNull();
  });

  it('is not looked for in a few swings', () => {
    const few = original.slice(0, 900);
    expect(sameRhythm(path(few).rhythm, path(inTime(few, 1.1)).rhythm)).toBeNull();
  });
});

import { createRandom, defaultWeave, handOfAmount, type Pose, weaveHand } from '../../engine/index.ts';
import { classSheet, type Scored, scoreBytes } from '../../scoring/node/index.ts';
import { motionPath, pathText } from '../../scoring/verdict/motion-path.ts';
import { byMouse, weld } from '../scoring/welds.ts';
import type { Attack, Try } from './attack.ts';

const hand = (seed: number): Pose[] => [...weaveHand({ ...defaultWeave(), length_mm: 60 }, handOfAmount(seed, 0.3))];

const COPIES: Record<string, (poses: Pose[], by: () => number, other: Pose[]) => Pose[]> = {
  'as it is': (poses) => poses,
  'a quantum off': (poses) => poses.map((p, i) => ({ ...p, u_mm: p.u_mm + (i % 3 === 0 ? 0.01 : 0) })),
  moved: (poses, by) => {
    const [u, y] = [2 * by() - 1, 6 * by() - 3];
    return poses.map((p) => ({ ...p, u_mm: p.u_mm + u, y_mm: p.y_mm + y }));
  },
  mirrored: (poses) => poses.map((p) => ({ ...p, u_mm: -p.u_mm })),
  'moved and mirrored': (poses, by) => {
    const u = by();
    return poses.map((p) => ({ ...p, u_mm: u - p.u_mm, y_mm: p.y_mm + 1 }));
  },
  later: (poses, by) => [...Array.from({ length: Math.floor(20 + 200 * by()) }, () => poses[0]!), ...poses],
  'cut short': (poses, by) => poses.slice(Math.floor(150 * by()), poses.length - Math.floor(400 * by())),
  'with noise': (poses, by) =>
    poses.map((p) => ({ ...p, u_mm: p.u_mm + 0.3 * (by() - 0.5), y_mm: p.y_mm + 0.3 * (by() - 0.5) })),
  'stretched in time': (poses, by) => inTime(poses, 0.85 + 0.4 * by()),
  'stretched and mirrored': (poses, by) => inTime(poses, 1.05 + 0.2 * by()).map((p) => ({ ...p, u_mm: -p.u_mm })),
  'widened and drifting': (poses, by) => {
    const [wider, drift] = [1.1 + 0.2 * by(), 2 * by() - 1];
    return poses.map((p, i) => ({ ...p, u_mm: wider * p.u_mm + (drift * i) / poses.length }));
  },
  spliced: (poses, by, other) => {
    const from = Math.floor(200 + 400 * by());
    return [...other.slice(0, from), ...poses.slice(from, from + 1200), ...other.slice(from + 1200)];
  },
};
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

const NAMES = Object.keys(COPIES);

let row: Scored | null = null;
function rowOf(who: string, poses: readonly Pose[], n: number): Scored {
  if (row === null) {
    const short = weld({ joint: { length_mm: 30 }, weave: { length_mm: 3, shelf_s: 0 }, ...byMouse(7) });
    row = scoreBytes(new TextEncoder().encode(JSON.stringify(short)), 'a.json', { exercise: null, profile: null });
  }
  const columns = {
    u: poses.map((p) => Math.round(100 * p.u_mm)),
    y: poses.map((p) => Math.round(100 * p.y_mm)),
    trigger: poses.map((p) => (p.trigger ? 1 : 0)),
  };
  const file = `2026-03-14_b1_${who}_free_01.json`;
  return {
    ...row,
    file,
    hand: String(n).padStart(64, '0'),
    motion: pathText(motionPath(columns)),
    result: { ...row.result, notes: [], reasons: [] },
  };
}

/** Somebody's motion handed in under another name is found; other hands at the same weave are not. */
export const copies: Attack = {
  name: "another's motion",
  says: "a hand's motion as it is, moved, mirrored, later, cut short, with noise of 0.15 mm, stretched in time, widened and made to drift, or 12 s of it spliced into another hand, under a second name; neither counts, while a third hand at the same weave does",
  share: 18,
  whole: 30 * NAMES.length,
  tries: (n): Try => {
    const random = createRandom(n + 1);
    const by = (): number => random.next();
    const [own, third, other] = [hand(3 * n + 1), hand(3 * n + 2), hand(3 * n + 3)];
    const name = NAMES[n % NAMES.length]!;
    const rows = [rowOf('ines', own, 1), rowOf('tom', COPIES[name]!(own, by, other), 2), rowOf('mara', third, 3)];
    const sheet = classSheet({ scored: rows, bad: [] }, new Set([row!.exercise!]));
    const left = sheet.notCounted
      .map((e) => e.name.trainee)
      .sort()
      .join(', ');
    return {
      inputs: 1,
      faults: left === 'ines, tom' ? [] : [`${name}: not counted are ${left === '' ? 'none' : left}`],
    };
  },
};

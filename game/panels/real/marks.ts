import type { PictureSpot } from '../../../scoring/index.ts';

/** One thing to be marked. */
export interface Step {
  id: string;
  name: string;
  hint: string;
  /** How many points: just one, two for a length, or as many as wanted. */
  points: 1 | 2 | 'many';
  /** Fewest points it takes; 0: it may be left out. */
  least: number;
  /** How its marks are drawn. */
  shape: 'cross' | 'ring' | 'dot';
  /** Its points are joined by a line. */
  joined: boolean;
}

/** Points set so far, by step. */
export type MarkSet = Readonly<Record<string, readonly PictureSpot[]>>;

export interface Chosen {
  step: string;
  index: number;
}

export function pointsOf(marks: MarkSet, step: string): readonly PictureSpot[] {
  return marks[step] ?? [];
}

export function missing(steps: readonly Step[], marks: MarkSet): Step[] {
  return steps.filter((step) => pointsOf(marks, step.id).length < step.least);
}

/** Sets a point of a step: a further one where it takes more, otherwise in place of its last. */
export function setPoint(marks: MarkSet, step: Step, at: PictureSpot): { marks: MarkSet; chosen: Chosen } {
  const own = pointsOf(marks, step.id);
  const most = step.points === 'many' ? Number.POSITIVE_INFINITY : step.points;
  const kept = own.length < most ? own : own.slice(0, most - 1);
  return { marks: { ...marks, [step.id]: [...kept, at] }, chosen: { step: step.id, index: kept.length } };
}

export function movePoint(marks: MarkSet, chosen: Chosen, to: PictureSpot): MarkSet {
  const own = pointsOf(marks, chosen.step);
  return { ...marks, [chosen.step]: own.map((spot, i) => (i === chosen.index ? to : spot)) };
}

export function removePoint(marks: MarkSet, chosen: Chosen): MarkSet {
  const own = pointsOf(marks, chosen.step);
  return { ...marks, [chosen.step]: own.filter((_, i) => i !== chosen.index) };
}

/** The step to go on with after a point was set: the same while it wants more, otherwise the next that is not complete. */
export function stepAfter(steps: readonly Step[], marks: MarkSet, id: string): string {
  const at = steps.findIndex((step) => step.id === id);
  const step = steps[at];
  if (step.points === 'many' || pointsOf(marks, id).length < step.points) return id;
  const next = steps.slice(at + 1).find((s) => pointsOf(marks, s.id).length < Math.max(1, s.least));
  return next?.id ?? id;
}

/** Points in the order they lie along a line, for joining them: nearest neighbours from the end farthest from the middle. */
export function inLine(points: readonly PictureSpot[]): PictureSpot[] {
  if (points.length < 3) return [...points];
  const middle = {
    x: points.reduce((sum, p) => sum + p.x, 0) / points.length,
    y: points.reduce((sum, p) => sum + p.y, 0) / points.length,
  };
  const left = [...points];
  const out: PictureSpot[] = [];
  let at = left.reduce((far, p) => (apart(p, middle) > apart(far, middle) ? p : far));
  for (;;) {
    out.push(at);
    left.splice(left.indexOf(at), 1);
    if (left.length === 0) return out;
    const from = at;
    at = left.reduce((near, p) => (apart(p, from) < apart(near, from) ? p : near));
  }
}

export function apart(p: PictureSpot, q: PictureSpot): number {
  return Math.hypot(p.x - q.x, p.y - q.y);
}

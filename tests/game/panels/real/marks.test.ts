import { describe, expect, it } from 'vitest';
import {
  inLine,
  type MarkSet,
  missing,
  movePoint,
  removePoint,
  setPoint,
  stepAfter,
} from '../../../../game/panels/real/marks.ts';
import { couponSteps, cutSteps } from '../../../../game/panels/real/steps.ts';

const steps = couponSteps('tee');
const step = (id: string) => steps.find((s) => s.id === id)!;
const at = (x: number, y = 0) => ({ x, y });

/** Sets points one after the other, each where the last one led. */
function walk(points: number): { marks: MarkSet; active: string } {
  let marks: MarkSet = {};
  let active = steps[0].id;
  for (let n = 0; n < points; n++) {
    ({ marks } = setPoint(marks, step(active), at(n)));
    active = stepAfter(steps, marks, active);
  }
  return { marks, active };
}

describe('marks on a picture', () => {
  it('lead from step to step: two for the scale, one each, and stay where as many are set as wanted', () => {
    expect(walk(0).active).toBe('scale');
    expect(walk(1).active).toBe('scale');
    expect(walk(2).active).toBe('root');
    expect(walk(5).active).toBe('toeB');
    expect(walk(7).active).toBe('face');
    expect(walk(12).active).toBe('face');
    expect(walk(12).marks.face?.length).toBe(5);
  });

  it('replace the last point of a step that is full', () => {
    let { marks } = setPoint({}, step('root'), at(1));
    ({ marks } = setPoint(marks, step('root'), at(2)));
    expect(marks.root).toEqual([at(2)]);
    for (const x of [1, 2, 3]) ({ marks } = setPoint(marks, step('scale'), at(x)));
    expect(marks.scale).toEqual([at(1), at(3)]);
  });

  it('are moved and taken away one by one', () => {
    const marks = { face: [at(1), at(2), at(3)] };
    expect(movePoint(marks, { step: 'face', index: 1 }, at(9)).face).toEqual([at(1), at(9), at(3)]);
    expect(removePoint(marks, { step: 'face', index: 0 }).face).toEqual([at(2), at(3)]);
  });

  it('are missing until the least is set; fusion and undercut of a coupon may be left out, fusion of one’s own cut not', () => {
    expect(missing(steps, walk(8).marks)).toEqual([]);
    expect(missing(steps, walk(3).marks).map((s) => s.id)).toEqual(['plateB', 'plateA', 'toeB', 'toeA', 'face']);
    expect(missing(cutSteps('lap'), { ...walk(8).marks }).map((s) => s.id)).toEqual(['fusionB', 'fusionA']);
  });

  it('are joined along their line in whatever order they were set', () => {
    const line = [0, 1, 2, 3, 4].map((x) => at(x, x * x));
    const mixed = [line[2], line[4], line[0], line[3], line[1]];
    const joined = inLine(mixed);
    expect([line, [...line].reverse()]).toContainEqual(joined);
  });
});

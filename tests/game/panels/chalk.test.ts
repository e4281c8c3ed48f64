import { describe, expect, it } from 'vitest';
import { begin, drawOn, pathOfStroke, type Stroke } from '../../../game/panels/chalk-strokes.ts';

describe('chalk', () => {
  it('draws from press to release, a tap is a dot, and a hand at rest adds nothing', () => {
    let strokes: readonly Stroke[] = begin([], { x: 0.1, y: 0.2 });
    expect(pathOfStroke(strokes[0]!)).toBe('M100.0 200.0h0.1');
    const still = drawOn(strokes, { x: 0.1004, y: 0.2 });
    expect(still).toBe(strokes);
    strokes = drawOn(drawOn(strokes, { x: 0.2, y: 0.2 }), { x: 0.2, y: 0.3 });
    expect(pathOfStroke(strokes[0]!)).toBe('M100.0 200.0L200.0 200.0L200.0 300.0');
    expect(drawOn([], { x: 0, y: 0 })).toEqual([]);
  });

  it('keeps the latest of too many strokes', () => {
    let strokes: Stroke[] = [];
    for (let i = 0; i < 500; i++) strokes = begin(strokes, { x: i / 1000, y: 0 });
    expect(strokes).toHaveLength(400);
    expect(strokes.at(-1)![0]!.x).toBe(0.499);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ArcLightFilter } from '../../../game/view/arcLight.ts';

const FRAME_S = 1 / 60;
/** WCAG 2.3.1: a flash is a pair of opposing changes of a tenth of the largest luminance or more. */
const CHANGE = 0.1;

/** Most flashes in any second of a light curve sampled each frame. */
function flashesPerSecond(light: readonly number[]): number {
  const turns: number[] = [];
  let from = light[0];
  let way = 0;
  for (const [i, x] of light.entries()) {
    if (way > 0 && x > from) from = x;
    if (way < 0 && x < from) from = x;
    if (way >= 0 && from - x >= CHANGE) {
      way = -1;
      turns.push(i);
      from = x;
    } else if (way <= 0 && x - from >= CHANGE) {
      way = 1;
      turns.push(i);
      from = x;
    }
  }
  let most = 0;
  for (const [i, start] of turns.entries()) {
    let n = 0;
    while (i + n < turns.length && turns[i + n] < start + 60) n += 1;
    most = Math.max(most, n);
  }
  return most / 2;
}

function run(arc: (frame: number) => boolean, seconds: number): number[] {
  const filter = new ArcLightFilter();
  const light: number[] = [];
  for (let n = 0; n < seconds * 60; n++) light.push(filter.step(arc(n), FRAME_S, false).light);
  return light;
}

describe('arc light', () => {
  it('counts flashes rightly', () => {
    const square = Array.from({ length: 120 }, (_, n) => (n % 10 < 5 ? 1 : 0));
    expect(flashesPerSecond(square)).toBe(6);
    expect(flashesPerSecond(new Array(120).fill(1))).toBe(0);
  });

  it('never flashes more than three times a second, whatever the arc does', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 30 }), { minLength: 20, maxLength: 80 }), (spells) => {
        const arc: boolean[] = [];
        for (const [i, frames] of spells.entries()) for (let n = 0; n < frames; n++) arc.push(i % 2 === 0);
        const light = run((n) => arc[n] ?? false, arc.length / 60);
        expect(flashesPerSecond(light)).toBeLessThanOrEqual(3);
      }),
      { seed: 5 },
    );
  });

  it('follows a steady arc and goes dark with the room after it', () => {
    const filter = new ArcLightFilter();
    for (let n = 0; n < 60; n++) filter.step(true, FRAME_S, false);
    expect(filter.step(true, FRAME_S, false).light).toBeGreaterThan(0.98);
    expect(filter.wantsDark).toBe(true);
    for (let n = 0; n < 300; n++) filter.step(false, FRAME_S, false);
    const end = filter.step(false, FRAME_S, false);
    expect(end.light).toBeLessThan(0.01);
    expect(end.dark).toBeLessThan(0.01);
    expect(filter.fading).toBe(false);
  });
});

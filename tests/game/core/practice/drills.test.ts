import { describe, expect, it } from 'vitest';
import { noFaults, weaveHand } from '../../../../engine/index.ts';
import type { TorchSample } from '../../../../game/core/hand/sample.ts';
import { Bandwidth } from '../../../../game/core/practice/bandwidth.ts';
import { exerciseNamed, type HandReading, handAlone } from '../../../../scoring/index.ts';
import { TestBench } from '../../support/test-bench.ts';

const tee = exerciseNamed('tee-inverted-v')!;

/** The demonstration as a path; `wide` times its width. */
function path(wide = 1): (t_s: number) => { u_mm: number; y_mm: number } {
  const poses = [...weaveHand(tee.demonstration, noFaults())];
  return (t_s) => {
    const { u_mm, y_mm } = poses[Math.min(poses.length - 1, Math.round(100 * t_s))]!;
    return { u_mm: wide * u_mm, y_mm };
  };
}

const of = (readings: readonly HandReading[], measure: HandReading['measure']): HandReading =>
  readings.find((r) => r.measure === measure)!;

describe('a drill without metal', () => {
  it('reads the hand live and after, strikes nothing, and is kept apart from attempts', async () => {
    const bench = new TestBench();
    bench.session.drill('pattern');
    expect(bench.state.drill.value?.phase).toBe('ready');
    bench.wait(0.1).press(0, 2).follow(path(), 8);
    expect(bench.state.drill.value?.phase).toBe('running');
    expect(bench.state.torchState.value).toBe('idle');
    expect(of(bench.state.drill.value!.readings, 'width').inside).toBe(true);
    bench.release();
    const done = bench.state.drill.value!;
    expect(done.phase).toBe('done');
    // What the demonstration itself asks for: 0.9 cycles a second, 5.5 mm, climbing at 2.7 mm/s.
    expect(of(done.readings, 'beat').is).toBeCloseTo(tee.demonstration.cyclesPerSecond, 1);
    expect(Math.abs(of(done.readings, 'width').is - tee.demonstration.width_mm)).toBeLessThan(0.4);
    expect(Math.abs(of(done.readings, 'climb').is - tee.demonstration.travel_mmps)).toBeLessThan(0.2);
    expect(done.readings.every((r) => r.inside !== false)).toBe(true);
    await bench.until(() => bench.state.practice.value.length === 1, 'the drill on the shelf');
    expect(bench.state.practice.value[0]).toMatchObject({ kind: 'drill', drill: 'pattern', exercise: tee.name });
    expect(bench.state.shelf.value).toEqual([]);
    expect(bench.state.finished.value).toBeNull();

    // Again, too wide; then too short to read.
    bench.wait(0.1).press(0, 2).follow(path(1.6), 8).release();
    expect(of(bench.state.drill.value!.readings, 'width').inside).toBe(false);
    bench.wait(0.1).press(0, 2).follow(path(), 1).release();
    expect(bench.state.drill.value?.phase).toBe('short');
    bench.session.drill(null);
    bench.wait(0.1).press(0, 2);
    expect(bench.state.torchState.value).toBe('welding');
  });

  it('reads a hand as an attempt’s is read: what the demonstration shows, and nothing of a hand at rest', () => {
    const readings = handAlone(weaveHand(tee.demonstration, noFaults()), tee);
    expect(of(readings, 'pause A').is).toBeGreaterThan(0.1);
    expect(of(readings, 'evenness').is).toBeLessThan(5);
    const rest = [...weaveHand(tee.demonstration, noFaults())].slice(0, 300).map((p) => ({ ...p, u_mm: 0, y_mm: 5 }));
    expect(handAlone(rest, tee).map((r) => r.measure)).not.toContain('beat');
  });
});

describe('guides by bandwidth', () => {
  const readings = (wide: number, from_s: number, seconds: number): TorchSample[] => {
    const at = path(wide);
    return Array.from({ length: Math.round(100 * seconds) }, (_, n) => ({
      at_ms: 1000 * from_s + 10 * n,
      ...at(from_s + n / 100),
      ...tee.hold,
      trigger: true,
    }));
  };
  const feed = (guides: Bandwidth, samples: readonly TorchSample[]): boolean[] =>
    samples.map((s) => guides.add([s], s.at_ms));

  it('go while the hand holds the band and come back when it does not', () => {
    const guides = new Bandwidth(tee, 0);
    const held = feed(guides, readings(1, 0, 12));
    expect(held[400]).toBe(true);
    expect(held.at(-1)).toBe(false);
    const lost = feed(guides, readings(1.8, 12, 9));
    expect(lost.at(-1)).toBe(true);
  });

  it('stay for a hand that never holds it', () => {
    const guides = new Bandwidth(tee, 0);
    expect(feed(guides, readings(1.8, 0, 20)).every(Boolean)).toBe(true);
  });

  it('forgive more the longer the hand has held', () => {
    // A little out of the band as it stands: width 7 of 4.5 to 6.5.
    const straight = new Bandwidth(tee, 0);
    expect(feed(straight, readings(1.27, 0, 12)).at(-1)).toBe(true);
    const after = new Bandwidth(tee, 0);
    feed(after, readings(1, 0, 15));
    expect(feed(after, readings(1.27, 15, 8)).at(-1)).toBe(false);
  });
});

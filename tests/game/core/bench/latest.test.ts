import { describe, expect, it } from 'vitest';
import { Latest } from '../../../../game/core/bench/latest.ts';

describe('latest', () => {
  it('has one request out and keeps only the newest behind it', () => {
    const sent: number[] = [];
    const latest = new Latest<number>((x) => sent.push(x));
    for (const x of [1, 2, 3, 4]) latest.ask(x);
    expect(sent).toEqual([1]);
    latest.answered();
    expect(sent).toEqual([1, 4]);
    latest.answered();
    latest.ask(5);
    expect(sent).toEqual([1, 4, 5]);
  });

  it('starts afresh after a reset', () => {
    const sent: number[] = [];
    const latest = new Latest<number>((x) => sent.push(x));
    latest.ask(1);
    latest.ask(2);
    latest.reset();
    latest.ask(3);
    expect(sent).toEqual([1, 3]);
  });
});

import { describe, expect, it } from 'vitest';
import { levelOf, type PastAttempt } from '../../../../game/core/session/level.ts';
import { helpOf } from '../../../../game/core/session/shelf.ts';
import { exerciseNamed, type Verdict } from '../../../../scoring/index.ts';

const vee = exerciseNamed('tee-inverted-v')!;
const test = exerciseNamed('test-piece')!;

const LETTERS: Record<string, Verdict | null> = {
  w: 'within',
  o: 'outside',
  t: 'too close to call',
  n: 'no verdict',
  '-': null,
};

/** Attempts one after the other, a letter each. */
function past(letters: string, more: Partial<PastAttempt> = {}): PastAttempt[] {
  return [...letters].map((letter, i) => ({
    made_ms: 1000 * i,
    exercise: vee.name,
    verdict: LETTERS[letter] ?? null,
    own: true,
    ...more,
  }));
}

describe('the level of an exercise', () => {
  it.each([
    ['', { kind: 'with guides', good: 0 }],
    ['ww', { kind: 'with guides', good: 2 }],
    ['www', { kind: 'without guides', bad: 0 }],
    ['wwow', { kind: 'with guides', good: 1 }],
    ['wwowww', { kind: 'without guides', bad: 0 }],
    ['wwwo', { kind: 'without guides', bad: 1 }],
    ['wwwowo', { kind: 'without guides', bad: 1 }],
    ['wwwoo', { kind: 'with guides', good: 0 }],
    ['wwwooww', { kind: 'with guides', good: 2 }],
    ['wwwoowww', { kind: 'without guides', bad: 0 }],
    // Neither good nor bad: no row is broken and none is made longer.
    ['wtwnw', { kind: 'without guides', bad: 0 }],
    ['wwwotno', { kind: 'with guides', good: 0 }],
    ['ttnn---', { kind: 'with guides', good: 0 }],
  ])('after %s is %o', (letters, level) => {
    expect(levelOf(past(letters), vee)).toEqual(level);
  });

  it('does not depend on the order the attempts are handed over in', () => {
    const attempts = past('owwwoow');
    expect(levelOf([...attempts].reverse(), vee)).toEqual(levelOf(attempts, vee));
  });

  it('is moved by neither robots, opened files nor other exercises', () => {
    expect(levelOf(past('www', { own: false }), vee)).toEqual({ kind: 'with guides', good: 0 });
    expect(levelOf(past('www', { exercise: 'lap-5' }), vee)).toEqual({ kind: 'with guides', good: 0 });
    expect(levelOf(past('www', { exercise: null }), vee)).toEqual({ kind: 'with guides', good: 0 });
  });

  it('has no guides in a test, whatever was welded, and leaves own joints to the user', () => {
    expect(levelOf(past('oooo', { exercise: test.name }), test)).toEqual({ kind: 'test' });
    expect(levelOf(past('www', { exercise: 'free-attempt' }), { ...vee, name: 'free-attempt' })).toEqual({
      kind: 'free',
    });
  });

  it('reads the help an attempt had from what is written in it', () => {
    const none = { pacer: false, beat: false, toeMarks: false, plainView: false, handRig: null };
    const hand = { kind: 'hand' as const };
    expect(helpOf({ origin: hand, aids: { ...none, beat: true } }, vee)).toBe('with guides');
    expect(helpOf({ origin: hand, aids: none }, vee)).toBe('without guides');
    expect(helpOf({ origin: hand, aids: none }, test)).toBe('test');
    expect(helpOf({ origin: hand, aids: { ...none, pacer: true } }, test)).toBe('with guides');
    expect(helpOf({ origin: { kind: 'robot' }, aids: none }, vee)).toBe('robot');
  });
});

describe('a level on a bench that several share', () => {
  it('is told from one’s own attempts alone', () => {
    const others = past('www', { trainee: 'Ines Calder' });
    expect(levelOf(others, vee, 'Ines Calder')).toEqual({ kind: 'without guides', bad: 0 });
    expect(levelOf(others, vee, 'Pia Lindqvist')).toEqual({ kind: 'with guides', good: 0 });
    expect(levelOf(others, vee)).toEqual({ kind: 'with guides', good: 0 });
  });
});

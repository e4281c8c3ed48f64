import { setImmediate as breath } from 'node:timers/promises';
import { type Copy, copyOf, type MotionPath, pathOfText } from '../node/index.ts';

/** Where an attempt stands, as far as its being named is concerned. */
export interface Place {
  classId: string;
  class: string;
  assignmentId: string;
  title: string;
  trainee: string;
  number: number;
}

/** A scored submission as far as its motion goes. */
export interface Moved {
  id: string;
  trainee: { id: string };
  /** Where it stands. */
  place: Place;
  /** What it is called to whoever asks. */
  said: string;
  received: Date;
  /** Digest of the pose columns. */
  hand: string;
  motion: string;
}

/** Another submission with nearly the same motion. */
export interface NearTwin {
  of: Moved;
  copy: Copy;
}

/** Pairs whose answer is remembered; the oldest go first. */
const MOST_PAIRS = 400_000;
/** Paths unpacked at once, and comparisons after which others get their turn. */
const MOST_PATHS = 2000;
const TURN = 50;

/**
 * Near-twins by the class sheet's own comparison. Two hands are compared once and the answer is remembered, so that each new submission costs one comparison
 * with every other at its exercise, in whichever page is asked for first.
 */
export class NearTwins {
  readonly #pairs = new Map<string, Copy | null>();
  readonly #paths = new Map<string, MotionPath>();
  #compared = 0;

  /** Of those given, the ones whose motion is nearly this one's. The same pose for pose are not among them: they are known by their digest. */
  async of(one: Moved, others: readonly Moved[]): Promise<NearTwin[]> {
    const found: NearTwin[] = [];
    for (const other of others) {
      if (other.id === one.id || other.hand === one.hand) continue;
      const copy = await this.#copy(one, other);
      if (copy !== null) found.push({ of: other, copy });
    }
    return found;
  }

  async #copy(a: Moved, b: Moved): Promise<Copy | null> {
    const [first, second] = a.hand < b.hand ? [a, b] : [b, a];
    const key = `${first.hand}${second.hand}`;
    const known = this.#pairs.get(key);
    if (known !== undefined) return known;
    if (++this.#compared % TURN === 0) await breath();
    const copy = copyOf(this.#path(first), this.#path(second));
    keep(this.#pairs, key, copy, MOST_PAIRS);
    return copy;
  }

  #path({ hand, motion }: Moved): MotionPath {
    const known = this.#paths.get(hand);
    if (known !== undefined) return known;
    const path = pathOfText(motion);
    keep(this.#paths, hand, path, MOST_PATHS);
    return path;
  }
}

function keep<T>(map: Map<string, T>, key: string, value: T, most: number): void {
  if (map.size >= most) map.delete(map.keys().next().value!);
  map.set(key, value);
}

/**
 * Those that speak against a submission: under two names nobody can tell whose the motion is and both are named; of one person's own the first stands and what
 * came later is a copy.
 */
export function against(one: Moved, twins: readonly NearTwin[]): NearTwin[] {
  return twins.filter(({ of }) => of.trainee.id !== one.trainee.id || of.received < one.received);
}

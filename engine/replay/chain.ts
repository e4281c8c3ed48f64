/**
 * The chain of a recording: one link a second of weld, so that a file that no longer agrees with its weld says where and in what.
 *
 *     chain[0]  seal of the header: who, when, with what, on which joint, by which engine
 *     chain[n]  two halves of 16 digits, each upon its half of the link before:
 *               poses of second n | those poses and the state at the end of second n
 *     the last  the same for what is left of a second, with how it ended
 *
 * Every half is checked against the link before as it stands, so that one changed second is one finding. Seal, poses and ending can be checked
 * without welding; the states only by welding again with the same engine. It shows accidents and hand edits; it is no proof against
 * somebody who writes a program to make another chain.
 */
import { POSE_RATE_HZ } from '../input/pose.ts';
import { canonical } from '../numerics/canonical.ts';
import { digestOf, Hasher } from '../numerics/digest.ts';
import type { Simulation } from '../simulation.ts';
import { ENGINE_VERSION } from '../version.ts';
import type { Recording } from './format.ts';

/** What following a chain came to, as data. Seconds count from 1; the last may be a part of one. */
export type ChainFinding =
  /** Header, poses, ending and every state as welded. */
  | { found: 'same' }
  /** A file from before there were chains, or one whose chain was taken out: nothing can be told. */
  | { found: 'no-chain' }
  /** Settings, exercise, name or anything else above the poses changed after welding; which part cannot be known. */
  | { found: 'header-changed' }
  /** Poses changed after welding, from this second on. */
  | { found: 'poses-changed'; second: number }
  /** Ending or final check number changed after welding. */
  | { found: 'ending-changed' }
  /** File as saved, but of another engine: what it welded then cannot be compared with what is welded here. */
  | { found: 'other-engine'; engine: string }
  /** File as saved and of this engine, and yet the state parts from the saved one in this second. */
  | { found: 'state-differs'; second: number };

/** What a chain is made from: a recording before it has one. */
export type Unchained = Omit<Recording, 'chain'>;

/** Check numbers a weld passes through: one at the end of each second, and where it stands. */
export class Seconds {
  private readonly taken: string[] = [];

  /** To be called at least once a second of weld, between two poses; more often does nothing. */
  note(sim: Simulation): void {
    if (sim.steps === (this.taken.length + 1) * POSE_RATE_HZ) this.taken.push(sim.hash());
  }

  /** All of them, with the state as it is now as the last. @throws Error when a second was not noted */
  all(sim: Simulation): string[] {
    this.note(sim);
    if (this.taken.length !== Math.floor(sim.steps / POSE_RATE_HZ))
      throw new Error(`a second of weld was not noted: ${this.taken.length} check numbers at pose ${sim.steps}`);
    return [...this.taken, sim.hash()];
  }
}

/** Digest of everything above the poses. */
function sealOf(r: Unchained): string {
  const { engine, simulation, rate_Hz, origin, device, aids, trainee, started, seed, exercise } = r;
  return digestOf(canonical({ engine, simulation, rate_Hz, origin, device, aids, trainee, started, seed, exercise }));
}

const COLUMNS = ['u', 'y', 'tip', 'work', 'travel', 'trigger'] as const;

/** Digest of the pose columns of second n, from 1. */
function digestPoses(poses: Recording['poses'], n: number): string {
  const hasher = new Hasher();
  for (const name of COLUMNS) {
    hasher.text(name);
    for (const value of poses[name].slice((n - 1) * POSE_RATE_HZ, n * POSE_RATE_HZ)) hasher.number(value);
  }
  return hasher.digest();
}

const secondsOf = (r: Unchained): number => Math.floor(r.poses.u.length / POSE_RATE_HZ) + 1;

const DIGITS = 16;

/** First half of link n of `last`. */
function poseHalf(r: Unchained, before: string, n: number, last: number): string {
  return digestOf(before.slice(0, DIGITS), n === last ? 'end' : 'second', digestPoses(r.poses, n));
}

/** Second half; the ending stands in the last link. */
function stateHalf(r: Unchained, before: string, poses: string, state: string, isLast: boolean): string {
  return digestOf(before.slice(-DIGITS), poses, isLast ? `${r.ended} ${state}` : state);
}

/** The chain of a recording whose weld passed through these check numbers (`Seconds`). */
export function chainOf(r: Unchained, states: readonly string[]): string[] {
  const chain = [sealOf(r)];
  const last = secondsOf(r);
  for (let n = 1; n <= last; n++) {
    const before = chain[n - 1]!;
    const poses = poseHalf(r, before, n, last);
    chain.push(poses + stateHalf(r, before, poses, states[n - 1]!, n === last));
  }
  return chain;
}

/**
 * Follows a recording's chain: first the file by itself, then the states, where they can be compared.
 * @param states what welding the recording again passed through (`Seconds`); null where it was not: then states are taken as good
 */
export function checkChain(recording: Recording, states: readonly string[] | null): ChainFinding {
  const { chain, stateHash } = recording;
  if (chain === null || chain.length === 0) return { found: 'no-chain' };
  if (chain[0] !== sealOf(recording)) return { found: 'header-changed' };
  const last = secondsOf(recording);
  for (let n = 1; n <= Math.max(last, chain.length - 1); n++) {
    const poses = n <= last ? poseHalf(recording, chain[n - 1]!, n, last) : null;
    if (poses === null || chain[n]?.slice(0, DIGITS) !== poses) return { found: 'poses-changed', second: n };
  }
  const stateIs = (n: number, state: string): boolean =>
    chain[n]!.slice(DIGITS) === stateHalf(recording, chain[n - 1]!, chain[n]!.slice(0, DIGITS), state, n === last);
  if (stateHash === null || !stateIs(last, stateHash)) return { found: 'ending-changed' };
  if (recording.engine !== ENGINE_VERSION) return { found: 'other-engine', engine: recording.engine };
  if (states === null) return { found: 'same' };
  for (let n = 1; n <= last; n++) if (!stateIs(n, states[n - 1]!)) return { found: 'state-differs', second: n };
  return { found: 'same' };
}

/** What the hands came to, kept beside the study so that no weld is made twice. */
import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { ENGINE_VERSION } from '../../../engine/index.ts';
import { type Exercise, exercises } from '../../../scoring/index.ts';
import { SCORING_VERSION } from '../../../scoring/version.ts';
import type { Hand } from './hands.ts';
import { FIRST_SEED, machineFor } from './set.ts';
import type { Came } from './study.ts';

const FILE = new URL('figures.json', import.meta.url);
const PAGE = new URL('README.md', import.meta.url);

interface Kept extends Came {
  /** Of exercise, hand and versions: another number, another weld. */
  of: string;
}

export class Figures {
  readonly #kept: Kept[];

  constructor(kept: Kept[]) {
    this.#kept = kept;
  }

  static read(): Figures {
    let text: string;
    try {
      text = readFileSync(FILE, 'utf8');
    } catch (cause) {
      if ((cause as NodeJS.ErrnoException).code !== 'ENOENT') throw cause;
      return new Figures([]);
    }
    const all = JSON.parse(text) as Kept[];
    // What was looked at while the exercises were set, and what has been set anew since, is no figure.
    return new Figures(all.filter((k) => k.kind === 'shown' || k.seed >= FIRST_SEED));
  }

  /** What this hand came to at this exercise, if it was welded with these versions. */
  of(exercise: Exercise, hand: Pick<Hand, 'kind' | 'seed' | 'poses'>): Came | null {
    const number = numberOf(exercise, hand);
    const found = this.#kept.find((k) => k.of === number);
    if (found === undefined) return null;
    const { of: _, ...came } = found;
    return came;
  }

  /** The same weld judged by the same lines, under another exercise's name: made once. */
  twin(exercise: Exercise, hand: Pick<Hand, 'kind' | 'seed' | 'poses'>): Came | null {
    const own = judgedAlike(exercise);
    for (const other of exercises) {
      if (other.name === exercise.name || judgedAlike(other) !== own) continue;
      const came = this.of(other, hand);
      if (came !== null) return { ...came, exercise: exercise.name };
    }
    return null;
  }

  keep(exercise: Exercise, hand: Pick<Hand, 'kind' | 'seed' | 'poses'>, came: Came): Came {
    const same = (k: Kept): boolean => k.exercise === came.exercise && k.kind === came.kind && k.seed === came.seed;
    const at = this.#kept.findIndex(same);
    const row = { of: numberOf(exercise, hand), ...came };
    if (at >= 0) this.#kept[at] = row;
    else this.#kept.push(row);
    writeFileSync(FILE, `[\n${this.#kept.map((k) => JSON.stringify(k)).join(',\n')}\n]\n`);
    return came;
  }

  all(): readonly Came[] {
    return this.#kept;
  }

  writePage(page: (all: readonly Came[]) => string): void {
    writeFileSync(PAGE, page(this.#kept));
  }
}

/** All of an exercise that weld and verdict hang on. */
function judgedAlike(e: Exercise): string {
  const { joint, hold, demonstration, asked, target, profile, limits, judged, cuts_mm, passes } = e;
  return JSON.stringify([
    machineFor(e),
    joint,
    hold,
    demonstration,
    asked,
    target,
    profile,
    limits,
    judged,
    cuts_mm,
    passes,
  ]);
}

function numberOf(exercise: Exercise, { kind, seed, poses }: Pick<Hand, 'kind' | 'seed' | 'poses'>): string {
  const what = JSON.stringify([ENGINE_VERSION, SCORING_VERSION, exercise, machineFor(exercise), kind, seed, poses]);
  return createHash('sha256').update(what).digest('hex').slice(0, 12);
}

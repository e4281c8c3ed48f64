/** What the hands came to, kept beside the study so that no weld is made twice. */
import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { ENGINE_VERSION } from '../../../engine/index.ts';
import type { Exercise } from '../../../scoring/index.ts';
import { SCORING_VERSION } from '../../../scoring/version.ts';
import type { Hand } from './hands.ts';
import { machineFor } from './set.ts';
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
    return new Figures(JSON.parse(text) as Kept[]);
  }

  /** What this hand came to at this exercise, if it was welded with these versions. */
  of(exercise: Exercise, hand: Pick<Hand, 'kind' | 'seed' | 'poses'>): Came | null {
    const number = numberOf(exercise, hand);
    const found = this.#kept.find((k) => k.of === number);
    if (found === undefined) return null;
    const { of: _, ...came } = found;
    return came;
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

function numberOf(exercise: Exercise, { kind, seed, poses }: Pick<Hand, 'kind' | 'seed' | 'poses'>): string {
  const what = JSON.stringify([ENGINE_VERSION, SCORING_VERSION, exercise, machineFor(exercise), kind, seed, poses]);
  return createHash('sha256').update(what).digest('hex').slice(0, 12);
}

import { pieceSeed } from '../exercises/piece.ts';
import { type AttemptName, personSaid, wordsInName } from './file-name.ts';
import type { OnRoster } from './roster.ts';
import type { Scored } from './scored.ts';

/** What an instructor knows of the pieces dealt; each may be left out. */
export interface KnownPieces {
  /** The start word on the board. */
  word?: string;
  /** Who has which plate (`platesOf`). */
  roster?: readonly OnRoster[];
}

/** What is looked at of an attempt, and where it is told. */
interface OnPiece {
  file: string;
  name: AttemptName;
  scored: Scored;
  notCounted: string[];
  mismatches: string[];
}

/** Who has which plate: as the roster numbers them, those without a number left out; where it numbers nobody, by their place in the list. */
export function platesOf(roster: readonly OnRoster[]): (OnRoster & { plate: number })[] {
  const numbered = roster.some((who) => who.plate !== null);
  return roster.flatMap((who, i) => {
    const plate = numbered ? who.plate : i + 1;
    return plate === null ? [] : [{ ...who, plate }];
  });
}

/**
 * Attempts at an exercise that deals everybody a piece of their own: those without one, on another's, or on one that another word dealt, are
 * named and kept. Who has which plate is known from the roster; without one, a piece in the files of two people is named in both.
 */
export function namePieces(entries: readonly OnPiece[], { word, roster }: KnownPieces): void {
  const varied = entries.filter((e) => e.scored.result.exercise?.varies === true);
  const owners = new Map(platesOf(roster ?? []).map((who) => [who.plate, who.name]));
  const plates = new Map(platesOf(roster ?? []).map((who) => [wordsInName(who.name), who.plate]));
  for (const e of varied) {
    const { piece } = e.scored.result.exercise ?? {};
    if (piece === undefined) {
      e.notCounted.push('no plate number, though the exercise deals everybody a plate of their own');
      continue;
    }
    if (
      word !== undefined &&
      e.scored.exercise !== null &&
      pieceSeed(e.scored.exercise, word, piece.number) !== piece.seed
    ) {
      e.notCounted.push(`seed ${piece.seed} is not what the start word deals plate ${piece.number}`);
    }
    const own = plates.get(e.name.trainee);
    if (own === undefined) nameShared(e, varied);
    else if (own !== piece.number) {
      const of = owners.get(piece.number);
      e.notCounted.push(
        `welded on plate ${piece.number}${of === undefined ? '' : `, which is ${of}'s`}; the roster gives plate ${own}`,
      );
    }
  }
}

/** The same piece under two names; whose it is cannot be told from the files. */
function nameShared(e: OnPiece, varied: readonly OnPiece[]): void {
  const { piece } = e.scored.result.exercise ?? {};
  const others = varied.filter(
    (o) => o.name.trainee !== e.name.trainee && o.scored.result.exercise?.piece?.seed === piece?.seed,
  );
  const names = [...new Set(others.map((o) => (o.name.trainee === null ? o.file : personSaid(o.name.trainee))))];
  if (names.length > 0)
    e.mismatches.push(`the same piece as ${names.join(', ')} (plate ${piece?.number}, seed ${piece?.seed})`);
}

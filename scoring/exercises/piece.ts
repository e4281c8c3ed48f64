import { withoutPiece } from '../schema/asked.ts';
import type { Exercise } from '../schema/exercise.ts';
import { describeFound, InputError } from '../schema/problem.ts';
import { digest, exerciseDigest } from './digest.ts';

/**
 * A piece of one's own for every trainee: gap, start temperature and heights of the cuts follow from the start word on the board and the
 * number on the plate, as far as the exercise lets them vary. So a neighbour's file is of another piece.
 */

type Piece = NonNullable<Exercise['piece']>;
type Dealt = Piece['from'];

/** Largest plate number. */
export const MOST_PLATES = 999;
/** Digits of the seed: enough that no two of a school's pieces share one by chance. */
const SEED_DIGITS = 16;
/** Steps that gap, start temperature and cuts are dealt in: what can be set up with a feeler gauge, told by a crayon and marked with a rule. */
const STEP = { gap_mm: 0.1, startTemp_C: 5, cut_mm: 1 } as const;

/** The start word as it counts: written large or small, with one space or two, it is the same word. */
function wordThatCounts(word: string): string {
  return word.normalize('NFC').trim().replace(/\s+/gu, ' ').toLocaleLowerCase('en');
}

/**
 * The seed of a piece: 16 hexadecimal digits of SHA-256 over word, number and what the exercise asks. A file carries number and seed, not the word.
 * @param asked digest of the exercise (`exerciseDigest`)
 */
export function pieceSeed(asked: string, word: string, plate: number): string {
  return digest(JSON.stringify(['toehold piece', wordThatCounts(word), plate, asked])).slice(0, SEED_DIGITS);
}

/**
 * Deals a trainee's piece. An exercise that lets nothing vary is handed back as it is.
 * @param exercise with or without a piece dealt before; that one is put back first
 * @throws InputError for an empty word or a plate number that is none
 */
export function dealPiece(exercise: Exercise, word: string, plate: number): Exercise {
  const base = withoutPiece(exercise);
  if (base.vary === undefined) return base;
  const problems = [
    ...(wordThatCounts(word) === ''
      ? [{ path: 'start word', found: describeFound(word), allowed: 'the word on the board' }]
      : []),
    ...(Number.isInteger(plate) && plate >= 1 && plate <= MOST_PLATES
      ? []
      : [
          {
            path: 'plate number',
            found: describeFound(plate),
            allowed: `the number on the plate, a whole number from 1 to ${MOST_PLATES}`,
          },
        ]),
  ];
  if (problems.length > 0) throw new InputError('piece', problems);
  const seed = pieceSeed(exerciseDigest(base)!, word, plate);
  return pieceOf(base, { number: plate, seed, from: asItStands(base) });
}

/** Whether the piece an exercise carries follows from its seed; true where it carries none. */
export function pieceFollows(exercise: Exercise): boolean {
  const { piece } = exercise;
  if (piece === undefined) return true;
  return JSON.stringify(asItStands(exercise)) === JSON.stringify(dealtBy(withoutPiece(exercise), piece.seed));
}

function asItStands({ joint, cuts_mm }: Exercise): Dealt {
  return { gap_mm: joint.gap_mm, startTemp_C: joint.startTemp_C, cuts_mm };
}

function pieceOf(base: Exercise, piece: Piece): Exercise {
  const { gap_mm, startTemp_C, cuts_mm } = dealtBy(base, piece.seed);
  return { ...base, joint: { ...base.joint, gap_mm, startTemp_C }, cuts_mm, piece };
}

/** What a seed makes of the exercise: same seed, same piece, everywhere. */
function dealtBy(base: Exercise, seed: string): Dealt {
  const { vary, joint, judged } = base;
  const share = sharesOf(seed);
  const within = (band: { from: number; to: number } | null | undefined, step: number, given: number): number => {
    const at = share();
    if (!band) return given;
    const places = Math.floor((band.to - band.from) / step + 1e-9) + 1;
    return tidy(band.from + step * Math.min(places - 1, Math.floor(at * places)));
  };
  const gap_mm = within(vary?.gap_mm, STEP.gap_mm, joint.gap_mm);
  const startTemp_C = within(vary?.startTemp_C, STEP.startTemp_C, joint.startTemp_C);
  const most = Math.floor((vary?.cuts_mm ?? 0) / STEP.cut_mm);
  const cuts_mm = base.cuts_mm.map((cut) => {
    const moved = cut + STEP.cut_mm * (Math.floor(share() * (2 * most + 1)) - most);
    return Math.min(Math.max(tidy(moved), judged.from_mm), judged.to_mm);
  });
  return { gap_mm, startTemp_C, cuts_mm: [...new Set(cuts_mm)].sort((a, b) => a - b) };
}

/** Numbers from 0 to below 1 out of a seed, each from a hash of its own. */
function sharesOf(seed: string): () => number {
  let n = 0;
  return () => Number.parseInt(digest(`${seed} ${n++}`).slice(0, 8), 16) / 2 ** 32;
}

function tidy(x: number): number {
  return Math.round(x * 100) / 100;
}

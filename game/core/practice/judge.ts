import type { Line, Result } from '../../../scoring/index.ts';
import type { OwnJudgement } from './record.ts';

/*
 * Why judge first: who estimates an error before hearing it learns better than who only hears it (Swinnen, Schmidt, Nicholson and Shapiro, J. Exp. Psychol.
 * LMC 16, 1990, 706-716, from memory; again with 52 novices at a force task in "Estimation of error followed by knowledge of results ...", Journal of
 * Physical Education, Maringá, of which the abstract was read). Neither was about welding.
 */

/** A measure that the verdict rests on; of several lines on it the worst counts. */
export interface Question {
  measure: Line['measure'];
  was: Line['verdict'];
}

const RANK = { within: 0, 'too close to call': 1, outside: 2 } as const;

/** What a trainee is asked of an attempt: each measure once, in the order of the lines. */
export function questionsOf({ lines }: Pick<Result, 'lines'>): Question[] {
  const worst = new Map<Line['measure'], Line['verdict']>();
  for (const { measure, verdict } of lines) {
    const known = worst.get(measure);
    if (known === undefined || RANK[verdict] > RANK[known]) worst.set(measure, verdict);
  }
  return [...worst].map(([measure, was]) => ({ measure, was }));
}

/** The smallest leg there is, as a line has read it; null where no line did. */
export function legRead({ lines }: Pick<Result, 'lines'>): { was_mm: number; plusMinus_mm: number } | null {
  const legs = lines.filter((l) => l.measure === 'leg' && l.sense === 'at least' && l.unit === 'mm');
  const [first] = legs.sort((a, b) => a.reading - b.reading);
  return first === undefined ? null : { was_mm: first.reading, plusMinus_mm: first.plusMinus };
}

/** How one judgement went; what was too close to call counts neither way. */
export interface Judged {
  right: number;
  /** Called inside and was outside, called outside and was inside. */
  missed: string[];
  imagined: string[];
  of: number;
}

export function judgedOf({ said }: Pick<OwnJudgement, 'said'>): Judged {
  const sure = said.filter((s) => s.was !== 'too close to call');
  const missed = sure.filter((s) => s.was === 'outside' && s.said === 'inside').map((s) => s.measure);
  const imagined = sure.filter((s) => s.was === 'within' && s.said === 'outside').map((s) => s.measure);
  return { right: sure.length - missed.length - imagined.length, missed, imagined, of: sure.length };
}

/** How well somebody judges, over all judgements, oldest first. */
export interface JudgingTrend {
  count: number;
  right: number;
  of: number;
  missed: number;
  imagined: number;
  /** Share right in each, oldest first; null where all was too close to call. */
  shares: { attempt: string; made_ms: number; share: number | null }[];
  /** Faults that were there and how many of them were seen; what held and how much of it was called so. */
  faults: { there: number; seen: number };
  held: { there: number; seen: number };
  legs: Differences | null;
}

/** Guess less reading over many attempts (Bland and Altman, Lancet 1986, 307-310): mean and the band that holds nineteen in twenty, mm. */
export interface Differences {
  pairs: { said_mm: number; was_mm: number }[];
  bias_mm: number;
  /** Null with too few to say. */
  limits_mm: { from: number; to: number } | null;
}

/** Fewer guesses than this give no band. */
export const LEAST_GUESSES = 5;
const NINETEEN_IN_TWENTY = 1.96;

export function trendOf(judgements: readonly OwnJudgement[]): JudgingTrend {
  const list = [...judgements].sort((a, b) => a.made_ms - b.made_ms);
  const each = list.map(judgedOf);
  const sum = (of: (j: Judged) => number): number => each.reduce((total, j) => total + of(j), 0);
  const all = list.flatMap((j) => j.said);
  const count = (was: 'within' | 'outside', said: 'inside' | 'outside' | null): number =>
    all.filter((s) => s.was === was && (said === null || s.said === said)).length;
  return {
    count: list.length,
    right: sum((j) => j.right),
    of: sum((j) => j.of),
    missed: sum((j) => j.missed.length),
    imagined: sum((j) => j.imagined.length),
    shares: list.map((j, i) => ({
      attempt: j.attempt,
      made_ms: j.made_ms,
      share: each[i].of === 0 ? null : each[i].right / each[i].of,
    })),
    faults: { there: count('outside', null), seen: count('outside', 'outside') },
    held: { there: count('within', null), seen: count('within', 'inside') },
    legs: differencesOf(list.flatMap((j) => (j.leg ? [j.leg] : []))),
  };
}

export function differencesOf(pairs: readonly { said_mm: number; was_mm: number }[]): Differences | null {
  if (pairs.length === 0) return null;
  const d = pairs.map((p) => p.said_mm - p.was_mm);
  const bias_mm = d.reduce((a, b) => a + b, 0) / d.length;
  const pairsOnly = pairs.map(({ said_mm, was_mm }) => ({ said_mm, was_mm }));
  if (d.length < LEAST_GUESSES) return { pairs: pairsOnly, bias_mm, limits_mm: null };
  const sd = Math.sqrt(d.reduce((a, x) => a + (x - bias_mm) ** 2, 0) / (d.length - 1));
  const half = NINETEEN_IN_TWENTY * sd;
  return { pairs: pairsOnly, bias_mm, limits_mm: { from: bias_mm - half, to: bias_mm + half } };
}

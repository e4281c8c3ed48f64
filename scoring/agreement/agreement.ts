import { said } from '../words/names.ts';
import type { ReadingsTable } from './readings-table.ts';
import { type MeanSquares, meanSquares } from './squares.ts';

/** How far several readers agree about one thing they measured. Spreads are standard deviations in its own unit. */
export interface Agreement {
  name: string;
  /** Of one reader over again; null with one trial: it cannot be told from what readers make of single macros. */
  repeatability: number | null;
  /** From reader to reader, what they make of single macros differently included. */
  reproducibility: number;
  /** Both together. */
  gauge: number;
  /** From macro to macro. */
  macros: number;
  /** Gauge over total spread, per cent; null where nothing spreads. */
  grr_percent: number | null;
  /** Number of distinct categories: how many kinds of macros such readings tell apart; null where the gauge does not spread. */
  categories: number | null;
  /** ICC(2,1): one reader standing for any, readers drawn from many. ICC(3,1): these very readers, a steady offset of one forgiven. */
  icc21: number | null;
  icc31: number | null;
  /** In a sentence. */
  says: string;
}

/** Most of the total spread a gauge may have, and fewest categories (AIAG Measurement Systems Analysis, 4th edition, from memory). */
const GOOD_PERCENT = 10;
const MOST_PERCENT = 30;
const LEAST_CATEGORIES = 5;

/** Everything that was measured, in the order of the table's columns. */
export function agreementOf(table: ReadingsTable): Agreement[] {
  return table.measures.map(({ name, values }) => agreement(name, meanSquares(values), iccOf(values)));
}

/**
 * Components of spread by the method of AIAG's Measurement Systems Analysis, 4th edition (from memory): analysis of variance, macros and readers
 * crossed. Components below nothing are nothing; macro by reader is pooled with the error where it does not exceed it, as it is with one trial.
 * Categories are 1.41 times the spread of the macros over the gauge's, whole ones.
 */
function agreement(name: string, ms: MeanSquares, icc: { icc21: number | null; icc31: number | null }): Agreement {
  const { macros: n, readers: k, trials: r } = ms;
  const pooled = ms.ofError === null || ms.ofBoth <= ms.ofError;
  const error = pooled ? pooledError(ms) : ms.ofError!;
  const against = pooled ? error : ms.ofBoth;
  const both = pooled ? 0 : (ms.ofBoth - error) / r;
  const readers = Math.max(0, (ms.ofReaders - against) / (n * r));
  const ofMacros = Math.max(0, (ms.ofMacros - against) / (k * r));
  const gauge = error + readers + both;
  const total = gauge + ofMacros;
  const grr_percent = total > 0 ? 100 * Math.sqrt(gauge / total) : null;
  const categories = gauge > 0 ? Math.floor(1.41 * Math.sqrt(ofMacros / gauge)) : null;
  return {
    name,
    repeatability: ms.ofError === null ? null : Math.sqrt(error),
    reproducibility: Math.sqrt(readers + both),
    gauge: Math.sqrt(gauge),
    macros: Math.sqrt(ofMacros),
    grr_percent,
    categories,
    ...icc,
    says: sentence(grr_percent, categories),
  };
}

/** Error with macro by reader put to it, by their degrees of freedom. */
function pooledError({ macros: n, readers: k, trials: r, ofBoth, ofError }: MeanSquares): number {
  if (ofError === null) return ofBoth;
  const [b, e] = [(n - 1) * (k - 1), n * k * (r - 1)];
  return (b * ofBoth + e * ofError) / (b + e);
}

/**
 * Intraclass correlation, single readings, by Shrout and Fleiss (Psychological Bulletin 86, 1979, 420-428): two-way random (2,1), two-way mixed
 * (3,1). Trials of one reader are averaged first.
 */
function iccOf(values: ReadingsTable['measures'][number]['values']): { icc21: number | null; icc31: number | null } {
  const once = values.map((row) => row.map((cell) => [cell.reduce((a, b) => a + b, 0) / cell.length]));
  const { macros: n, readers: k, ofMacros: b, ofReaders: j, ofBoth: e } = meanSquares(once);
  const share = (top: number, bottom: number): number | null => (bottom > 0 ? top / bottom : null);
  return {
    icc21: share(b - e, b + (k - 1) * e + (k * (j - e)) / n),
    icc31: share(b - e, b + (k - 1) * e),
  };
}

function sentence(grr: number | null, categories: number | null): string {
  if (grr === null) return 'Every reading is the same: nothing to tell apart.';
  const of = `The readers make up ${said(grr, 0)} % of all spread`;
  const tells =
    categories === null ? '' : `; such readings tell ${categories < 2 ? 'no' : categories} kinds of macros apart`;
  const good =
    grr < GOOD_PERCENT
      ? 'they can judge by it'
      : grr <= MOST_PERCENT
        ? 'enough for some purposes'
        : 'differences from coupon to coupon drown in it: read together, and agree on root and fusion line first';
  const few =
    categories !== null && categories < LEAST_CATEGORIES && grr <= MOST_PERCENT
      ? `, though ${LEAST_CATEGORIES} kinds are wanted`
      : '';
  return `${of}${tells}: ${good}${few}.`;
}

/** What stands under a table of agreement. */
export const AGREEMENT_RULE =
  'Gauge over total spread and number of distinct categories after AIAG, Measurement Systems Analysis, 4th edition, by analysis of variance (from memory: under 10 % good, up to 30 % for some purposes, five categories wanted). ICC after Shrout and Fleiss 1979. With one reading each, a reader’s own spread cannot be told from the rest.';

/**
 * Whose rhythm is it? A hand keeps its beat to some per cent, and which swing comes out long and which short is chance: no other go has the same row of
 * them. Motion that was stretched in time, widened or made to drift has every place and every time another, and still has that row.
 */

export interface Rhythm {
  /** When the aim crossed the middle of its weave, s. */
  times: Float32Array;
  /** Rank of every time between two of them, -0.5 for the shortest to 0.5 for the longest; all 0 where they are as good as even. */
  ranks: Float32Array;
}

export interface SameRhythm {
  kind: 'rhythm';
  /** Rank correlation of the swings, 1: the same order. */
  alike: number;
  swings: number;
  /** The other one's time for the same swings over this one's. */
  stretched: number;
}

/**
 * Independent rows of this many swings come out alike by 0.9 about once in 10^10 (Fisher's transformation of a rank correlation: 6.5 of its standard deviations; from memory),
 * and a class's pairs with all the shifts tried are some 10^5. No persons' hands were measured: people who keep to one beat aloud may be more alike.
 */
const LEAST_ALIKE = 0.9;
const LEAST_SWINGS = 24;
/** Swings left out at an end by a copier who starts later or stops sooner. */
const MOST_SHIFT = 12;

/**
 * Swings to one side are measured against their own mean, so that
 * a longer wait at one toe, which everybody has who was told so, does not count. Ranks, so that the one long swing of a strike does not decide.
 * @param crossings times, s
 */
export function rhythmOf(crossings: readonly number[]): Rhythm {
  const swings = crossings.slice(1).map((t, n) => t - crossings[n]!);
  const means = [0, 1].map((side) => {
    const own = swings.filter((_, n) => n % 2 === side);
    return own.reduce((sum, t) => sum + t, 0) / own.length;
  });
  const length = swings.map((t, n) => t / means[n % 2]!);
  const order = length.map((_, n) => n).sort((a, b) => length[a]! - length[b]!);
  const ranks = new Float32Array(length.length);
  order.forEach((n, rank) => {
    ranks[n] = order.length < 2 ? 0 : rank / (order.length - 1) - 0.5;
  });
  return { times: Float32Array.from(crossings), ranks: evenOf(length) ? ranks.fill(0) : ranks };
}

/** Swings that differ by less than crossings can be read to have no order. */
const LEAST_SPREAD = 0.004;
function evenOf(length: readonly number[]): boolean {
  const variance = length.reduce((sum, t) => sum + (t - 1) * (t - 1), 0) / length.length;
  return !(variance > LEAST_SPREAD * LEAST_SPREAD);
}

/** Null where the two do not have one rhythm, or there is too little of it to say. */
export function sameRhythm(a: Rhythm, b: Rhythm): SameRhythm | null {
  let best: SameRhythm | null = null;
  for (let shift = -MOST_SHIFT; shift <= MOST_SHIFT; shift++) {
    const from = Math.max(0, -shift);
    const swings = Math.min(a.ranks.length - from, b.ranks.length - from - shift);
    if (swings < LEAST_SWINGS) continue;
    const alike = correlation(a.ranks, from, b.ranks, from + shift, swings);
    if (alike < (best?.alike ?? LEAST_ALIKE)) continue;
    const took = (t: Float32Array, n: number): number => t[n + swings]! - t[n]!;
    best = { kind: 'rhythm', alike, swings, stretched: took(b.times, from + shift) / took(a.times, from) };
  }
  return best;
}

function correlation(a: Float32Array, i: number, b: Float32Array, k: number, count: number): number {
  let [sa, sb, aa, bb, ab] = [0, 0, 0, 0, 0];
  for (let n = 0; n < count; n++) {
    const x = a[i + n]!;
    const y = b[k + n]!;
    sa += x;
    sb += y;
    aa += x * x;
    bb += y * y;
    ab += x * y;
  }
  const spread = (aa - (sa * sa) / count) * (bb - (sb * sb) / count);
  return spread > 0 ? (ab - (sa * sb) / count) / Math.sqrt(spread) : 0;
}

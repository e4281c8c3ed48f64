import { POSE_RATE_HZ } from '../../../engine/index.ts';
import type { Trace } from '../../attempt/trace.ts';
import type { ToeVisit } from '../../schema/motion.ts';
import { mean, median, quantile, slope } from '../statistics.ts';
import type { Midline } from './midline.ts';

/** Something that happened to the hand once, at a place. `much` is in the unit its list says. */
export interface Mishap {
  y_mm: number;
  t_s: number;
  much: number;
  side: 'A' | 'B' | null;
  /** Stretch of the joint it goes over. */
  from_mm: number;
  to_mm: number;
}

/** What went wrong here and there, against the same hand's own usual way. */
export interface Mishaps {
  /** Stood still, s beyond what the climb would have taken. */
  stalls: readonly Mishap[];
  /** Rose at once, mm beyond what the climb would have risen. */
  jumps: readonly Mishap[];
  /** Off to one side and back, mm beyond where the hand goes. */
  slips: readonly Mishap[];
  /** A toe not gone to, number of times in a row. */
  skips: readonly Mishap[];
  /** Share of the time stood still in fits and starts; 0 for a hand that climbs. */
  standing: number;
}

/** Slower than this share of the usual climb is standing. */
const STANDING = 0.3;
/** Stands shorter than this are the beat's own. s */
const LEAST_STAND_S = 0.5;
/** Stands are looked for from one sample in so many on. */
const STRIDE = 5;
/** So many stands, over so much of the way, are a habit and no mishap. */
const MANY = 4;
const OVER = 0.4;

export function mishapsOf(
  trace: Trace,
  lines: readonly Midline[],
  visits: readonly (readonly ToeVisit[])[],
  cycle_s: number,
  periodCv: number,
): Mishaps {
  const t = trace.column('t_s');
  const half = Math.max(1, Math.round((cycle_s * POSE_RATE_HZ) / 2));
  const usual = usualClimb(lines);
  const stands = lines.flatMap((line) => standsOf(line, t, usual));
  const length = lines.reduce((sum, l) => sum + Math.max(0, l.y_mm.at(-1)! - l.y_mm[0]!), 0);
  const spread = stands.length > 0 ? stands.at(-1)!.y_mm - stands[0]!.y_mm : 0;
  const samples = lines.reduce((sum, l) => sum + l.y_mm.length, 0);
  const stood = stands.reduce((sum, s) => sum + s.much, 0);
  const habit = stands.length >= MANY && spread >= OVER * length;
  const skips = visits.flatMap((v) => skipsOf(v, visits.flat(), cycle_s));
  return {
    stalls: habit ? [] : stands,
    jumps: habit ? [] : lines.flatMap((line) => jumpsOf(line, t, usual, half)),
    slips: slipsOf(trace, lines, t, skips, periodCv),
    skips,
    standing: Math.max(habit && samples > 0 ? (stood * POSE_RATE_HZ) / samples : 0, halting(visits, length)),
  };
}

/** A step from a toe to the same toe again that rises less than this share of the usual one stood still. */
const NO_STEP = 0.4;

/**
 * Share of the steps up that stood still, where they come again and again over the length; 0 otherwise. Steps shorter than a cycle are lost in
 * the middle way, and show here.
 */
function halting(visits: readonly (readonly ToeVisit[])[], length_mm: number): number {
  let steps = 0;
  let still = 0;
  let stretches = 0;
  const at: number[] = [];
  for (const run of visits) {
    for (const toe of ['A', 'B'] as const) {
      const own = run.filter((v) => v.toe === toe);
      const rises = own.slice(1).map((v, k) => v.y_mm - own[k]!.y_mm);
      const usual = mean(rises) ?? 0;
      let before = false;
      for (const [k, rise] of rises.entries()) {
        const stands = rise < NO_STEP * usual;
        if (stands) at.push(own[k]!.y_mm);
        if (stands && !before) stretches++;
        before = stands;
      }
      steps += rises.length;
      still += rises.filter((rise) => rise < NO_STEP * usual).length;
    }
  }
  const spread = at.length > 0 ? Math.max(...at) - Math.min(...at) : 0;
  return steps > 0 && stretches >= 2 * MANY && spread >= OVER * length_mm ? still / steps : 0;
}

/** Middle of the climb over all samples, mm a sample; of a hand in fits and starts its mean. */
function usualClimb(lines: readonly Midline[]): number {
  const over = POSE_RATE_HZ;
  const paces: number[] = [];
  for (const { y_mm, ends } of lines)
    for (let i = over + ends; i + ends < y_mm.length; i++) paces.push((y_mm[i]! - y_mm[i - over]!) / over);
  return Math.max(0, median(paces) ?? 0);
}

/** A stand rises no more than this, mm: farther on it is a slow climb. */
const STAND_MM = 2;

/** Stretches in which the middle way hardly rose, the longest first found at each place, in order of height. */
function standsOf(line: Midline, t: Float64Array, usual: number): Mishap[] {
  const out: Mishap[] = [];
  const { y_mm, span, ends } = line;
  const last = y_mm.length - ends;
  if (!(usual > 0)) return out;
  for (let i = ends; i < last; ) {
    let best = -1;
    let much = 0;
    for (let j = i + 1; j < last && y_mm[j]! <= y_mm[i]! + STAND_MM; j++) {
      const rise = y_mm[j]! - y_mm[i]!;
      const beyond = j - i - rise / usual;
      if (rise > STANDING * usual * (j - i) || beyond <= much) continue;
      much = beyond;
      best = j;
    }
    const seconds = much / POSE_RATE_HZ;
    if (best < 0 || seconds < LEAST_STAND_S) {
      i += STRIDE;
      continue;
    }
    const [a, b] = [y_mm[i]!, y_mm[best]!];
    out.push({ y_mm: (a + b) / 2, t_s: t[span.from + i]!, much: seconds, side: null, from_mm: a, to_mm: b });
    i = best;
  }
  return out;
}

/** Rises of one cycle that go this far beyond the usual are worth keeping, mm. */
const LEAST_JUMP_MM = 1.5;

function jumpsOf(line: Midline, t: Float64Array, usual: number, half: number): Mishap[] {
  const { y_mm, span } = line;
  let best: Mishap | null = null;
  for (let i = half + line.ends; i + half + line.ends < y_mm.length; i++) {
    const [a, b] = [y_mm[i - half]!, y_mm[i + half]!];
    const much = b - a - 2 * half * usual;
    if (much >= LEAST_JUMP_MM && (best === null || much > best.much))
      best = { y_mm: (a + b) / 2, t_s: t[span.from + i]!, much, side: null, from_mm: a, to_mm: b };
  }
  return best === null ? [] : [best];
}

/** Beyond the outermost aim of nine strokes in ten. */
const OUTERMOST = 0.95;
const LEAST_SLIP_MM = 0.8;
/** The mean over a cycle moves by this share of the weave's width with each full spread of the cycles. */
const UNEVEN_MOVES = 1.5;
/** A hand that stays away longer than this has moved and not slipped. s */
const LONGEST_SLIP_S = 4;
/** A toe not gone to moves the middle this far up and down the joint, mm. */
const SKIPPED_ROUND_MM = 3;
const EACH = POSE_RATE_HZ / 4;

/** Off the line that the middle way keeps to on the whole: a hand that drifts does not slip. */
function slipsOf(
  trace: Trace,
  lines: readonly Midline[],
  t: Float64Array,
  skips: readonly Mishap[],
  periodCv: number,
): Mishap[] {
  const u = trace.column('aimU_mm');
  const at: number[] = [];
  const middles: number[] = [];
  for (const { span, u_mm, ends } of lines) {
    for (let i = ends; i + ends < u_mm.length; i += EACH) {
      at.push(span.from + i);
      middles.push(u_mm[i]!);
    }
  }
  const lean = slope(at, middles) ?? 0;
  const base = (median(middles) ?? 0) - lean * (median(at) ?? 0);
  const off = (i: number): number => u[i]! - base - lean * i;
  const aims: number[] = [];
  for (const { span } of lines) for (let i = span.from; i < span.to; i++) aims.push(off(i));
  const right = quantile(aims, OUTERMOST);
  const left = quantile(aims, 1 - OUTERMOST);
  const unsure = UNEVEN_MOVES * periodCv * (right - left);
  const out: Mishap[] = [];
  for (const { span, u_mm, y_mm, ends } of lines) {
    let worst: Mishap | null = null;
    let away = 0;
    for (let i = ends; i + ends < u_mm.length; i++) {
      const aim = off(span.from + i);
      const beyond = Math.max(aim - right, left - aim);
      const middle = u_mm[i]! - base - lean * (span.from + i);
      if (beyond > LEAST_SLIP_MM) away++;
      const y = y_mm[i]!;
      if (skips.some((s) => s.much > 1 && y >= s.from_mm - SKIPPED_ROUND_MM && y <= s.to_mm + SKIPPED_ROUND_MM))
        continue;
      // An uneven beat moves the mean over a cycle, too, and the hand has not left its way.
      const aside = Math.abs(middle) - unsure;
      const much = Math.max(beyond, aside);
      if (much < LEAST_SLIP_MM || (worst !== null && much <= worst.much)) continue;
      const side = (beyond >= aside ? aim > right : middle > 0) ? 'A' : 'B';
      worst = { y_mm: y, t_s: t[span.from + i]!, much, side, from_mm: y, to_mm: y };
    }
    if (worst !== null && away <= LONGEST_SLIP_S * POSE_RATE_HZ) out.push(worst);
  }
  return out;
}

/** Turned back before this share of the hand's own usual reach, a toe was not gone to. */
const SKIPPED = 0.5;

/** ... and the stroke there is shorter than this share of the usual one: a hand that lies to one side skips nothing. */
const SHORT_STROKE = 0.75;
/** The usual reach is what the hand gets to in its better strokes: this share of them stay inside it. */
const GONE_TO = 0.8;
/** Two misses nearer in time than this share of a cycle are one. */
const APART = 0.6;

function skipsOf(run: readonly ToeVisit[], all: readonly ToeVisit[], cycle_s: number): Mishap[] {
  const out: Mishap[] = [];
  const reachOf = (toe: 'A' | 'B'): number => {
    const reaches = all.filter((v) => v.toe === toe).map((v) => v.reach_mm);
    return reaches.length > 0 ? quantile(reaches, GONE_TO) : 0;
  };
  const usual = { A: reachOf('A'), B: reachOf('B') };
  const strokes = run.map((v, k) => strokeAt(run, k) ?? v.reach_mm + usual[v.toe === 'A' ? 'B' : 'A']);
  const width = strokes.length > 0 ? quantile(strokes, GONE_TO) : 0;
  for (const toe of ['A', 'B'] as const) {
    let missed: ToeVisit[] = [];
    const end = (): void => {
      const [a, b] = [missed[0], missed.at(-1)];
      if (a !== undefined && b !== undefined) {
        const place = { y_mm: (a.y_mm + b.y_mm) / 2, t_s: a.from_s, from_mm: a.y_mm, to_mm: b.y_mm };
        out.push({ ...place, much: missed.length, side: toe });
      }
      missed = [];
    };
    for (const [k, v] of run.entries()) {
      if (v.toe !== toe) continue;
      const stroke = strokes[k]!;
      const short = usual[toe] > 0 && v.reach_mm < SKIPPED * usual[toe] && stroke < SHORT_STROKE * width;
      const again = missed.length > 0 && v.from_s - missed.at(-1)!.from_s < APART * cycle_s;
      if (short && !again) missed.push(v);
      else if (!short) end();
    }
    end();
  }
  return out;
}

/** From a toe to the farther of the other side's visits beside it; null where there is none. */
function strokeAt(run: readonly ToeVisit[], k: number): number | null {
  const v = run[k]!;
  const beside = [run[k - 1], run[k + 1]].flatMap((o) => (o === undefined || o.toe === v.toe ? [] : [o.reach_mm]));
  return beside.length > 0 ? v.reach_mm + Math.max(...beside) : null;
}

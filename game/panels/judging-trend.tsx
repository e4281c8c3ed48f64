import { type Differences, type JudgingTrend, LEAST_GUESSES, trendOf } from '../core/practice/judge.ts';
import type { OwnJudgement } from '../core/practice/record.ts';
import { words } from '../locale/index.ts';

const w = words.practice.trend;
const WIDTH = 520;
const HEIGHT = 84;
const EDGE = 8;
/** Fewer wrong calls than this say nothing of which way somebody leans; twice as many one way as the other do. */
const LEAST_WRONG = 4;

/** How well somebody judges: agreement over time, which way it leans, and guesses against readings (Bland and Altman 1986). */
export function JudgingTrendView({ judgements }: { judgements: readonly OwnJudgement[] }) {
  if (judgements.length === 0) return <p>{w.none}</p>;
  const trend = trendOf(judgements);
  return (
    <>
      <p data-testid="judging">
        {w.sum(trend.right, trend.of, trend.count)} {w.faults(trend.faults.seen, trend.faults.there)}{' '}
        {w.held(trend.held.seen, trend.held.there)} {w.leans[leaning(trend)]}
      </p>
      <Shares trend={trend} />
      {trend.legs && <Legs legs={trend.legs} />}
    </>
  );
}

function leaning({ missed, imagined }: JudgingTrend): keyof typeof w.leans {
  if (missed + imagined < LEAST_WRONG) return 'few';
  if (missed >= 2 * imagined) return 'passes';
  return imagined >= 2 * missed ? 'finds' : 'even';
}

function Shares({ trend: { shares } }: { trend: JudgingTrend }) {
  const step = Math.min(36, (WIDTH - 2 * EDGE) / shares.length);
  const y = (share: number): number => HEIGHT - EDGE - share * (HEIGHT - 2 * EDGE);
  const known = shares.flatMap(({ attempt, share }, i) => (share === null ? [] : [{ attempt, share, i }]));
  const said = known.map(({ share }) => `${Math.round(100 * share)} %`).join(', ');
  return (
    <figure>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={`${w.chart}: ${said}`}>
        <line class="limit" x1={0} x2={WIDTH} y1={y(1)} y2={y(1)} />
        <line class="limit" x1={0} x2={WIDTH} y1={y(0.5)} y2={y(0.5)} />
        <polyline points={known.map(({ share, i }) => `${EDGE + step * (i + 0.5)},${y(share)}`).join(' ')} />
        {known.map(({ attempt, share, i }) => (
          <circle key={attempt} cx={EDGE + step * (i + 0.5)} cy={y(share)} r={3} />
        ))}
      </svg>
      <figcaption class="unit">{w.chart}</figcaption>
    </figure>
  );
}

/** Difference against mean: the middle line is how far off on the whole, the outer ones hold nineteen in twenty. */
function Legs({ legs: { pairs, bias_mm, limits_mm } }: { legs: Differences }) {
  const d = pairs.map((p) => p.said_mm - p.was_mm);
  const m = pairs.map((p) => (p.said_mm + p.was_mm) / 2);
  const reach = 1.1 * Math.max(0.5, ...d.map(Math.abs), Math.abs(limits_mm?.from ?? 0), Math.abs(limits_mm?.to ?? 0));
  const [from, to] = [Math.min(...m) - 0.5, Math.max(...m) + 0.5];
  const x = (v: number): number => EDGE + ((v - from) / (to - from)) * (WIDTH - 2 * EDGE);
  const y = (v: number): number => HEIGHT / 2 - (v / reach) * (HEIGHT / 2 - EDGE);
  const level = (v: number, kind: string) => <line class={kind} x1={0} x2={WIDTH} y1={y(v)} y2={y(v)} />;
  return (
    <figure>
      <p>
        {w.legs(bias_mm, pairs.length)} {limits_mm ? w.limits(limits_mm.from, limits_mm.to) : w.fewLegs(LEAST_GUESSES)}
      </p>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={w.legChart}>
        {level(0, 'zero')}
        {level(bias_mm, 'bias')}
        {limits_mm && level(limits_mm.from, 'limit')}
        {limits_mm && level(limits_mm.to, 'limit')}
        {pairs.map((p, i) => (
          <circle key={`${p.said_mm} ${p.was_mm} ${i}`} cx={x(m[i])} cy={y(d[i])} r={3} />
        ))}
      </svg>
      <figcaption class="unit">{w.legChart}</figcaption>
    </figure>
  );
}

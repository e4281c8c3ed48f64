import type { Series } from '../core/session/logbook.ts';
import type { AttemptEntry } from '../core/session/shelf.ts';
import { words } from '../locale/index.ts';

const w = words.logbook;
const WIDTH = 520;
const HEIGHT = 84;
const EDGE = 8;
/** Widest step from attempt to attempt, px: three attempts are not spread over the whole sheet. */
const STEP = 36;

interface Bar {
  id: string;
  value: number;
  give: number;
}

interface ChartProps {
  name: string;
  note: string;
  attempts: readonly AttemptEntry[];
  bars: readonly Bar[];
  limit: number | null;
  best: AttemptEntry | null;
  open: (id: string) => void;
}

/** A measure over attempts: a bar an attempt, as tall as its plus-minus, and the limit as a line. */
export function LogChart({
  series,
  attempts,
  best,
  open,
}: {
  series: Series;
  attempts: readonly AttemptEntry[];
  best: AttemptEntry | null;
  open: (id: string) => void;
}) {
  const last = series.points[series.points.length - 1].of;
  const { unit } = series;
  return (
    <Chart
      name={words.findings.measure(series.measure)}
      note={`${w.last(last.reading, last.plusMinus, unit)}, ${w.limit[last.sense](last.limit, unit)}`}
      attempts={attempts}
      bars={series.points.map(({ id, of }) => ({ id, value: of.reading, give: of.plusMinus }))}
      limit={last.limit}
      best={best}
      open={open}
    />
  );
}

/** The trend number over attempts; nowhere else does it stand this large. */
export function TrendChart({ attempts, open }: { attempts: readonly AttemptEntry[]; open: (id: string) => void }) {
  const bars = attempts.flatMap(({ id, score }) => (typeof score === 'number' ? [{ id, value: score, give: 0 }] : []));
  if (bars.length === 0) return null;
  return <Chart name={w.trend} note={w.trendIs} attempts={attempts} bars={bars} limit={null} best={null} open={open} />;
}

function Chart({ name, note, attempts, bars, limit, best, open }: ChartProps) {
  const all = bars.flatMap(({ value, give }) => [value - give, value + give]);
  if (limit !== null) all.push(limit);
  const [least, most] = [Math.min(...all), Math.max(...all)];
  const y = (v: number): number =>
    most === least ? HEIGHT / 2 : HEIGHT - EDGE - ((v - least) / (most - least)) * (HEIGHT - 2 * EDGE);
  const step = Math.min(STEP, (WIDTH - 2 * EDGE) / Math.max(1, attempts.length));
  const x = (id: string): number => EDGE + step * (attempts.findIndex((e) => e.id === id) + 0.5);
  const said = bars.map(({ value }) => value).join(', ');
  return (
    <li>
      <h4>
        {name} <span class="unit">{note}</span>
      </h4>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`}>
        <title>{w.chart(name, said)}</title>
        {limit !== null && <line class="limit" x1={0} x2={WIDTH} y1={y(limit)} y2={y(limit)} />}
        {bars.map(({ id, value, give }) => (
          <a
            key={id}
            href={`#${id}`}
            class={id === best?.id ? 'bar best' : 'bar'}
            aria-label={w.openIt(name, value)}
            onClick={(event) => {
              event.preventDefault();
              open(id);
            }}
          >
            <rect class="catch" x={x(id) - step / 2} y={0} width={step} height={HEIGHT} />
            <line x1={x(id)} x2={x(id)} y1={y(value - give)} y2={y(value + give)} />
            <circle cx={x(id)} cy={y(value)} r={id === best?.id ? 5 : 3} />
          </a>
        ))}
      </svg>
    </li>
  );
}

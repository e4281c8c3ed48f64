import type { TraineeRow } from '../../../scoring/index.ts';
import { words } from '../../locale/index.ts';

const STEP = 18;
const HEIGHT = 40;
const EDGE = 5;

/** A trainee's own trend numbers over their attempts, in the order they were made. */
export function TrendLine({ row }: { row: TraineeRow }) {
  const points = row.attempts.map((entry, i) => {
    const { score } = entry.scored.result;
    return score === null ? null : { x: EDGE + i * STEP, y: EDGE + HEIGHT * (1 - score / 100), score };
  });
  if (points.filter((p) => p !== null).length < 2) return null;
  const width = 2 * EDGE + (row.attempts.length - 1) * STEP;
  const height = HEIGHT + 2 * EDGE;
  return (
    <figure class="trend-line">
      <svg
        viewBox={`0 0 ${width} ${height}`}
        width={width}
        height={height}
        role="img"
        aria-label={words.desk.class.line}
      >
        <line class="rule" x1={0} y1={EDGE} x2={width} y2={EDGE} />
        <line class="rule" x1={0} y1={EDGE + HEIGHT} x2={width} y2={EDGE + HEIGHT} />
        {points.map((p, i) => {
          const before = points[i - 1];
          return p && before ? <line key={`${p.x} line`} x1={before.x} y1={before.y} x2={p.x} y2={p.y} /> : null;
        })}
        {points.map((p) => p && <circle key={p.x} cx={p.x} cy={p.y} r={2.6} />)}
      </svg>
      <figcaption class="unit">{words.desk.class.line}</figcaption>
    </figure>
  );
}

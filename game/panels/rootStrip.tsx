import { useEffect, useRef } from 'preact/hooks';
import { words } from '../locale/index.ts';
import type { Session } from '../session/session.ts';
import { exercise, finished } from '../state.ts';
import { type Camera, toPane } from '../view/camera.ts';

const WIDTH = 62;
const MIDDLE = WIDTH / 2;
/** Depth drawn to its side of the root line, px per mm; clipped at the strip's edge. */
const PX_PER_MM = 11;

/**
 * The root opened as if the fillet had been broken, beside the joint and on the same millimetres. Grey hatching is metal that tore
 * (tied in), bare paper with a fine rule is a plate edge that never melted (not joined).
 */
export function RootStripView({ session, camera }: { session: Session; camera: Camera }) {
  const done = finished.value;
  const y = (mm: number): number => toPane(camera, 0, mm).y_px;
  const { length_mm } = exercise.value.joint;
  const box = useRef<SVGSVGElement>(null);
  // By pointer; by key the cutting line reaches the same places.
  useEffect(() => {
    const element = box.current;
    if (!element) return;
    const open = (event: MouseEvent): void => {
      if (!finished.value) return;
      const top = element.getBoundingClientRect().top;
      session.goTo((camera.originY_px - (event.clientY - top)) / camera.scale, null);
    };
    element.addEventListener('click', open);
    return () => element.removeEventListener('click', open);
  }, [session, camera]);
  return (
    <aside class="strip quiet">
      <svg ref={box} width={WIDTH} height={camera.height_px} role="img" aria-label={label(done?.strip)}>
        <title>{label(done?.strip)}</title>
        <defs>
          <pattern id="torn" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(38)">
            <rect width="5" height="5" class="tornground" />
            <line x1="0" y1="0" x2="0" y2="5" class="tornline" />
          </pattern>
        </defs>
        <rect class="bed" x={6} width={WIDTH - 12} y={y(length_mm)} height={Math.max(0, y(0) - y(length_mm))} />
        {done && <Fused strip={done.strip} y={y} />}
        <line class="rootline" x1={MIDDLE} x2={MIDDLE} y1={y(length_mm)} y2={y(0)} />
      </svg>
      <span class="stripname">
        {words.strip.title}
        {done && <b> {words.strip.share(shareOf(done.strip.fused))}</b>}
      </span>
    </aside>
  );
}

function Fused({
  strip,
  y,
}: {
  strip: { y_mm: Float64Array; depthA_mm: Float64Array; depthB_mm: Float64Array; fused: Uint8Array };
  y: (mm: number) => number;
}) {
  const n = strip.y_mm.length;
  const step = n > 1 ? Math.abs(y(strip.y_mm[1]) - y(strip.y_mm[0])) : 2;
  const stretches: { from: number; to: number }[] = [];
  for (let j = 0; j < n; j++) {
    if (!strip.fused[j]) continue;
    const last = stretches.at(-1);
    if (last && last.to === j - 1) last.to = j;
    else stretches.push({ from: j, to: j });
  }
  const half = MIDDLE - 6;
  const reach = (depth: number): number => Math.max(2, Math.min(half, 3 + depth * PX_PER_MM));
  const outline = (from: number, to: number): string => {
    const left: string[] = [];
    const right: string[] = [];
    for (let j = from; j <= to; j++) {
      const at = y(strip.y_mm[j]).toFixed(1);
      right.push(`${(MIDDLE + reach(strip.depthA_mm[j])).toFixed(1)} ${at}`);
      left.unshift(`${(MIDDLE - reach(strip.depthB_mm[j])).toFixed(1)} ${at}`);
    }
    return `M${right.join('L')}L${left.join('L')}Z`;
  };
  return (
    <g>
      {stretches.map(({ from, to }) =>
        from === to ? (
          <rect key={from} class="torn" x={MIDDLE - 3} width={6} y={y(strip.y_mm[from]) - step / 2} height={step} />
        ) : (
          <path key={from} class="torn" d={outline(from, to)} />
        ),
      )}
    </g>
  );
}

function shareOf(fused: Uint8Array): number {
  let sum = 0;
  for (const f of fused) sum += f;
  return fused.length === 0 ? 0 : sum / fused.length;
}

function label(strip: { fused: Uint8Array } | undefined): string {
  return strip ? `${words.strip.title}: ${words.strip.share(shareOf(strip.fused))}` : words.strip.empty;
}

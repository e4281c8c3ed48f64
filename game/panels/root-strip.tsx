import { useEffect, useRef } from 'preact/hooks';
import { type RootPlace, tiedIn, weldedDown, wholePercent } from '../../scoring/index.ts';
import { type Camera, toPane } from '../core/hand/camera.ts';
import type { Session } from '../core/session/session.ts';
import { words } from '../locale/index.ts';
import { exercise, finished, opened, result } from '../page.ts';

const WIDTH = 62;
const MIDDLE = WIDTH / 2;
const EDGE = 6;
/** Depth of fusion drawn to its side of the root line, px per mm; clipped at the strip's edge. */
const PX_PER_MM = 12;
const LEAST_PX = 4;

/**
 * The root opened as if the fillet had been broken, beside the joint and on the same millimetres. Hatching is metal that tore (tied
 * in), wide to each side as far as it reached; bare ruled faces are plates that never joined; crosses in a dashed outline stand where that is nearer than
 * it can be read; a dotted outline is not judged; nothing is no weld.
 */
export function RootStripView({ session, camera }: { session: Session; camera: Camera }) {
  const box = useRef<SVGSVGElement>(null);
  const strip = opened.value;
  const { joint } = exercise.value;
  const judged_mm = exercise.value.judged;
  // A piece of another length than the exercise's ends where it ends.
  const judged = {
    from_mm: Math.min(judged_mm.from_mm, joint.length_mm),
    to_mm: Math.min(judged_mm.to_mm, joint.length_mm),
  };
  const y = (mm: number): number => toPane(camera, 0, mm).y_px;
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
  const label = strip ? `${words.strip.title}: ${share()}${doubt()}` : words.strip.empty;
  return (
    <aside class="strip quiet">
      <svg
        ref={box}
        width={WIDTH}
        height={camera.height_px}
        role="img"
        aria-label={label}
        data-testid="strip"
        data-measured={strip !== null}
      >
        <title>{label}</title>
        <defs>
          <pattern id="torn" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(38)">
            <rect width="5" height="5" class="tornground" />
            <line x1="0" y1="0" x2="0" y2="5" class="tornline" />
          </pattern>
          <pattern id="doubt" width="8" height="8" patternUnits="userSpaceOnUse">
            <path class="doubtcross" d="M2.5 2.5l3 3M5.5 2.5l-3 3" />
          </pattern>
          <pattern id="face" width="4" height="4" patternUnits="userSpaceOnUse">
            <line x1="2" y1="0" x2="2" y2="4" class="faceline" />
          </pattern>
        </defs>
        <rect
          class="bed"
          x={EDGE}
          width={WIDTH - 2 * EDGE}
          y={y(joint.length_mm)}
          height={Math.max(0, y(0) - y(joint.length_mm))}
        />
        {strip && <Stretches strip={strip} y={y} />}
        <line class="rootline" x1={MIDDLE} x2={MIDDLE} y1={y(joint.length_mm)} y2={y(0)} />
        <path
          class="judged"
          d={`M${EDGE - 4} ${y(judged.from_mm)}H${EDGE}M${EDGE - 4} ${y(judged.from_mm)}V${y(judged.to_mm)}M${EDGE - 4} ${y(judged.to_mm)}H${EDGE}`}
        />
      </svg>
      <span class="stripname">
        {words.strip.title}
        {strip && (
          <b>
            {' '}
            {share()}
            {doubt()}
          </b>
        )}
      </span>
    </aside>
  );
}

function share(): string {
  const bead = result.value?.bead;
  const part = bead?.rootFusedShare ?? null;
  // The share is of the heights that carry metal: of a run that stopped early it is not the judged length's.
  if (!bead || part === null) return '';
  return down() ? words.strip.weldedDown : words.strip.share(wholePercent(part), bead.bare_mm.length === 0);
}

/** Over how much of the weld in the judged length that is too close to tell. */
function doubt(): string {
  const { from_mm, to_mm } = exercise.value.judged;
  const places = (opened.value ?? []).filter((p) => p.welded && p.y_mm >= from_mm && p.y_mm <= to_mm);
  const n = places.filter((p) => kindOf(p) === 'doubt').length;
  return n === 0 ? '' : words.practice.rootInDoubt(wholePercent(n / places.length));
}

/** Welded from the top down: nothing of it is drawn as tied in. */
function down(): boolean {
  return result.value !== null && weldedDown(result.value);
}

type Kind = 'torn' | 'doubt' | 'face' | 'unjudged' | 'none';

const KINDS = { 'tied in': 'torn', 'in doubt': 'doubt', 'not tied in': 'face' } as const;

function kindOf(place: RootPlace): Kind {
  if (!place.welded) return 'none';
  if (down()) return 'unjudged';
  // The root is only as good as its colder plate.
  return KINDS[tiedIn(Math.min(place.rootFusionA_mm, place.rootFusionB_mm), place.plusMinus_mm)];
}

/** Neighbouring heights of one kind drawn as one outline. */
function Stretches({ strip, y }: { strip: readonly RootPlace[]; y: (mm: number) => number }) {
  const parts: { kind: Kind; places: RootPlace[] }[] = [];
  for (const place of strip) {
    const kind = kindOf(place);
    const last = parts.at(-1);
    if (last?.kind === kind) last.places.push(place);
    else parts.push({ kind, places: [place] });
  }
  const half = strip.length > 1 ? Math.abs(y(strip[1].y_mm) - y(strip[0].y_mm)) / 2 : 2;
  return (
    <g>
      {parts
        .filter(({ kind }) => kind !== 'none')
        .map(({ kind, places }) => (
          <path key={places[0].y_mm} class={kind} d={outline(kind, places, y, half)} />
        ))}
    </g>
  );
}

function outline(kind: Kind, places: readonly RootPlace[], y: (mm: number) => number, half: number): string {
  const most = MIDDLE - EDGE - 1;
  const reach = (depth_mm: number): number =>
    kind !== 'torn' ? most : Math.max(LEAST_PX, Math.min(most, LEAST_PX + depth_mm * PX_PER_MM));
  const bottom = Math.min(y(0), y(places[0].y_mm) + half);
  const top = Math.max(y(exercise.value.joint.length_mm), y(places[places.length - 1].y_mm) - half);
  const row = (place: RootPlace, at: number): [string, string] => [
    `${(MIDDLE + reach(place.rootFusionA_mm)).toFixed(1)} ${at.toFixed(1)}`,
    `${(MIDDLE - reach(place.rootFusionB_mm)).toFixed(1)} ${at.toFixed(1)}`,
  ];
  const rows = [
    row(places[0], bottom),
    ...places.map((place) => row(place, y(place.y_mm))),
    row(places[places.length - 1], top),
  ];
  return `M${rows.map(([right]) => right).join('L')}L${rows
    .map(([, left]) => left)
    .reverse()
    .join('L')}Z`;
}

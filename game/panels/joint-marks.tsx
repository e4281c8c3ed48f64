import { metalEnds } from '../core/bench/metal-ends.ts';
import { type Camera, toPane } from '../core/hand/camera.ts';
import type { Session } from '../core/session/session.ts';
import { legOf } from '../core/session/setup.ts';
import { words } from '../locale/index.ts';
import { oneDecimal } from '../locale/numbers.ts';
import { cutAt, exercise, finished, guides, result } from '../page.ts';
import { flagColumns, flagsOf } from './flags.ts';

const RULE_X = 36;
/** Letters nearer than this would print over each other. */
const LETTER_PX = 18;
const HANDLE_STEP_MM = 0.5;
/** Room a flag takes, and the shortest line it stands on, px. */
const FLAG_PX = 25;
const LEADER_PX = 30;

/** Letter of a cut fixed beforehand; A is the one being dragged. */
export function cutLetter(index: number): string {
  return String.fromCharCode('B'.charCodeAt(0) + index);
}

/** Rule, toe marks, fixed cuts, cutting line and flags, drawn over the joint. */
export function JointMarks({ session, camera }: { session: Session; camera: Camera }) {
  const e = exercise.value;
  const { low_mm, high_mm } = metalEnds(e.joint);
  const y = (mm: number): number => toPane(camera, 0, mm).y_px;
  const x = (mm: number): number => toPane(camera, mm, 0).x_px;
  const toe = legOf(e) / Math.SQRT2;
  const done = finished.value !== null;
  return (
    <>
      <svg class="marks" width={camera.width_px} height={camera.height_px}>
        <title>{words.cut.title(cutAt.value)}</title>
        <Rule y={y} low={0} high={e.joint.length_mm} scale={camera.scale} />
        {e.joint.tabs && (
          <g class="tabline">
            <line x1={RULE_X} x2={camera.width_px - 12} y1={y(0)} y2={y(0)} />
            <line x1={RULE_X} x2={camera.width_px - 12} y1={y(e.joint.length_mm)} y2={y(e.joint.length_mm)} />
          </g>
        )}
        {guides.value.toeMarks && (
          <g class="toemarks">
            {[-toe, toe].map((u) => (
              <line key={u} x1={x(u)} x2={x(u)} y1={y(high_mm)} y2={y(low_mm)} />
            ))}
          </g>
        )}
        <g class="fixedcuts">
          {e.cuts_mm.map((at, i) => (
            <g key={at}>
              <title>{words.joint.fixedCut(at)}</title>
              <path d={`M${RULE_X} ${y(at)} h14 M${camera.width_px - 28} ${y(at)} h14`} />
              {Math.abs(y(at) - y(cutAt.value)) > LETTER_PX && (
                <text x={camera.width_px - 21} y={y(at) - 5}>
                  {cutLetter(i)}
                </text>
              )}
            </g>
          ))}
        </g>
        {done && <CutLine session={session} camera={camera} y={y} />}
      </svg>
      {done && <Flags session={session} camera={camera} />}
    </>
  );
}

/** Numbered places on the bead, beside the toe they belong to. */
function Flags({ session, camera }: { session: Session; camera: Camera }) {
  const flags = result.value ? flagsOf(result.value) : [];
  const toe = legOf(exercise.value) / Math.SQRT2;
  const columns = flagColumns(flags, FLAG_PX / camera.scale);
  const inside = toPane(camera, toe, 0).x_px - toPane(camera, 0, 0).x_px;
  return (
    <>
      {flags.map((flag, i) => {
        const out = flag.side === 'B' ? -1 : 1;
        const at = toPane(camera, flag.side === null ? 0 : out * toe, flag.y_mm);
        // Every leader ends at the same distance from the toe; one from the root is longer by the way to the toe.
        const reach = LEADER_PX + columns[i] * FLAG_PX + (flag.side === null ? inside : 0);
        return (
          <button
            key={flag.number}
            type="button"
            class={`flag ${out < 0 ? 'left' : 'right'}`}
            style={{ left: `${at.x_px}px`, top: `${at.y_px}px`, '--leader': `${reach}px` }}
            aria-label={words.joint.flag(flag.number, flag.text)}
            title={flag.text}
            onPointerDown={(event) => event.stopPropagation()}
            onClick={() => session.goTo(flag.y_mm, flag.t_s)}
          >
            <span>{flag.number}</span>
          </button>
        );
      })}
    </>
  );
}

/** Millimetres along the left edge, zero at the bottom of the joint proper. */
function Rule({ y, low, high, scale }: { y: (mm: number) => number; low: number; high: number; scale: number }) {
  const every = scale > 5.5 ? 1 : scale > 2.2 ? 5 : 10;
  const named = scale > 4.5 ? 10 : 20;
  const marks: number[] = [];
  for (let mm = low; mm <= high; mm += every) marks.push(mm);
  return (
    <g class="rule">
      <line x1={RULE_X} x2={RULE_X} y1={y(low)} y2={y(high)} />
      {marks.map((mm) => (
        <line key={mm} x1={RULE_X} x2={RULE_X - (mm % 10 === 0 ? 9 : mm % 5 === 0 ? 6 : 3)} y1={y(mm)} y2={y(mm)} />
      ))}
      {marks
        .filter((mm) => mm % named === 0)
        .map((mm) => (
          <text key={mm} x={RULE_X - 13} y={y(mm) + 4}>
            {mm}
          </text>
        ))}
    </g>
  );
}

/** The cutting line as on a drawing: chain line, arrows the way one looks, a letter at each end. It can be dragged. */
function CutLine({ session, camera, y }: { session: Session; camera: Camera; y: (mm: number) => number }) {
  const at = y(cutAt.value);
  const right = camera.width_px - 14;
  const move = (event: PointerEvent & { currentTarget: SVGGElement }): void => {
    if (!event.currentTarget.hasPointerCapture(event.pointerId)) return;
    const box = event.currentTarget.ownerSVGElement?.getBoundingClientRect();
    if (box) session.cutAt((camera.originY_px - (event.clientY - box.top)) / camera.scale);
  };
  return (
    <g
      class="cutline"
      tabindex={0}
      role="slider"
      aria-orientation="vertical"
      aria-label={words.joint.handle}
      aria-valuenow={cutAt.value}
      aria-valuemin={0}
      aria-valuemax={exercise.value.joint.length_mm}
      aria-valuetext={`${oneDecimal(cutAt.value)} mm`}
      onPointerDown={(event) => {
        event.stopPropagation();
        event.currentTarget.setPointerCapture(event.pointerId);
      }}
      onPointerMove={move}
      onKeyDown={(event) => {
        const by = { ArrowUp: HANDLE_STEP_MM, ArrowDown: -HANDLE_STEP_MM, PageUp: 5, PageDown: -5 }[event.key];
        if (by === undefined) return;
        event.preventDefault();
        event.stopPropagation();
        session.cutAt(cutAt.value + by);
      }}
    >
      <rect class="grip" x={RULE_X + 2} y={at - 11} width={Math.max(0, right - RULE_X)} height={22} />
      <line class="chain" x1={RULE_X + 16} x2={right - 14} y1={at} y2={at} />
      <path class="ends" d={`M${RULE_X + 4} ${at} h18 M${right - 20} ${at} h18`} />
      <path class="arrow" d={`M${RULE_X + 8} ${at} v9 m-3 -4 l3 5 l3 -5 M${right - 6} ${at} v9 m-3 -4 l3 5 l3 -5`} />
      <text x={RULE_X + 14} y={at - 5}>
        {words.cut.letter}
      </text>
      <text x={right - 16} y={at - 5}>
        {words.cut.letter}
      </text>
    </g>
  );
}

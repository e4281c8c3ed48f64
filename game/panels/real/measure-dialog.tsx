import { useEffect, useMemo } from 'preact/hooks';
import type { EtchedCut, OwnReading, PictureSpot } from '../../../scoring/index.ts';
import type { Session } from '../../core/session/session.ts';
import { words } from '../../locale/index.ts';
import { oneDecimal, trimmed } from '../../locale/numbers.ts';
import { real } from '../../locale/real-words.ts';
import { cutAt, exercise, measuring, revealedAt } from '../../page.ts';
import { Dialog } from '../dialog.tsx';
import { Board, Loupe } from './board.tsx';
import { missing, pointsOf } from './marks.ts';
import { StepFoot, StepList } from './step-list.tsx';
import { cutSteps } from './steps.ts';
import { useMarks } from './use-marks.ts';

const w = real.measure;

/** A cut of the bench as it lies under the glass: the trainee marks it first, then sees what the bench reads. */
export function MeasureDialog({ session, close }: { session: Session; close: () => void }) {
  const kind = exercise.value.joint.kind;
  const steps = useMemo(() => cutSteps(kind), [kind]);
  const set = useMarks(steps);
  const y_mm = cutAt.peek();
  useEffect(() => {
    session.measurer.open(y_mm);
    return () => session.measurer.close();
  }, [session, y_mm]);
  const now = measuring.value;
  const cut = now?.cut ?? null;
  const reading = now?.reading ?? null;
  const href = useMemo(() => (cut ? `data:image/svg+xml;charset=utf-8,${encodeURIComponent(cut.svg)}` : null), [cut]);
  const left = missing(steps, set.marks);
  const picture = cut && { href, width: cut.width_px, height: cut.height_px };
  const compare = (): void => {
    if (!cut) return;
    revealedAt.value = y_mm;
    session.measurer.compare(ownMarks(cut, (id) => pointsOf(set.marks, id)));
  };
  return (
    <Dialog title={w.title(oneDecimal(y_mm))} close={close} wide>
      <div class="marking">
        {picture && cut ? (
          <Board
            picture={picture}
            steps={steps}
            marks={set.marks}
            active={set.active}
            chosen={set.chosen}
            fixed={reading !== null}
            place={set.place}
            foot={!reading && <StepFoot steps={steps} marks={set.marks} active={set.active} choose={set.setActive} />}
            change={set.change}
          >
            {reading && <TrueLines cut={cut} reading={reading} />}
          </Board>
        ) : (
          <p class="teach">{w.waiting}</p>
        )}
        <div class="markside">
          {reading ? (
            <Outcome reading={reading} />
          ) : (
            <>
              <p class="unit">{w.teach}</p>
              <StepList
                steps={steps}
                marks={set.marks}
                active={set.active}
                choose={set.setActive}
                change={set.change}
              />
              {picture && <Loupe picture={picture} steps={steps} marks={set.marks} chosen={set.chosen} />}
              {now?.refused && <p role="alert">{words.problems.found(now.refused)}</p>}
            </>
          )}
          <p class="buttons">
            {reading ? (
              <button type="button" onClick={() => session.measurer.again()}>
                {w.again}
              </button>
            ) : (
              <button type="button" class="strong" disabled={left.length > 0} onClick={compare}>
                {w.compare}
              </button>
            )}
            <button type="button" onClick={close}>
              {w.close}
            </button>
          </p>
          {!reading && left.length > 0 && (
            <p class="unit">{real.board.still(left.map((step) => step.name.toLowerCase()).join('; '))}</p>
          )}
        </div>
      </div>
    </Dialog>
  );
}

function ownMarks(cut: EtchedCut, points: (id: string) => readonly PictureSpot[]) {
  const place = ({ x, y }: PictureSpot) => ({ a: (x - cut.root.x) / cut.scale, b: (cut.root.y - y) / cut.scale });
  return {
    root: place(points('root')[0]),
    toeA: place(points('toeA')[0]),
    toeB: place(points('toeB')[0]),
    face: points('face').map(place),
    fusionA: points('fusionA').map(place),
    fusionB: points('fusionB').map(place),
  };
}

/** Fusion line and edge of the heat-affected zone as they are, over the etch. */
function TrueLines({ cut, reading }: { cut: EtchedCut; reading: OwnReading }) {
  const path = (line: readonly { a: number; b: number }[]): string =>
    `M${line.map((p) => `${(cut.root.x + p.a * cut.scale).toFixed(1)} ${(cut.root.y - p.b * cut.scale).toFixed(1)}`).join('L')}`;
  return (
    <g class="truelines">
      <path class="zone" d={reading.zoneEdges.map(path).join('')} />
      <path class="fusion" d={reading.fusionLines.map(path).join('')} />
    </g>
  );
}

function Outcome({ reading }: { reading: OwnReading }) {
  const kind = exercise.value.joint.kind;
  const said = (row: OwnReading['rows'][number], x: number): string =>
    row.measure === 'root' ? w.root(x) : trimmed(x, 2);
  return (
    <div class="outcome" data-testid="own-reading">
      {reading.agrees && <p class="say">{w.all}</p>}
      <ul role="status">
        {reading.sides.map((side) => (
          <li key={side.side} class={side.met === 'fusion line' ? '' : 'say'}>
            {w.line(kind, side)}
          </li>
        ))}
        {reading.marks
          .filter((mark) => !mark.agrees)
          .map((mark) => (
            <li key={mark.mark}>{w.mark(kind, mark)}</li>
          ))}
      </ul>
      <table class="readings">
        <thead>
          <tr>
            <th scope="col">{w.head.measure}</th>
            <th scope="col">{w.head.yours}</th>
            <th scope="col">{w.head.bench}</th>
            <th />
          </tr>
        </thead>
        <tbody>
          {reading.rows.map((row) => (
            <tr key={`${row.measure}${row.side}`}>
              <th scope="row">{w.row(kind, row)}</th>
              <td>{row.yours_mm === null ? w.notReached : said(row, row.yours_mm)}</td>
              <td>{said(row, row.bench_mm)}</td>
              <td class={row.agrees ? 'unit' : ''}>{row.agrees ? w.agrees : w.differs}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="unit">
        <svg class="linekey" width="28" height="8" aria-hidden="true">
          <path class="fusion" d="M0 4H28" />
        </svg>{' '}
        {w.key.fusion}{' '}
        <svg class="linekey" width="28" height="8" aria-hidden="true">
          <path class="zone" d="M0 4H28" />
        </svg>{' '}
        {w.key.zone}
      </p>
      <p class="unit">{w.tolerance}</p>
    </div>
  );
}

import { words } from '../locale/index.ts';
import { oneDecimal, whole } from '../locale/numbers.ts';
import type { Session } from '../session/session.ts';
import { cut, cutAt, exercise, finished, other, otherBusy, otherCut, shelf } from '../state.ts';
import { CutReadings } from './cutReadings.tsx';
import { Drawing } from './drawing.tsx';
import { cutLetter } from './jointMarks.tsx';

/** The section at the cutting line, and beside it the section of another attempt at the same height. */
export function CutPanel({ session }: { session: Session }) {
  const e = exercise.value;
  const done = finished.value;
  const beside = other.value;
  const others = shelf.value.filter((entry) => entry.id !== done?.id);
  return (
    <section class="cut" aria-label={words.cut.title(cutAt.value)}>
      <div class="cuthead">
        <h2>{words.cut.title(cutAt.value)}</h2>
        <span class="fixed">
          {e.cuts_mm.map((at, i) => (
            <button
              key={at}
              type="button"
              class={at === cutAt.value ? 'here' : ''}
              title={words.joint.fixedCut(at)}
              onClick={() => session.cutAt(at)}
            >
              {cutLetter(i)} {oneDecimal(at)}
            </button>
          ))}
        </span>
        {done && others.length > 0 && (
          <label class="compare">
            {words.cut.compare}{' '}
            <select
              value={beside?.id ?? ''}
              onChange={(event) => void session.compareWith(event.currentTarget.value || null)}
            >
              <option value="">{words.cut.nothing}</option>
              {others.map((entry) => (
                <option key={entry.id} value={entry.id}>
                  {entry.title},{' '}
                  {new Date(entry.made_ms).toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' })}
                  {entry.verdict ? `, ${entry.verdict}` : ''}
                </option>
              ))}
            </select>
          </label>
        )}
      </div>
      <div class={beside ? 'plates two' : 'plates'}>
        {cut.value ? (
          <Drawing cut={cut.value} leads caption={beside ? words.cut.thisOne : undefined} />
        ) : (
          <p class="teach">{words.cut.empty}</p>
        )}
        {beside ? (
          otherCut.value ? (
            <Drawing
              cut={otherCut.value}
              leads={false}
              caption={`${beside.title}; ${words.cut.difference}`}
              against={cut.value}
            />
          ) : (
            <p class="teach">
              {words.findings.weldingAgain} {whole((otherBusy.value?.share ?? 0) * 100)} %
            </p>
          )
        ) : (
          cut.value?.station && <CutReadings station={cut.value.station} />
        )}
      </div>
    </section>
  );
}

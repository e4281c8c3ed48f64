import { useState } from 'preact/hooks';
import { labWords } from '../../locale/lab-words.ts';
import { foundOut, ready } from '../../locale/live.ts';
import { Dialog } from '../../panels/dialog.tsx';
import { VerdictMark } from '../../panels/verdict-mark.tsx';
import { dayAndTime } from '../../panels/when.ts';
import type { Handed, OneHanded } from './answers.ts';
import type { Desk } from './desk.ts';

const w = labWords.desk;
const COLUMNS = ['received', 'trainee', 'exercise', 'number', 'verdict', 'score', 'first'] as const;

/** Attempts as they land, the latest first. */
export function AttemptList({ desk }: { desk: Desk }) {
  const [nameless, hide] = useState(false);
  const called = (t: { id: string; name: string }): string => (nameless ? hiddenName(desk, t.id) : t.name);
  const nameOf = (a: Handed): string => called(a.trainee);
  const { welding, waiting } = desk.now.value;
  return (
    <>
      <p data-testid="welding">{w.present.welding(welding.map(called))}</p>
      <p data-testid="waiting">{w.present.waiting(waiting.map((t) => w.present.waits(called(t), t.attempts)))}</p>
      <label class="deskrow">
        <input type="checkbox" checked={nameless} onChange={(event) => hide(event.currentTarget.checked)} />{' '}
        {w.projector}
      </label>
      <div class="scroll">
        <table class="stack" data-testid="attempts">
          <thead>
            <tr>
              {([...COLUMNS, ...(nameless ? [] : (['against'] as const))] as const).map((c) => (
                <th key={c}>{w.columns[c]}</th>
              ))}
              <th />
            </tr>
          </thead>
          <tbody>
            {desk.attempts.value.map((a) => (
              <tr key={a.id}>
                <td data-label={w.columns.received}>{dayAndTime(Date.parse(a.received))}</td>
                <td data-label={w.columns.trainee}>{nameOf(a)}</td>
                <td data-label={w.columns.exercise}>{ready(a.assignment.title)}</td>
                <td data-label={w.columns.number}>
                  {a.number} {a.late && <span class="unit">{w.late}</span>}
                </td>
                <td data-label={w.columns.verdict}>
                  {a.verdict ? <VerdictMark verdict={a.verdict} /> : <State of={a} />}
                </td>
                <td data-label={w.columns.score}>{a.score}</td>
                <td data-label={w.columns.first}>{a.firstFix}</td>
                {!nameless && (
                  <td data-label={w.columns.against}>
                    <Against of={a} />
                  </td>
                )}
                <td>
                  {!nameless && (
                    <button type="button" class="link" onClick={() => void desk.lookAt(a.id)}>
                      {w.look}
                    </button>
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {desk.looked.value && <One desk={desk} one={desk.looked.value} />}
    </>
  );
}

/** What a room sees of a trainee: the number of the plate. */
function hiddenName(desk: Desk, id: string): string {
  const at = desk.roster.value.findIndex((t) => t.id === id);
  return w.hidden(desk.roster.value[at]?.plate ?? at + 1);
}

/** Findings against an attempt, each with what shows it. */
function Against({ of }: { of: Handed }) {
  return (
    <>
      {of.evidence?.map((e) => (
        <p key={e.code} class="unit">
          {foundOut(e.text)}
        </p>
      ))}
      {of.compared === false && <p class="unit">{w.notCompared}</p>}
    </>
  );
}

function State({ of }: { of: Handed }) {
  return <span class="unit">{of.state === 'waiting' ? w.waiting : foundOut(of.fault ?? '')}</span>;
}

/** One attempt: its lines, its advice, and what speaks for or against it. */
function One({ desk, one: { handed, result, evidence } }: { desk: Desk; one: OneHanded }) {
  const close = () => void desk.lookAt(null);
  return (
    <Dialog title={`${handed.trainee.name}, ${ready(handed.assignment.title)}, ${handed.number}`} close={close}>
      {result && <VerdictMark verdict={result.verdict} />}
      {handed.fault !== null && <p>{foundOut(handed.fault)}</p>}
      <h3>{w.evidence}</h3>
      {evidence.length === 0 ? <p>{w.noEvidence}</p> : evidence.map((e) => <p key={e.code}>{foundOut(e.text)}</p>)}
      {result?.reasons
        .filter((r) => evidence.every((e) => e.code !== r.code))
        .map((r) => (
          <p key={r.code}>{foundOut(r.text)}</p>
        ))}
      <h3>{w.advice}</h3>
      <ul>
        {result?.advice.map((a) => (
          <li key={a.code}>{a.text}</li>
        ))}
      </ul>
      <p class="buttons">
        <a href={desk.address(`attempts/${handed.id}/file`)}>{w.file}</a>
        <button type="button" class="strong" onClick={close}>
          {w.close}
        </button>
      </p>
    </Dialog>
  );
}

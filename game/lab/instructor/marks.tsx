import { useEffect } from 'preact/hooks';
import { labWords } from '../../locale/lab-words.ts';
import { foundOut, ready } from '../../locale/live.ts';
import type { ClassInfo, MarkRow } from './answers.ts';
import type { Desk } from './desk.ts';

const w = labWords.desk;
const RULES = {
  best: { rule: 'best' },
  last: { rule: 'last' },
  median: { rule: 'median of last', attempts: 3 },
} as const;
type RuleName = keyof typeof RULES;

/** Marks of one exercise handed out: by the class's rule, and set by hand beside it. */
export function Marks({ desk, open }: { desk: Desk; open: ClassInfo }) {
  const assignments = desk.assignments.value;
  const marks = desk.marks.value;
  useEffect(() => {
    if (marks === null && assignments[0]) void desk.showMarks(assignments[0].id);
  }, [marks === null, assignments[0]?.id]);
  const rule: RuleName = open.marks.rule === 'median of last' ? 'median' : open.marks.rule;
  if (assignments.length === 0) return <p>{w.notOut}</p>;
  return (
    <>
      <p class="deskrow">
        <label>
          {w.exercise}{' '}
          <select value={marks?.assignment ?? ''} onChange={(event) => void desk.showMarks(event.currentTarget.value)}>
            {assignments.map((a) => (
              <option key={a.id} value={a.id}>
                {ready(a.title)}
              </option>
            ))}
          </select>
        </label>
        <label>
          {w.rule}{' '}
          <select
            value={rule}
            onChange={(event) => void desk.change({ marks: RULES[event.currentTarget.value as RuleName] })}
          >
            {(Object.keys(RULES) as RuleName[]).map((name) => (
              <option key={name} value={name}>
                {w.rules[name]}
              </option>
            ))}
          </select>
        </label>
      </p>
      <p class="unit">
        {w.reasonNeeded}{' '}
        {marks && (
          <a href={desk.address(`assignments/${marks.assignment}/one-roster/results.csv`)}>{w.oneRosterResults}</a>
        )}
      </p>
      <table class="stack" data-testid="marks">
        <thead>
          <tr>
            {(['trainee', 'attempts', 'mark', 'leftOut', 'set'] as const).map((c) => (
              <th key={c}>{w.columns[c]}</th>
            ))}
          </tr>
        </thead>
        <tbody>
          {marks?.rows.map((row) => (
            <Row key={row.trainee.id} desk={desk} row={row} />
          ))}
        </tbody>
      </table>
    </>
  );
}

function Row({ desk, row }: { desk: Desk; row: MarkRow }) {
  const latest = row.history.at(-1);
  return (
    <tr>
      <td data-label={w.columns.trainee}>{row.trainee.name}</td>
      <td data-label={w.columns.attempts}>{row.attempts}</td>
      <td data-label={w.columns.mark}>{row.computed.mark}</td>
      <td data-label={w.columns.leftOut}>
        {row.computed.leftOut.map((o) => (
          <p key={o.number} class="unit">
            {o.number}: {foundOut(o.why)}
          </p>
        ))}
      </td>
      <td data-label={w.columns.set}>
        {row.set !== null && <b>{row.set} </b>}
        {latest && (
          <span class="unit">
            {latest.reason} ({latest.by})
          </span>
        )}
        <form
          class="deskrow"
          onSubmit={(event) => {
            event.preventDefault();
            const fields = new FormData(event.currentTarget);
            const mark = String(fields.get('mark') ?? '');
            void desk.setMark(row.trainee.id, mark === '' ? null : Number(mark), String(fields.get('reason')));
            event.currentTarget.reset();
          }}
        >
          <input name="mark" type="number" min={0} max={100} aria-label={w.mark} required={row.set === null} />
          <input name="reason" required maxLength={500} aria-label={w.reason} placeholder={w.reason} />
          <button type="submit">{row.set === null ? w.setMark : `${w.setMark} / ${w.takeBack}`}</button>
        </form>
      </td>
    </tr>
  );
}

import { exercises } from '../../../scoring/index.ts';
import { labWords } from '../../locale/lab-words.ts';
import { ready } from '../../locale/live.ts';
import { dayAndTime } from '../../panels/when.ts';
import type { Desk } from './desk.ts';

const w = labWords.desk;

/** Exercises handed out, and handing out another. */
export function HandOut({ desk }: { desk: Desk }) {
  return (
    <>
      <form
        class="labform"
        onSubmit={(event) => {
          event.preventDefault();
          const fields = new FormData(event.currentTarget);
          const said = (name: string): string => String(fields.get(name) ?? '');
          const time = (name: string): string | null => (said(name) === '' ? null : new Date(said(name)).toISOString());
          const own = desk.house.exercises.value.find((e) => e.id === said('exercise'));
          void desk.handOut({
            exercise: own?.exercise ?? said('exercise'),
            opens: time('opens') ?? new Date().toISOString(),
            closes: time('closes'),
            mostAttempts: said('most') === '' ? null : Number(said('most')),
          });
        }}
      >
        <label>
          {w.exercise}
          <select name="exercise">
            <optgroup label={w.own.ready}>
              {exercises.map((e) => (
                <option key={e.name} value={e.name}>
                  {ready(e.title)}
                </option>
              ))}
            </optgroup>
            {desk.house.exercises.value.length > 0 && (
              <optgroup label={w.own.title}>
                {desk.house.exercises.value.map((e) => (
                  <option key={e.id} value={e.id}>
                    {e.title}
                  </option>
                ))}
              </optgroup>
            )}
          </select>
        </label>
        <label>
          {w.opens} ({w.now})
          <input name="opens" type="datetime-local" />
        </label>
        <label>
          {w.closes}
          <input name="closes" type="datetime-local" />
        </label>
        <label>
          {w.most}
          <input name="most" type="number" min={1} max={1000} />
        </label>
        <p>
          <button type="submit" class="strong">
            {w.handOut}
          </button>
        </p>
      </form>
      {desk.assignments.value.length === 0 ? (
        <p>{w.notOut}</p>
      ) : (
        <table data-testid="assignments">
          <thead>
            <tr>
              {(['exercise', 'opens', 'closes', 'most'] as const).map((c) => (
                <th key={c}>{w.columns[c]}</th>
              ))}
            </tr>
          </thead>
          <tbody>
            {desk.assignments.value.map((a) => (
              <tr key={a.id}>
                <td>{ready(a.title)}</td>
                <td>{dayAndTime(Date.parse(a.opens))}</td>
                <td>{a.closes === null ? w.ever : dayAndTime(Date.parse(a.closes))}</td>
                <td>{a.mostAttempts ?? w.any}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </>
  );
}

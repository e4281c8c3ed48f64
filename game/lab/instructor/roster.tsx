import { useState } from 'preact/hooks';
import { labWords } from '../../locale/lab-words.ts';
import type { ClassInfo, Trainee } from './answers.ts';
import type { Desk } from './desk.ts';

const w = labWords.desk;

/** Who is in the class; names typed, pasted or from a file. */
export function Roster({ desk, open }: { desk: Desk; open: ClassInfo }) {
  const [text, type] = useState('');
  const [said, say] = useState<string | null>(null);
  const add = async (): Promise<void> => {
    const came = await desk.addToRoster(text);
    if (came === null) return;
    say(w.added(came.added, came.known));
    type('');
  };
  const pin = async (trainee: Trainee): Promise<void> => {
    const given = await desk.givePin(trainee);
    if (given !== null) say(w.pinIs(trainee.name, given));
  };
  return (
    <>
      <form
        class="labform"
        onSubmit={(event) => {
          event.preventDefault();
          void add();
        }}
      >
        <label>
          {w.rosterSays}
          <textarea required rows={5} value={text} onInput={(event) => type(event.currentTarget.value)} />
        </label>
        <p class="deskrow">
          <button type="submit" class="strong">
            {w.rosterAdd}
          </button>
          <input
            type="file"
            accept=".csv,.txt,text/csv,text/plain"
            aria-label={w.rosterFile}
            onChange={(event) => void event.currentTarget.files?.[0]?.text().then(type)}
          />
        </p>
      </form>
      <p role="status">{said}</p>
      <label class="deskrow">
        <input
          type="checkbox"
          checked={open.pins}
          onChange={(event) => void desk.change({ pins: event.currentTarget.checked })}
        />{' '}
        {w.pins}
      </label>
      <table data-testid="roster">
        <thead>
          <tr>
            <th>{w.columns.trainee}</th>
            <th>{w.columns.pin}</th>
          </tr>
        </thead>
        <tbody>
          {desk.roster.value.map((t) => (
            <tr key={t.id}>
              <td>{t.name}</td>
              <td>
                {t.hasPin && <span class="unit">{w.hasPin} </span>}
                <button type="button" class="link" onClick={() => void pin(t)}>
                  {w.givePin}
                </button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

import { useState } from 'preact/hooks';
import { labWords } from '../../locale/lab-words.ts';
import type { ClassInfo, Trainee } from './answers.ts';
import { AskedFor } from './asked-for.tsx';
import type { Desk } from './desk.ts';
import { Teachers } from './teachers.tsx';
import { TypedName } from './typed-name.tsx';

const w = labWords.desk;

/** Erasing asks for the name: it cannot be taken back. */
function Erase({ desk, trainee, said }: { desk: Desk; trainee: Trainee; said: () => void }) {
  return (
    <AskedFor action={w.eraseOne}>
      {(close) => (
        <TypedName
          says={w.eraseSays(trainee.name)}
          name={trainee.name}
          action={w.eraseOne}
          close={close}
          take={async () => {
            if (await desk.erase(trainee)) said();
          }}
        />
      )}
    </AskedFor>
  );
}

/** Two files of a school's own system in place of a list of names. */
function OneRosterFiles({ desk, say }: { desk: Desk; say: (text: string) => void }) {
  return (
    <details>
      <summary>{w.oneRoster}</summary>
      <form
        class="labform"
        onSubmit={(event) => {
          event.preventDefault();
          const fields = new FormData(event.currentTarget);
          const text = (name: string): Promise<string> => (fields.get(name) as File).text();
          const klass = String(fields.get('class') ?? '').trim();
          void Promise.all([text('users'), text('enrollments')])
            .then(([users, enrollments]) =>
              desk.addToRoster({ users, enrollments, ...(klass === '' ? {} : { classSourcedId: klass }) }),
            )
            .then((came) => came && say(w.added(came.added, came.known)));
        }}
      >
        <label>
          users.csv
          <input name="users" type="file" accept=".csv,text/csv" required />
        </label>
        <label>
          enrollments.csv
          <input name="enrollments" type="file" accept=".csv,text/csv" required />
        </label>
        <label>
          {w.oneRosterClass}
          <input name="class" maxLength={120} />
        </label>
        <p>
          <button type="submit">{w.rosterAdd}</button>
        </p>
      </form>
    </details>
  );
}

/** Who is in the class; names typed, pasted or from a file. */
export function Roster({ desk, open }: { desk: Desk; open: ClassInfo }) {
  const [text, type] = useState('');
  const [said, say] = useState<string | null>(null);
  const add = async (): Promise<void> => {
    const came = await desk.addToRoster({ csv: text });
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
      <OneRosterFiles desk={desk} say={say} />
      <p role="status">{said}</p>
      <label class="deskrow">
        <input
          type="checkbox"
          checked={open.pins}
          onChange={(event) => void desk.change({ pins: event.currentTarget.checked })}
        />{' '}
        {w.pins}
      </label>
      <table class="stack" data-testid="roster">
        <thead>
          <tr>
            <th>{w.columns.trainee}</th>
            <th>{w.columns.plate}</th>
            <th>{w.columns.pin}</th>
            <th />
          </tr>
        </thead>
        <tbody>
          {desk.roster.value.map((t) => (
            <tr key={t.id}>
              <td data-label={w.columns.trainee}>{t.name}</td>
              <td data-label={w.columns.plate}>{t.plate}</td>
              <td data-label={w.columns.pin}>
                {t.hasPin && <span class="unit">{w.hasPin} </span>}
                <button type="button" class="link" onClick={() => void pin(t)}>
                  {w.givePin}
                </button>
              </td>
              <td class="deskrow">
                <a href={desk.address(`trainees/${t.id}/export`)}>{w.exportOne}</a>
                <Erase desk={desk} trainee={t} said={() => say(w.erased(t.name))} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <Teachers desk={desk} />
    </>
  );
}

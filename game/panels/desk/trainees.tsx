import { useState } from 'preact/hooks';
import { MOST_PLATES, platesOf } from '../../../scoring/index.ts';
import type { Session } from '../../core/session/session.ts';
import { words } from '../../locale/index.ts';
import { preferences, setPreference, shelf } from '../../page.ts';
import { FileButton } from './file-button.tsx';

const w = words.desk.trainees;

/** Who welds at this bench, who comes next, and how to forget them. */
export function TraineesPanel({ session, close }: { session: Session; close: () => void }) {
  const { trainee, bench, plate, startWord, roster } = preferences.value;
  return (
    <>
      <section>
        <h3>{w.next}</h3>
        <p role="status">{trainee === null ? w.nobody : w.now(trainee, bench, plate)}</p>
        <p class="unit">{w.teach}</p>
        <label class="word">
          {w.word}{' '}
          <input
            value={startWord}
            maxLength={60}
            onChange={(event) => session.trainees.word(event.currentTarget.value)}
          />{' '}
          <span class="unit">{w.wordTeach}</span>
        </label>
        <NextForm key={`${trainee}`} session={session} bench={bench} close={close} />
        {roster.length > 0 && <RosterList session={session} close={close} />}
      </section>
      <Roster session={session} />
      <Forget session={session} />
    </>
  );
}

function NextForm({ session, bench, close }: { session: Session; bench: string; close: () => void }) {
  const [name, setName] = useState('');
  const [at, setAt] = useState(bench);
  const [plate, setPlate] = useState('');
  return (
    <form
      class="next-trainee"
      onSubmit={(event) => {
        event.preventDefault();
        if (session.trainees.next(name, at, plate === '' ? null : Number(plate))) close();
      }}
    >
      <label>
        {w.name}
        <input value={name} maxLength={120} onInput={(event) => setName(event.currentTarget.value)} />
      </label>
      <label>
        {w.bench}
        <input class="short" value={at} maxLength={60} onInput={(event) => setAt(event.currentTarget.value)} />
      </label>
      <label>
        {w.plate}
        <input
          class="short"
          type="number"
          min={1}
          max={MOST_PLATES}
          value={plate}
          onInput={(event) => setPlate(event.currentTarget.value)}
        />
      </label>
      <button type="submit" class="strong" disabled={name.trim() === ''}>
        {w.start}
      </button>
    </form>
  );
}

function RosterList({ session, close }: { session: Session; close: () => void }) {
  const { trainee, bench, roster } = preferences.value;
  const following = session.trainees.following();
  const plates = new Map(platesOf(roster).map((p) => [p.name, p.plate]));
  const choose = (person: (typeof roster)[number]): void => {
    if (session.trainees.next(person.name, person.bench ?? bench)) close();
  };
  return (
    <>
      {following && (
        <p>
          <button type="button" class="strong" onClick={() => choose(following)}>
            {w.following(following.name)}
          </button>
        </p>
      )}
      <ul class="roster" aria-label={w.roster}>
        {roster.map((person) => (
          <li key={person.name}>
            <button
              type="button"
              aria-current={person.name === trainee ? 'true' : undefined}
              onClick={() => choose(person)}
            >
              <bdi>{w.who(person.name, person.bench ?? '')}</bdi>
              {plates.has(person.name) && <span class="unit"> {w.plateOf(plates.get(person.name) ?? 0)}</span>}
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}

function Roster({ session }: { session: Session }) {
  const [text, setText] = useState('');
  const { roster } = preferences.value;
  return (
    <section>
      <h3>{w.roster}</h3>
      <p class="unit">{w.rosterTeach}</p>
      <textarea
        aria-label={w.roster}
        rows={5}
        value={text}
        spellcheck={false}
        onInput={(event) => setText(event.currentTarget.value)}
      />
      <p class="buttons">
        <button
          type="button"
          disabled={text.trim() === ''}
          onClick={() => {
            if (session.trainees.roster(text) > 0) setText('');
          }}
        >
          {w.take}
        </button>
        <FileButton
          label={w.fromFile}
          accept=".csv,.txt,.tsv,text/csv,text/plain"
          testid="roster-file"
          chosen={([file]) => file && void session.trainees.rosterFile(file)}
        />
        {roster.length > 0 && <span class="unit">{w.taken(roster.length)}</span>}
      </p>
    </section>
  );
}

function Forget({ session }: { session: Session }) {
  const named = shelf.value.filter((entry) => (entry.trainee ?? null) !== null).length;
  return (
    <section>
      <h3>{w.forget}</h3>
      <p class="unit">{w.forgetTeach}</p>
      <label class="switch">
        <input
          type="checkbox"
          checked={preferences.value.namesHidden}
          onChange={(event) => setPreference('namesHidden', event.currentTarget.checked)}
        />
        {w.hide}
      </label>
      <p class="buttons">
        <button type="button" onClick={() => void session.trainees.forget(false)}>
          {w.forgetNames}
        </button>
        {named > 0 && (
          <button type="button" onClick={() => void session.trainees.forget(true)}>
            {w.forgetAll(named)}
          </button>
        )}
      </p>
    </section>
  );
}

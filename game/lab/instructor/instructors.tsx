import { useState } from 'preact/hooks';
import { labWords } from '../../locale/lab-words.ts';
import type { Instructor } from './answers.ts';
import { AskedFor } from './asked-for.tsx';
import type { Desk } from './desk.ts';
import { TypedName } from './typed-name.tsx';

const w = labWords.desk.staff;
const LEAST = 10;

/** Who comes in as an instructor: for whoever is in charge of the lab. */
export function Instructors({ desk }: { desk: Desk }) {
  const { house } = desk;
  const [said, say] = useState<string | null>(null);
  return (
    <section data-testid="instructors">
      <h2>{w.title}</h2>
      <p class="unit">{w.says}</p>
      <p role="status">{said}</p>
      <div class="scroll">
        <table class="stack">
          <thead>
            <tr>
              <th>{w.name}</th>
              <th>{w.classes}</th>
              <th>{w.keeper}</th>
              <th />
            </tr>
          </thead>
          <tbody>
            {house.instructors.value.map((one) => (
              <Row key={one.id} desk={desk} one={one} say={say} />
            ))}
          </tbody>
        </table>
      </div>
      <form
        class="labform"
        onSubmit={(event) => {
          event.preventDefault();
          const form = event.currentTarget;
          const fields = new FormData(form);
          const name = String(fields.get('name') ?? '');
          void house.addInstructor(name, String(fields.get('password') ?? '')).then((done) => {
            if (!done) return;
            form.reset();
            say(w.added(name));
          });
        }}
      >
        <label>
          {w.newName}
          <input name="name" required maxLength={120} autocomplete="off" />
        </label>
        <label>
          {w.firstPassword}
          <input name="password" required minLength={LEAST} maxLength={200} autocomplete="off" />
        </label>
        <p>
          <button type="submit" class="strong">
            {w.add}
          </button>
        </p>
      </form>
    </section>
  );
}

function Row({ desk, one, say }: { desk: Desk; one: Instructor; say: (text: string) => void }) {
  const { house } = desk;
  const me = one.id === desk.me.value?.id;
  return (
    <tr>
      <td data-label={w.name}>{one.name}</td>
      <td data-label={w.classes}>{one.classes}</td>
      <td data-label={w.keeper}>
        <input
          type="checkbox"
          aria-label={w.keeperNamed(one.name)}
          checked={one.keeper}
          onChange={(event) => {
            const box = event.currentTarget;
            void house.changeInstructor(one.id, { keeper: box.checked }).then(async (done) => {
              // Refused, the box shows again what is so; who has given it up has nothing here any more.
              if (!done) box.checked = one.keeper;
              else if (me) await desk.look();
            });
          }}
        />
      </td>
      <td class="deskrow">
        {!me && (
          <>
            <AskedFor action={w.newPassword}>
              {(close) => (
                <form
                  onSubmit={(event) => {
                    event.preventDefault();
                    const password = String(new FormData(event.currentTarget).get('password') ?? '');
                    void house.changeInstructor(one.id, { password }).then((done) => {
                      if (!done) return;
                      close();
                      say(w.passwordSet(one.name));
                    });
                  }}
                >
                  <label>
                    {w.passwordFor(one.name)}{' '}
                    <input name="password" required minLength={LEAST} maxLength={200} autocomplete="off" />
                  </label>{' '}
                  <button type="submit">{w.set}</button>{' '}
                  <button type="button" class="link" onClick={close}>
                    {w.leaveIt}
                  </button>
                </form>
              )}
            </AskedFor>
            <AskedFor action={w.remove}>
              {(close) => (
                <TypedName
                  says={w.removeSays(one.name)}
                  name={one.name}
                  action={w.remove}
                  close={close}
                  take={async () => {
                    const came = await house.removeInstructor(one.id);
                    if (came === null) return;
                    say(w.removed(one.name, came));
                    await desk.look();
                  }}
                />
              )}
            </AskedFor>
          </>
        )}
      </td>
    </tr>
  );
}

import { useState } from 'preact/hooks';
import { labWords } from '../../locale/lab-words.ts';
import type { House } from './house.ts';

const w = labWords.desk.staff;

/** The own password, which whoever came in by another's word should change. */
export function OwnPassword({ house }: { house: House }) {
  const [said, say] = useState<string | null>(null);
  return (
    <details data-testid="own-password">
      <summary>{w.own}</summary>
      <form
        class="labform"
        onSubmit={(event) => {
          event.preventDefault();
          const form = event.currentTarget;
          const fields = new FormData(form);
          const text = (name: string): string => String(fields.get(name) ?? '');
          void house.changePassword(text('old'), text('password')).then((done) => {
            say(done ? w.ownChanged : null);
            if (done) form.reset();
          });
        }}
      >
        <label>
          {w.old}
          <input name="old" type="password" required maxLength={200} autocomplete="current-password" />
        </label>
        <label>
          {labWords.desk.password}
          <input name="password" type="password" required minLength={10} maxLength={200} autocomplete="new-password" />
        </label>
        <p>
          <button type="submit">{w.change}</button>
        </p>
      </form>
      <p role="status">{said}</p>
    </details>
  );
}

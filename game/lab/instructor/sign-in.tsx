import { labWords } from '../../locale/lab-words.ts';
import type { Desk } from './desk.ts';

const w = labWords.desk;

/** Name and password; for the first instructor the lab's own code besides. */
export function SignIn({ desk, first }: { desk: Desk; first: boolean }) {
  return (
    <form
      class="labform"
      onSubmit={(event) => {
        event.preventDefault();
        const fields = new FormData(event.currentTarget);
        const said = (name: string): string => String(fields.get(name) ?? '');
        const who = { name: said('name'), password: said('password') };
        void (first ? desk.enter('setup', { code: said('code').trim(), ...who }) : desk.enter('login', who));
      }}
    >
      <h2>{first ? w.setup : w.login}</h2>
      {first && <p>{w.setupSays}</p>}
      {first && (
        <label>
          {w.code}
          <input name="code" required maxLength={40} autocomplete="off" />
        </label>
      )}
      <label>
        {w.name}
        <input name="name" required maxLength={120} autocomplete="username" />
      </label>
      <label>
        {w.password}
        <input
          name="password"
          type="password"
          required
          minLength={first ? 10 : 1}
          maxLength={200}
          autocomplete={first ? 'new-password' : 'current-password'}
        />
      </label>
      <p>
        <button type="submit" class="strong">
          {first ? w.make : w.login}
        </button>
      </p>
    </form>
  );
}

import { InputError } from '../../../scoring/index.ts';
import { labWords } from '../../locale/lab-words.ts';
import { foundOut } from '../../locale/live.ts';
import type { Refused } from '../line.ts';
import { ClassPage } from './class-page.tsx';
import type { Desk } from './desk.ts';
import { Instructors } from './instructors.tsx';
import { OneField } from './one-field.tsx';
import { OwnExercises } from './own-exercises.tsx';
import { OwnPassword } from './own-password.tsx';
import { SignIn } from './sign-in.tsx';

const w = labWords.desk;

/** What an instructor sees: sign in, the classes, one class. */
export function DeskPage({ desk }: { desk: Desk }) {
  const me = desk.me.value;
  const refusal = desk.refusal.value;
  const open = desk.open.value;
  return (
    <main class="labdesk">
      <header class="deskhead">
        <h1>{w.title}</h1>
        <span>{me?.role === 'instructor' && me.name}</span>
        <a class="last" href="../">
          {w.bench}
        </a>
        {(me?.role === 'instructor' || me?.role === 'trainee') && (
          <button type="button" onClick={() => void desk.leave()}>
            {w.leave}
          </button>
        )}
      </header>
      {refusal !== null && <p role="alert">{refusal === 'no answer' ? w.noAnswer : whySaid(refusal)}</p>}
      {me?.role === 'trainee' && <p>{w.trainee}</p>}
      {me?.role === 'nobody' && <SignIn desk={desk} first={me.setup} />}
      {me?.role === 'instructor' && open === null && (
        <>
          <Classes desk={desk} />
          <OwnExercises house={desk.house} />
          {me.keeper && <Instructors desk={desk} />}
          <OwnPassword house={desk.house} />
        </>
      )}
      {open !== null && <ClassPage key={open.id} desk={desk} open={open} />}
    </main>
  );
}

/** Of a file the place in it as well. */
function whySaid(refusal: Refused | InputError): string {
  const said = foundOut(refusal.message);
  return refusal instanceof InputError || !refusal.field.includes('.') ? said : `${refusal.field}: ${said}`;
}

function Classes({ desk }: { desk: Desk }) {
  return (
    <section>
      <h2>{w.classes}</h2>
      {desk.classes.value.length === 0 && <p>{w.noClasses}</p>}
      <ul>
        {desk.classes.value.map((c) => (
          <li key={c.id}>
            <button type="button" class="link" onClick={() => void desk.openClass(c)}>
              {c.name}
            </button>{' '}
            <span class="unit">{c.code}</span>
          </li>
        ))}
      </ul>
      <OneField label={w.newClass} action={w.add} take={(name) => desk.makeClass(name)} />
    </section>
  );
}

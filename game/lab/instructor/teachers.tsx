import { labWords } from '../../locale/lab-words.ts';
import type { Desk } from './desk.ts';
import { OneField } from './one-field.tsx';

const w = labWords.desk.staff;

/** Who teaches the class, and letting another in. */
export function Teachers({ desk }: { desk: Desk }) {
  return (
    <section data-testid="teachers">
      <h3>{w.teach}</h3>
      <p>{desk.teachers.value.join(', ')}</p>
      <OneField label={w.letIn} action={w.letInDo} take={(name) => desk.addTeacher(name)} />
    </section>
  );
}

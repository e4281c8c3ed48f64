import { labWords } from '../../locale/lab-words.ts';
import type { House } from './house.ts';

const w = labWords.desk.own;

/** Exercises made at the bench and kept here to be handed out. */
export function OwnExercises({ house }: { house: House }) {
  const kept = house.exercises.value;
  return (
    <section data-testid="own-exercises">
      <h2>{w.title}</h2>
      <p class="unit">{w.says}</p>
      <ul>
        {kept.map((e) => (
          <li key={e.id} class="deskrow">
            <span>{e.title}</span>
            <button
              type="button"
              class="link"
              aria-label={w.dropNamed(e.title)}
              onClick={() => void house.dropExercise(e.id)}
            >
              {w.drop}
            </button>
          </li>
        ))}
      </ul>
      <form
        class="labform"
        onSubmit={(event) => {
          event.preventDefault();
          const form = event.currentTarget;
          const file = new FormData(form).get('file');
          if (file instanceof File) void house.addExercise(file).then((taken) => taken && form.reset());
        }}
      >
        <label>
          {w.file}
          <input name="file" type="file" accept=".json,application/json" required />
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

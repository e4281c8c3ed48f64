import { words } from '../locale/index.ts';
import { problem } from '../page.ts';

/** What went wrong, in a bar that takes nothing away: the attempt on the bench stays. */
export function ProblemNote() {
  const found = problem.value;
  if (found === null) return null;
  const goOn = found.code === 'much-work' ? found.goOn : null;
  return (
    <div class="problem" role="alert">
      <b>{words.problems.title}</b>
      <p class="why">{words.problems.say(found)}</p>
      {goOn && (
        <button
          type="button"
          onClick={() => {
            problem.value = null;
            goOn();
          }}
        >
          {words.problems.goOn}
        </button>
      )}
      <button
        type="button"
        onClick={() => {
          problem.value = null;
        }}
      >
        {words.problems.close}
      </button>
    </div>
  );
}

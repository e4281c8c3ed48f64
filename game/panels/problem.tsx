import { words } from '../locale/index.ts';
import { problem } from '../page.ts';

/** What went wrong, in a bar that takes nothing away: the attempt on the bench stays. */
export function ProblemNote() {
  if (problem.value === null) return null;
  return (
    <div class="problem" role="alert">
      <b>{words.problems.title}</b>
      <p class="why">{words.problems.say(problem.value)}</p>
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

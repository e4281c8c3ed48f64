import { real } from '../../locale/real-words.ts';
import { type MarkSet, pointsOf, type Step } from './marks.ts';

interface Props {
  steps: readonly Step[];
  marks: MarkSet;
  active: string;
  choose: (id: string) => void;
  change: (marks: MarkSet) => void;
}

/** What there is to mark, in order; the one being set says how. */
export function StepList({ steps, marks, active, choose, change }: Props) {
  return (
    <ol class="steps">
      {steps.map((step) => {
        const count = pointsOf(marks, step.id).length;
        const here = step.id === active;
        return (
          <li key={step.id} class={here ? 'here' : ''}>
            <button type="button" aria-current={here ? 'step' : undefined} onClick={() => choose(step.id)}>
              {step.name}
            </button>
            <span class="unit">
              {count > 0
                ? real.board.set(count)
                : step.least === 0 && (step.id.startsWith('undercut') || step.id === 'across')
                  ? real.board.optional
                  : ''}
            </span>
            {here && (
              <p class="hint">
                {step.hint}{' '}
                {count > 0 && (
                  <button
                    type="button"
                    class="link"
                    onClick={() => change({ ...marks, [step.id]: pointsOf(marks, step.id).slice(0, -1) })}
                  >
                    {real.board.back}
                  </button>
                )}
              </p>
            )}
          </li>
        );
      })}
    </ol>
  );
}

/** Which mark is being set, and the way to the next, close to the picture. */
export function StepFoot({ steps, marks, active, choose }: Omit<Props, 'change'>) {
  const at = steps.findIndex((step) => step.id === active);
  const next = steps[at + 1];
  const enough = pointsOf(marks, active).length >= steps[at].least;
  return (
    <span class="setting">
      <b>{steps[at].name}</b>
      {next && (
        <button type="button" class="link" disabled={!enough} onClick={() => choose(next.id)}>
          {real.board.next(next.name)}
        </button>
      )}
    </span>
  );
}

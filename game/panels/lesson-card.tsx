import { useEffect, useRef } from 'preact/hooks';
import { LESSON_STEPS, type Lesson, type LessonView } from '../core/session/lesson.ts';
import { words } from '../locale/index.ts';
import { busy, held, preferences, robotWelding, torchState } from '../page.ts';

const w = words.lesson;

/** The first lesson at the edge of the bench, or its offer; away while the arc burns, so that nothing stands in the way of the hand. */
export function LessonCard({ lesson }: { lesson: Lesson }) {
  const welding = torchState.value === 'welding' || torchState.value === 'out' || robotWelding.value;
  const view = lesson.view.value;
  if (welding || busy.value || held.value || !preferences.value.cautionsRead) return null;
  if (view) return <Step lesson={lesson} view={view} />;
  return preferences.value.lessonOffered ? null : <Offer lesson={lesson} />;
}

function Offer({ lesson }: { lesson: Lesson }) {
  return (
    <section class="lesson" aria-label={w.title} data-testid="lesson">
      <p>{w.offer}</p>
      <p class="buttons">
        <button type="button" class="strong" onClick={() => lesson.begin()}>
          {w.begin}
        </button>
        <button type="button" onClick={() => lesson.decline()}>
          {w.notNow}
        </button>
      </p>
    </section>
  );
}

function Step({ lesson, view }: { lesson: Lesson; view: LessonView }) {
  const heading = useRef<HTMLHeadingElement>(null);
  const { step } = view;
  const said = w.steps[step];
  const n = LESSON_STEPS.indexOf(step) + 1;
  // A reader that is led by focus hears each step; the joint keeps the focus of one who is about to strike.
  useEffect(() => heading.current?.focus({ preventScroll: true }), [step]);
  return (
    <section class="lesson" aria-label={w.title} data-testid="lesson" data-step={step}>
      <p class="unit">{w.place(n, LESSON_STEPS.length)}</p>
      <h2 ref={heading} tabIndex={-1}>
        {said.title}
      </h2>
      <p>{said.text}</p>
      {view.tooShort && 'tooShort' in said && (
        <p role="status">
          <b>{said.tooShort}</b>
        </p>
      )}
      <p class="buttons">
        {step === 'robot' && (
          <button type="button" class="strong" onClick={() => lesson.showRobot()}>
            {w.show}
          </button>
        )}
        {step !== 'straight' && (
          <button type="button" class={step === 'robot' ? '' : 'strong'} onClick={() => lesson.next()}>
            {n === LESSON_STEPS.length ? w.end : w.next}
          </button>
        )}
        {n > 1 && n < 5 && (
          <button type="button" onClick={() => lesson.back()}>
            {w.back}
          </button>
        )}
        {n < LESSON_STEPS.length && (
          <button type="button" class="link" onClick={() => lesson.leave()}>
            {w.leave}
          </button>
        )}
      </p>
    </section>
  );
}

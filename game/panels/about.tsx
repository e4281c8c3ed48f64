import type { Lesson } from '../core/session/lesson.ts';
import { words } from '../locale/index.ts';
import { preferences } from '../page.ts';
import { Dialog } from './dialog.tsx';

const a = words.about;

/** The notices of what this page contains, as its build wrote them into it; none in a page that was not built. */
function notices(): string | null {
  const place = document.getElementById('notices');
  return place instanceof HTMLTemplateElement ? place.content.textContent : null;
}

export function AboutDialog({ lesson, close }: { lesson: Lesson; close: () => void }) {
  const text = notices();
  const kept = preferences.value.lesson;
  return (
    <Dialog title={a.title} close={close}>
      <p>
        <button
          type="button"
          onClick={() => {
            close();
            lesson.begin();
          }}
        >
          {kept === 'done' ? words.lesson.again : kept === null ? words.lesson.begin : words.lesson.goOn}
        </button>
      </p>
      <h3>{a.how}</h3>
      <ol>
        {a.steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      <h3>{a.cannot}</h3>
      <p>{a.cannotText}</p>
      <h3>{a.model}</h3>
      <p>{a.modelText}</p>
      <h3>{a.picture}</h3>
      <p>{a.pictureText}</p>
      <h3>{words.findings.cautions}</h3>
      {words.cautions.text.map((text) => (
        <p key={text}>{text}</p>
      ))}
      <p class="unit">{a.scenario}</p>
      {text && (
        <details>
          <summary>{a.notices}</summary>
          <pre class="notices">{text}</pre>
        </details>
      )}
      <p class="buttons">
        <button type="button" class="strong" onClick={close}>
          {a.close}
        </button>
      </p>
    </Dialog>
  );
}

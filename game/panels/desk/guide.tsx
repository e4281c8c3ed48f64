import { words } from '../../locale/index.ts';

/** For instructors: what the model has and has not, how to teach with it, a first week planned. */
export function GuidePanel() {
  return (
    <div class="guide">
      {words.guide.map(({ heading, text, list }) => (
        <section key={heading}>
          <h3>{heading}</h3>
          {text.map((line) => (
            <p key={line}>{line}</p>
          ))}
          {list && (
            <ul>
              {list.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          )}
        </section>
      ))}
    </div>
  );
}

import { useState } from 'preact/hooks';
import { EXERCISE_PRINTS } from '../../../scoring/index.ts';
import type { Session } from '../../core/session/session.ts';
import { ready, words } from '../../locale/index.ts';
import { exercise, preferences } from '../../page.ts';
import { EditorField } from './editor-field.tsx';
import { beginnings, groups, isAsked, valueAt } from './fields.ts';
import { LimitsEditor } from './limits-editor.tsx';
import { ProofPanel } from './proof.tsx';
import { RangePanel } from './range-panel.tsx';

const w = words.desk.editor;

/** Making an exercise: fields checked as they are typed, then proved, saved, handed on and printed. */
export function EditorPanel({ session, close }: { session: Session; close: () => void }) {
  const { editor } = session.desk;
  const draft = editor.draft.value;
  const problems = editor.problems.value;
  const own = beginnings(preferences.value.exercises);
  const test = !draft.aids.pacer && !draft.aids.beat && !draft.aids.toeMarks;
  return (
    <form class="editor" onSubmit={(event) => event.preventDefault()}>
      <p class="unit">{w.teach}</p>
      <label class="begin">
        {w.from}{' '}
        <select
          value=""
          onChange={(event) => {
            const from = own.find((e) => e.name === event.currentTarget.value);
            editor.begin(from ?? exercise.value);
            event.currentTarget.value = '';
          }}
        >
          <option value="">…</option>
          <option value="bench">{words.desk.onBench(ready(exercise.value.title))}</option>
          {own.map((e) => (
            <option key={e.name} value={e.name}>
              {ready(e.title)}
            </option>
          ))}
        </select>
      </label>
      {groups
        .filter(({ fields }) => fields.some((field) => isAsked(field, draft)))
        .map((group) => (
          <fieldset key={group.name}>
            <legend>{w.groups[group.name]}</legend>
            {group.fields
              .filter((field) => isAsked(field, draft))
              .map((field) => (
                <EditorField
                  key={field.path}
                  field={field}
                  value={valueAt(draft, field.path)}
                  wrong={problems
                    .filter((p) => belongs(p.path, field.path))
                    .map((p) => w.wrong(p.found, p.allowed))
                    .join('; ')}
                  set={(value) => editor.set(field.path, value)}
                />
              ))}
            {group.name === 'guides' && test && <p class="unit">{w.test}</p>}
            {group.name === 'left' && <p class="unit long">{w.leftTeach}</p>}
            {group.name === 'piece' && <p class="unit long">{w.pieceTeach}</p>}
          </fieldset>
        ))}
      <LimitsEditor session={session} />
      <div class="bar">
        <p role="status" class={problems.length === 0 ? '' : 'wrong'}>
          {w.count(problems.length)}
        </p>
        <Actions session={session} close={close} ready={problems.length === 0} />
      </div>
      <ProofPanel session={session} />
      <RangePanel session={session} />
    </form>
  );
}

/** A problem of a list or of a group stands at its field: cuts_mm[1] at cuts_mm, judged at judged.from_mm. */
function belongs(problem: string, field: string): boolean {
  const path = problem.replace(/\[\d+\]$/, '');
  return (
    path === field ||
    field === `${path}.from_mm` ||
    (path === 'free' ? field === 'free.feed_mpmin' : path.startsWith(`${field}.`))
  );
}

function Actions({ session, close, ready }: { session: Session; close: () => void; ready: boolean }) {
  const { editor } = session.desk;
  const [link, setLink] = useState<string | null | undefined>(undefined);
  return (
    <>
      <p class="buttons">
        <button type="button" class="strong" disabled={!ready} onClick={() => void editor.prove()}>
          {w.prove}
        </button>
        <button type="button" disabled={!ready} onClick={() => void editor.drawMap()}>
          {w.map.draw}
        </button>
        <button
          type="button"
          disabled={!ready}
          onClick={() => {
            editor.tryIt();
            close();
          }}
        >
          {w.tryIt}
        </button>
        <button type="button" disabled={!ready} onClick={() => editor.save()}>
          {w.save}
        </button>
        <button type="button" disabled={!ready} onClick={() => void editor.link().then(setLink)}>
          {w.link}
        </button>
        <span class="unit">{w.print.what}</span>
        {EXERCISE_PRINTS.map((what) => (
          <button key={what} type="button" disabled={!ready} onClick={() => session.desk.printOf(what)}>
            {w.print[what]}
          </button>
        ))}
        <span class="unit">{w.print.pdf}</span>
        {EXERCISE_PRINTS.map((what) => (
          <button
            key={what}
            type="button"
            aria-label={w.print.asPdf(w.print[what])}
            disabled={!ready}
            onClick={() => void session.desk.savePdfOf(what)}
          >
            {w.print[what]}
          </button>
        ))}
      </p>
      {link === null && <p>{w.linkLong}</p>}
      {link && (
        <p>
          <input
            class="link-text"
            readOnly
            value={link}
            aria-label={w.link}
            onFocus={(event) => event.currentTarget.select()}
          />
          <span class="unit">{w.linkTitle}</span>
        </p>
      )}
    </>
  );
}

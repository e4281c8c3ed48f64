import { useState } from 'preact/hooks';
import type { Typed } from '../../core/desk/editor.ts';
import { words } from '../../locale/index.ts';
import { trimmed } from '../../locale/numbers.ts';
import type { Field } from './fields.ts';

const w = words.desk.editor;

interface Props {
  field: Field;
  value: unknown;
  /** What is wrong with it, said; empty: nothing. */
  wrong: string;
  set: (value: Typed) => void;
}

/** One field of an exercise: what is typed is taken over letter by letter, and what is wrong with it stands below. */
export function EditorField({ field, value, wrong, set }: Props) {
  const id = `field-${field.path}`;
  const says = `${id}-wrong`;
  const about = { id, 'aria-invalid': wrong !== '', 'aria-describedby': wrong === '' ? undefined : says };
  const wide = field.kind === 'long' || field.kind === 'some or none';
  return (
    <div class={`field ${wide ? 'long' : ''}`}>
      <label for={id}>{w.fields[field.path]}</label>
      <Control field={field} value={value} set={set} about={about} />
      {wrong !== '' && (
        <p id={says} class="wrong">
          {wrong}
        </p>
      )}
    </div>
  );
}

interface About {
  id: string;
  'aria-invalid': boolean;
  'aria-describedby': string | undefined;
}

function Control({ field, value, set, about }: { field: Field; value: unknown; set: Props['set']; about: About }) {
  switch (field.kind) {
    case 'flag':
      return (
        <input
          {...about}
          type="checkbox"
          checked={value === true}
          onChange={(event) => set(event.currentTarget.checked)}
        />
      );
    case 'choice': {
      const choices = field.of();
      return (
        <select
          {...about}
          value={String(value)}
          onChange={(event) => set(choices[event.currentTarget.selectedIndex]?.[0] ?? event.currentTarget.value)}
        >
          {choices.map(([of, said]) => (
            <option key={of} value={String(of)}>
              {said}
            </option>
          ))}
        </select>
      );
    }
    case 'long':
      return <textarea {...about} rows={2} value={String(value)} onInput={(event) => set(event.currentTarget.value)} />;
    case 'text':
    case 'name':
      return <input {...about} value={String(value)} onInput={(event) => set(event.currentTarget.value)} />;
    case 'some or none':
      return <Some of={field.of()} value={value} set={set} about={about} label={w.fields[field.path]} />;
    case 'band or none':
      return <Band value={value} set={set} about={about} label={w.fields[field.path]} />;
    default:
      return <Numbers kind={field.kind} value={value} set={set} about={about} />;
  }
}

/** Numbers as typed: the letters stay as they are while they are typed, "5." and all. */
export function Numbers({
  kind,
  value,
  set,
  about,
}: {
  kind: Field['kind'];
  value: unknown;
  set: Props['set'];
  about: Partial<About> & { 'aria-label'?: string };
}) {
  const [typed, setTyped] = useState<string | null>(null);
  return (
    <input
      {...about}
      inputMode="decimal"
      class="number"
      value={typed ?? written(value)}
      onInput={(event) => {
        setTyped(event.currentTarget.value);
        set(read(event.currentTarget.value, kind));
      }}
      onBlur={() => setTyped(null)}
    />
  );
}

/** A box for each of a few; none ticked: as given. */
function Some({
  of,
  value,
  set,
  about,
  label,
}: {
  of: readonly (readonly [value: string | number, said: string])[];
  value: unknown;
  set: Props['set'];
  about: About;
  label: string;
}) {
  const chosen = Array.isArray(value) ? (value as (string | number)[]) : [];
  const turn = (one: string | number, on: boolean): void => {
    const next = of.map(([each]) => each).filter((each) => (each === one ? on : chosen.includes(each)));
    set(next.length === 0 ? null : next);
  };
  return (
    <fieldset class="some" id={about.id} aria-label={label} aria-describedby={about['aria-describedby']}>
      {of.map(([one, said]) => (
        <label key={one}>
          <input
            type="checkbox"
            checked={chosen.includes(one)}
            aria-invalid={about['aria-invalid']}
            onChange={(event) => turn(one, event.currentTarget.checked)}
          />
          {said}
        </label>
      ))}
    </fieldset>
  );
}

/** From and to; both empty: nothing. */
function Band({ value, set, about, label }: { value: unknown; set: Props['set']; about: About; label: string }) {
  const band = (value ?? { from: null, to: null }) as { from: Typed; to: Typed };
  const end = (name: 'from' | 'to', typed: Typed): void => {
    const next = { ...band, [name]: typed };
    set(next.from === null && next.to === null ? null : next);
  };
  return (
    <span class="band">
      <Numbers kind="number or none" value={band.from} set={(typed) => end('from', typed)} about={about} />
      {w.to}
      <Numbers
        kind="number or none"
        value={band.to}
        set={(typed) => end('to', typed)}
        about={{ 'aria-invalid': about['aria-invalid'], 'aria-label': `${label}, ${w.to}` }}
      />
    </span>
  );
}

function written(value: unknown): string {
  if (value === null || value === undefined) return '';
  if (Array.isArray(value)) return value.map(written).join(' ');
  return typeof value === 'number' ? trimmed(value, 3) : String(value);
}

/** The number typed, or the text where it is none: the check then says what was found. */
function read(text: string, kind: Field['kind']): Typed {
  if (kind === 'numbers')
    return text
      .split(/[\s;]+/)
      .filter(Boolean)
      .map(numberOf);
  if (text.trim() === '') return kind === 'number or none' ? null : '';
  const number = numberOf(text);
  return Number.isNaN(number) ? text : number;
}

function numberOf(text: string): number {
  return Number(text.trim().replace(',', '.').replace('−', '-'));
}

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
  return (
    <div class={`field ${field.kind === 'long' ? 'long' : ''}`}>
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
    case 'choice':
      return (
        <select
          {...about}
          value={String(value)}
          onChange={(event) => set(field.of[event.currentTarget.selectedIndex]?.[0] ?? event.currentTarget.value)}
        >
          {field.of.map(([of, said]) => (
            <option key={of} value={String(of)}>
              {said}
            </option>
          ))}
        </select>
      );
    case 'long':
      return <textarea {...about} rows={2} value={String(value)} onInput={(event) => set(event.currentTarget.value)} />;
    case 'text':
    case 'name':
      return <input {...about} value={String(value)} onInput={(event) => set(event.currentTarget.value)} />;
    default:
      return <Numbers field={field} value={value} set={set} about={about} />;
  }
}

/** Numbers as typed: the letters stay as they are while they are typed, "5." and all. */
function Numbers({ field, value, set, about }: { field: Field; value: unknown; set: Props['set']; about: About }) {
  const [typed, setTyped] = useState<string | null>(null);
  return (
    <input
      {...about}
      inputMode="decimal"
      class="number"
      value={typed ?? written(value)}
      onInput={(event) => {
        setTyped(event.currentTarget.value);
        set(read(event.currentTarget.value, field.kind));
      }}
      onBlur={() => setTyped(null)}
    />
  );
}

function written(value: unknown): string {
  if (value === null) return '';
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

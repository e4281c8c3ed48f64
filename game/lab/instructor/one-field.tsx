import { useState } from 'preact/hooks';

/** A form of one field; emptied when what was typed has been taken. */
export function OneField({
  label,
  action,
  take,
}: {
  label: string;
  action: string;
  take: (text: string) => Promise<boolean>;
}) {
  const [text, type] = useState('');
  return (
    <form
      class="labform"
      onSubmit={(event) => {
        event.preventDefault();
        void take(text.trim()).then((taken) => taken && type(''));
      }}
    >
      <label>
        {label}
        <input required maxLength={80} value={text} onInput={(event) => type(event.currentTarget.value)} />
      </label>
      <p>
        <button type="submit" class="strong">
          {action}
        </button>
      </p>
    </form>
  );
}

import { labWords } from '../../locale/lab-words.ts';

const w = labWords.desk;

/** Something that cannot be taken back, done once the name has been typed. */
export function TypedName({
  says,
  name,
  action,
  close,
  take,
}: {
  says: string;
  name: string;
  action: string;
  close: () => void;
  take: () => Promise<void>;
}) {
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        void take();
      }}
    >
      <label>
        {says} <input required pattern={name.replaceAll(/[\\^$.*+?()[\]{}|/-]/g, '\\$&')} autocomplete="off" />
      </label>{' '}
      <button type="submit">{action}</button>{' '}
      <button type="button" class="link" onClick={close}>
        {w.keepOne}
      </button>
    </form>
  );
}

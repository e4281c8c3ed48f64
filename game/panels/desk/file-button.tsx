import { useRef } from 'preact/hooks';

interface Props {
  label: string;
  accept?: string;
  multiple?: boolean;
  /** Takes a whole folder instead of files. */
  folder?: boolean;
  strong?: boolean;
  testid: string;
  chosen: (files: File[]) => void;
}

/** A button that opens the machine's own picker of files. */
export function FileButton({ label, accept, multiple, folder, strong, testid, chosen }: Props) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" class={strong ? 'strong' : ''} onClick={() => input.current?.click()}>
        {label}
      </button>
      <input
        ref={(element) => {
          input.current = element;
          if (element && folder) element.webkitdirectory = true;
        }}
        type="file"
        accept={accept}
        multiple={multiple ?? false}
        hidden
        data-testid={testid}
        onChange={(event) => {
          const files = [...(event.currentTarget.files ?? [])];
          event.currentTarget.value = '';
          if (files.length > 0) chosen(files);
        }}
      />
    </>
  );
}

import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';

/** A button that opens what it stands for in its place, so that nothing happens by one press. */
export function AskedFor({ action, children }: { action: string; children: (close: () => void) => ComponentChildren }) {
  const [asked, ask] = useState(false);
  if (asked) return <>{children(() => ask(false))}</>;
  return (
    <button type="button" class="link" onClick={() => ask(true)}>
      {action}
    </button>
  );
}

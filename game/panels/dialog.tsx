import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';

interface Props {
  title: string;
  close: (() => void) | null;
  children: ComponentChildren;
}

/** A sheet laid over the bench. The browser's own dialog keeps focus inside and closes on Escape. */
export function Dialog({ title, close, children }: Props) {
  const box = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const element = box.current;
    if (!element) return;
    element.showModal();
    const cancel = (event: Event) => {
      event.preventDefault();
      close?.();
    };
    element.addEventListener('cancel', cancel);
    return () => {
      element.removeEventListener('cancel', cancel);
      element.close();
    };
  }, [close]);
  return (
    <dialog ref={box} class="overlay" aria-label={title}>
      <h2>{title}</h2>
      {children}
    </dialog>
  );
}

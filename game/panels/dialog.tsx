import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';

/** The sheets that can be laid over the bench; null: none. */
export type DialogName = 'attempts' | 'aids' | 'about' | 'measure' | 'coupon' | 'desk' | null;

interface Props {
  title: string;
  close: (() => void) | null;
  /** Takes the whole window, for work that needs room. */
  wide?: boolean;
  children: ComponentChildren;
}

/** A sheet laid over the bench. The browser's own dialog keeps focus inside and closes on Escape. */
export function Dialog({ title, close, wide, children }: Props) {
  const box = useRef<HTMLDialogElement>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  const closing = useRef(close);
  closing.current = close;
  useEffect(() => {
    const element = box.current;
    if (!element) return;
    element.showModal();
    // The browser puts focus on the first button, which may be the last thing on the sheet; a sheet opens at its top.
    heading.current?.focus({ preventScroll: true });
    element.scrollTop = 0;
    const cancel = (event: Event) => {
      event.preventDefault();
      closing.current?.();
    };
    element.addEventListener('cancel', cancel);
    return () => {
      element.removeEventListener('cancel', cancel);
      element.close();
    };
  }, []);
  return (
    <dialog ref={box} class={wide ? 'overlay wide' : 'overlay'} aria-label={title}>
      <h2 ref={heading} tabIndex={-1}>
        {title}
      </h2>
      {children}
    </dialog>
  );
}

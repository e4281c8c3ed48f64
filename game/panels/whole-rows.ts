import type { RefObject } from 'preact';
import { useEffect } from 'preact/hooks';

/**
 * Where a list has to scroll it ends between two rows and not through one: its height is cut back to the last row that fits.
 * `rows` selects what counts as a row. @param changed anything that makes it a different list
 */
export function useWholeRows(list: RefObject<HTMLElement | null>, rows: string, changed: unknown): void {
  useEffect(() => {
    const element = list.current;
    // The parent may have no box of its own (layout.css), so the one that shares out the room is watched.
    const outer = element?.closest('main');
    if (!element || !outer) return;
    const fit = (): void => {
      element.style.maxHeight = '';
      if (getComputedStyle(element).overflowY !== 'auto' || element.scrollHeight <= element.clientHeight) return;
      const top = element.getBoundingClientRect().top - element.scrollTop;
      let best = 0;
      for (const row of element.querySelectorAll(rows)) {
        const bottom = row.getBoundingClientRect().bottom - top;
        if (bottom <= element.clientHeight) best = Math.max(best, bottom);
      }
      if (best > 0) element.style.maxHeight = `${Math.ceil(best)}px`;
    };
    fit();
    const sizes = new ResizeObserver(fit);
    sizes.observe(outer);
    return () => sizes.disconnect();
  }, [list, rows, changed]);
}

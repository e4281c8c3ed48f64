import { useEffect, useRef } from 'preact/hooks';
import { words } from '../locale/index.ts';
import { type Cut, cutScale } from '../state.ts';

/** Changes smaller than this share are not worth drawing again. */
const WORTH = 0.03;
/** Below this the letters run into each other; the drawing is then shrunk as a whole. */
const LEAST_SCALE = 19;
const MOST_SCALE = 60;

/** The drawing brings its own style sheet, which a shadow root keeps inside; its letters are the page's. */
const INSIDE = `<style>
  :host { display: block; }
  svg { display: block; width: 100%; height: 100%; }
  svg text { font-family: inherit; font-variant-numeric: tabular-nums; }
</style>`;

/**
 * A section as scoring draws it: SVG text made from numbers alone, so nothing out of a file gets into it. Its lettering has one size at
 * every scale, so the scale asked for is the one at which the drawing just fits its place.
 */
export function Drawing({ cut, caption }: { cut: Cut; caption?: string }) {
  const host = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const element = host.current;
    if (!element) return;
    const root = element.shadowRoot ?? element.attachShadow({ mode: 'open' });
    root.innerHTML = INSIDE + cut.svg;
    const box = root.querySelector('svg')?.viewBox.baseVal;
    if (!box || box.height === 0) return;
    const fit = Math.min(element.clientHeight / box.height, element.clientWidth / box.width) * cut.scale;
    const scale = Math.min(MOST_SCALE, Math.max(LEAST_SCALE, fit));
    if (element.clientHeight > 0 && Math.abs(scale / cut.scale - 1) > WORTH) cutScale.value = scale;
  }, [cut]);
  return (
    <figure>
      <div ref={host} class="drawing" data-testid="drawing" role="img" aria-label={words.cut.title(cut.y_mm)} />
      {caption && <figcaption>{caption}</figcaption>}
    </figure>
  );
}

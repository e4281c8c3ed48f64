import { useEffect, useRef } from 'preact/hooks';
import type { Cut } from '../core/session/state.ts';
import { words } from '../locale/index.ts';
import { cutScale, cutShown } from '../page.ts';
import { fillShadow } from '../view/svg.ts';

/** Changes smaller than this share are not worth drawing again. */
const WORTH = 0.03;
/** Below this the drawing is shrunk as a whole, letters and all. */
const LEAST_SCALE = 9;
const MOST_SCALE = 60;

/** The drawing brings its own style sheet, which a shadow root keeps inside; its letters are the page's. */
const INSIDE = `
  :host { display: block; overflow: hidden; }
  svg { display: block; margin: 0 auto; }
  svg text { font-family: inherit; font-variant-numeric: tabular-nums; }
  .difference { fill: url(#difference); fill-rule: evenodd; }
  .face { fill: none; stroke: #1c5a78; stroke-width: 1.6; stroke-dasharray: 7 3; }
  .hatch { stroke: #1c5a78; stroke-width: 1.2; }
`;

const HATCH =
  '<pattern id="difference" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)">' +
  '<line class="hatch" x1="0" y1="0" x2="0" y2="5"/></pattern>';

interface Props {
  cut: Cut;
  caption?: string | undefined;
  /** Another cut at the same height: its face is laid over this one, hatched where the two differ. */
  against?: Cut | null;
  /** This drawing decides the scale; one beside it follows, so that both have the same. */
  leads: boolean;
}

/**
 * A section as scoring draws it: SVG text made from numbers alone, so nothing out of a file gets into it. Its lettering has one size at
 * every scale, so the scale asked for is the one at which the drawing just fits its place.
 */
export function Drawing({ cut, caption, against, leads }: Props) {
  const host = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const element = host.current;
    if (!element) return;
    const root = element.shadowRoot ?? element.attachShadow({ mode: 'open' });
    fillShadow(root, INSIDE, cut.svg);
    const svg = root.querySelector('svg');
    if (svg && against && against.y_mm === cut.y_mm) layOver(svg, cut, against);
    const box = svg?.viewBox.baseVal;
    if (!svg || !box || box.height === 0) return;
    const place = (): void => {
      if (leads && element.clientHeight > 0) {
        const fit = Math.min(element.clientHeight / box.height, element.clientWidth / box.width) * cut.scale;
        const scale = Math.min(MOST_SCALE, Math.max(LEAST_SCALE, fit));
        cutShown.value = Math.min(fit, scale);
        if (Math.abs(scale / cut.scale - 1) > WORTH) cutScale.value = scale;
      }
      const size = cutShown.value / cut.scale;
      svg.style.width = `${box.width * size}px`;
      svg.style.height = `${box.height * size}px`;
      // Beside another cut its root stands at the same height, so that the two read across.
      svg.style.marginTop = against
        ? `${(against.frame.root.y / against.scale - cut.frame.root.y / cut.scale) * cutShown.value}px`
        : '';
    };
    place();
    if (!leads) return;
    const sizes = new ResizeObserver(place);
    sizes.observe(element);
    return () => sizes.disconnect();
  }, [cut, against, leads, cutShown.value]);
  return (
    <figure>
      <div ref={host} class="drawing" data-testid="drawing" role="img" aria-label={words.cut.title(cut.y_mm)} />
      {caption && <figcaption>{caption}</figcaption>}
    </figure>
  );
}

/** Hatches what lies between two faces. */
function layOver(svg: SVGSVGElement, own: Cut, other: Cut): void {
  const { root } = own.frame;
  const path = (surface: readonly number[]): string[] => {
    const points: string[] = [];
    for (let i = 0; i + 1 < surface.length; i += 2)
      points.push(
        `${(root.x + surface[i] * own.scale).toFixed(1)} ${(root.y - surface[i + 1] * own.scale).toFixed(1)}`,
      );
    return points;
  };
  const mine = path(own.surface_mm);
  const theirs = path(other.surface_mm);
  svg.insertAdjacentHTML(
    'beforeend',
    `<defs>${HATCH}</defs><path class="difference" d="M${mine.join('L')}L${[...theirs].reverse().join('L')}Z"/>` +
      `<path class="face" d="M${theirs.join('L')}"/>`,
  );
}

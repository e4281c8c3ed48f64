import { useEffect, useRef } from 'preact/hooks';
import { fillShadow } from '../../view/svg.ts';

const INSIDE = `
  :host { display: block; }
  svg { display: block; width: 100%; height: auto; max-height: var(--tallest, 15rem); }
  svg text { font-family: inherit; font-variant-numeric: tabular-nums; }
`;

/** A drawing of scoring's, made from numbers alone, as wide as its place. @param tall as high as it wants to be */
export function Still({ svg, name, tall }: { svg: string; name: string; tall?: boolean }) {
  const host = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const element = host.current;
    if (element) fillShadow(element.shadowRoot ?? element.attachShadow({ mode: 'open' }), INSIDE, svg);
  }, [svg]);
  return <div ref={host} class={tall ? `${name} tall` : name} />;
}

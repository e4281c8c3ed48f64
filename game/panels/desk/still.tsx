import { useEffect, useRef } from 'preact/hooks';
import { fillShadow } from '../../view/svg.ts';

const INSIDE = `
  :host { display: block; }
  svg { display: block; width: 100%; height: auto; max-height: 15rem; }
  svg text { font-family: inherit; font-variant-numeric: tabular-nums; }
`;

/** A drawing of scoring's, made from numbers alone, as wide as its place. */
export function Still({ svg, name }: { svg: string; name: string }) {
  const host = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const element = host.current;
    if (element) fillShadow(element.shadowRoot ?? element.attachShadow({ mode: 'open' }), INSIDE, svg);
  }, [svg]);
  return <div ref={host} class={name} />;
}

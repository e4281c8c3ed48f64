const SPACE = 'http://www.w3.org/2000/svg';

/** Makes an SVG element for views that move every frame and so write their attributes themselves. */
export function svgElement<K extends keyof SVGElementTagNameMap>(name: K, className: string): SVGElementTagNameMap[K] {
  const element = document.createElementNS(SPACE, name);
  element.setAttribute('class', className);
  return element;
}

/** Sets numeric attributes, two decimals: sub-pixel steps finer than that are not seen. */
export function place(element: SVGElement, values: Record<string, number>): void {
  for (const [name, value] of Object.entries(values)) element.setAttribute(name, value.toFixed(2));
}

/** Puts a finished drawing into a shadow root. Style sheets, its own among them, are adopted: the page's policy allows none inline. */
export function fillShadow(root: ShadowRoot, css: string, svg: string): void {
  const parsed = document.createElement('template');
  parsed.innerHTML = svg;
  const inner = [...parsed.content.querySelectorAll('style')];
  for (const style of inner) style.remove();
  const sheet = new CSSStyleSheet();
  sheet.replaceSync([css, ...inner.map((style) => style.textContent)].join('\n'));
  root.adoptedStyleSheets = [sheet];
  root.replaceChildren(parsed.content);
}

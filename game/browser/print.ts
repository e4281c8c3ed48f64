/** Where a paper stands while it is printed: everything else on the page is left off (style/print.css). */
const ID = 'paper';

let standing: HTMLElement | null = null;

/**
 * Prints a complete HTML page of ours by the browser's own dialog, through the page that is open: a page that may fetch nothing may not open
 * another either. Its style is taken over by rule, since the page's policy lets none stand in the text.
 */
export function printHtml(html: string): void {
  standPaper(html);
  window.print();
}

/** A paper waits to be printed. */
export function stands(): boolean {
  return standing !== null;
}

/** Puts a paper in place of the page for the next print; null takes it away. */
export function standPaper(html: string | null): void {
  standing?.remove();
  standing = null;
  if (html === null) return;
  const paper = document.createElement('template');
  paper.innerHTML = html;
  const host = document.createElement('div');
  host.id = ID;
  const root = host.attachShadow({ mode: 'open' });
  const sheet = new CSSStyleSheet();
  const styles = [...paper.content.querySelectorAll('style')];
  const rules = styles.map((style) => style.textContent ?? '').join('\n');
  for (const part of [...styles, ...paper.content.querySelectorAll('title, meta')]) part.remove();
  // In here the page's root and body are the host.
  sheet.replaceSync(rules.replace(/(^|[\s{}])(html|body)(?=\s*\{)/g, '$1:host'));
  root.adoptedStyleSheets = [sheet];
  root.append(paper.content);
  document.body.append(host);
  standing = host;
  addEventListener('afterprint', () => standPaper(null), { once: true });
}

import { createRequire } from 'node:module';
import type { AxeResults, RunOptions } from 'axe-core';
import type { Page } from 'playwright-core';

/** The script of axe-core, to be added to a page opened with `bypassCSP`. */
export const AXE = createRequire(import.meta.url).resolve('axe-core/axe.min.js');
const RULES: RunOptions = { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] };

/** What axe finds against the page as it stands: rule and the elements. */
export function against(page: Page): Promise<string[]> {
  return page.evaluate(async (rules) => {
    const { axe } = window as unknown as { axe: { run(rules: RunOptions): Promise<AxeResults> } };
    return (await axe.run(rules)).violations.map(
      (v) => `${v.id}: ${v.nodes.map((n) => n.target.join(' ')).join(' | ')}`,
    );
  }, RULES);
}

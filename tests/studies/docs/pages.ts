import { readdirSync } from 'node:fs';
import { guide } from '../../../game/locale/guide.ts';

/** Pages of the docs that are not made from docstrings. */

const ASSETS = new URL('../../../assets/', import.meta.url);

/** The page for instructors, as the desk shows it. */
export function instructorsPage(): string {
  const parts = guide.map(({ heading, text, list }) =>
    [`## ${heading}`, ...text, (list ?? []).map((line) => `- ${line}`).join('\n')].filter(Boolean).join('\n\n'),
  );
  return `# For instructors\n\n${parts.join('\n\n')}\n`;
}

/** Pictures of the bench and of every measure, as they stand in assets. Paths are from dist/docs-pages. */
export function galleryPage(): string {
  const of = (folder: string, end: string): string[] =>
    readdirSync(new URL(`${folder}/`, ASSETS))
      .filter((file) => file.endsWith(end))
      .sort()
      .map((file) => `### ${file.slice(0, -end.length).replaceAll('-', ' ')}\n\n![](../../assets/${folder}/${file})`);
  return `# Gallery\n\n## What is measured on a cut\n\n${of('measures', '.svg').join('\n\n')}\n\n## The bench\n\n${of('pictures', '.png').join('\n\n')}\n`;
}

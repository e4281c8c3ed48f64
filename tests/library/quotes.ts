import { readFileSync, writeFileSync } from 'node:fs';

/** Readmes that quote examples: a comment names the file, the code block after it is the file's text. */
export const README_FILES = ['engine/README.md', 'scoring/README.md'] as const;

const QUOTE = /<!-- (tests\/library\/examples\/([a-z-]+)\.ts) -->\n\n(?:```ts\n[\s\S]*?\n```\n)?/g;
const ROOT = new URL('../../', import.meta.url);
const textOf = (path: string): string => readFileSync(new URL(path, ROOT), 'utf8');

/** Names of the examples a readme quotes, in order. */
export function quotedIn(readme: string): string[] {
  return [...readme.matchAll(QUOTE)].map((quote) => quote[2]!);
}

/** The readme with every quote as its file stands now. */
export function withQuotes(readme: string): string {
  return readme.replace(
    QUOTE,
    (_, path: string) => `<!-- ${path} -->\n\n\`\`\`ts\n${textOf(path).trimEnd()}\n\`\`\`\n`,
  );
}

/** Brings the quotes of all readmes up to date. */
export function refreshQuotes(): void {
  for (const path of README_FILES) writeFileSync(new URL(path, ROOT), withQuotes(textOf(path)));
}

/** What one readme says now. */
export function readmeText(path: (typeof README_FILES)[number]): string {
  return textOf(path);
}

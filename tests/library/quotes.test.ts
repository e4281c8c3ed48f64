import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { quotedIn, README_FILES, readmeText, withQuotes } from './quotes.ts';

describe('the readmes of engine and scoring', () => {
  it.each(README_FILES)('%s quotes its examples as they run (npm run docs brings the quotes up to date)', (path) => {
    expect(readmeText(path)).toBe(withQuotes(readmeText(path)));
  });

  it('quote every example, each once', () => {
    const quoted = README_FILES.flatMap((path) => quotedIn(readmeText(path)));
    const examples = readdirSync(new URL('./examples/', import.meta.url)).map((file) => file.replace(/\.ts$/, ''));
    expect(quoted.sort()).toEqual(examples.sort());
  });

  it('would show a quote that has gone stale', () => {
    const now = withQuotes('<!-- tests/library/examples/heat-solver.ts -->\n\n');
    expect(now).toContain('createHeatPiece');
    expect(withQuotes(now.replace('createHeatPiece', 'createPiece'))).toBe(now);
  });
});

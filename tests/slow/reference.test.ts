import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fine } from '../reference/rows/fine.ts';
import { runSection } from '../reference/run.ts';
import { drawAll, FOLDER } from '../studies/plots/all.ts';

runSection(fine);

describe('plots', () => {
  it('in assets/reference are what the cases give: npm run reference:plots', () => {
    for (const [name, text] of drawAll()) expect(readFileSync(new URL(name, FOLDER), 'utf8'), name).toBe(text);
  });
});

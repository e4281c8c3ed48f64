import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { compareAll } from '../studies/outside/compare.ts';
import { page, scatter } from '../studies/outside/page.ts';

it('the page of the model beside data from elsewhere is what this engine gives (npm run study:outside)', () => {
  const comparisons = compareAll();
  const read = (name: string): string => readFileSync(new URL(`../studies/outside/${name}`, import.meta.url), 'utf8');
  expect(read('README.md')).toBe(page(comparisons));
  expect(read('scatter.svg')).toBe(scatter(comparisons));
});

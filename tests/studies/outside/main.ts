/** `npm run study:outside`: writes the page and the plot of the model beside data read elsewhere; some half a minute. */
import { writeFileSync } from 'node:fs';
import { compareAll } from './compare.ts';
import { page, scatter } from './page.ts';

const comparisons = compareAll();
writeFileSync(new URL('README.md', import.meta.url), page(comparisons));
writeFileSync(new URL('scatter.svg', import.meta.url), scatter(comparisons));

/** `npm run causes`: welds both halves of the set, grades every first sentence, writes CAUSES.md beside this file. `-- made-on`: one half, not written. */
import { writeFileSync } from 'node:fs';
import { KEPT_APART } from './kept-apart.ts';
import { MADE_ON } from './made-on.ts';
import { causesPage, type Half } from './readme.ts';
import { gradeAttempt } from './study.ts';

const HALVES = [
  { title: 'kept apart', list: KEPT_APART, seed: 100 },
  { title: 'made on', list: MADE_ON, seed: 1 },
] as const;

const [only] = process.argv.slice(2);
const halves: Half[] = HALVES.filter(({ title }) => only === undefined || title.replace(' ', '-') === only).map(
  ({ title, list, seed }) => ({
    title,
    // Every attempt has a seed of its own, so that no sentence rests on one tremor.
    rows: list.map((attempt, k) => {
      const row = gradeAttempt(attempt, seed + k);
      console.log(`${row.grade.padEnd(16)} ${row.bench}, ${row.name}: ${row.text}`);
      return row;
    }),
  }),
);
const page = causesPage(halves);
console.log(page);
if (only === undefined) writeFileSync(new URL('CAUSES.md', import.meta.url), page);

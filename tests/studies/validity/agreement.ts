/** Agreement of a blind ranking: `npx tsx tests/studies/validity/agreement.ts ranks.csv`. See README.md, protocol 1. */
import { fail, numberIn, readRows } from './csv.ts';
import { icc2, kendallW, mean, spearman } from './statistics.ts';

const rows = readRows(process.argv[2], ['section', 'toehold']);
const raters = Object.keys(rows[0] ?? {}).filter((name) => name !== 'section' && name !== 'toehold');
if (raters.length < 2 || rows.length < 3)
  fail(`found ${raters.length} instructors and ${rows.length} sections, allowed: at least 2 and 3`);
const ranked = rows.map((row, i) => raters.map((rater) => numberIn(row, rater, i + 2)));
// Rank 1 is best, a high trend number is best.
const toehold = rows.map((row, i) => -numberIn(row, 'toehold', i + 2));
const print = (name: string, value: number): void => void process.stdout.write(`${name}: ${value.toFixed(3)}\n`);
print("Kendall's W among the instructors", kendallW(ranked));
print('ICC(2,1) among the instructors', icc2(ranked));
print('Spearman, Toehold with their mean rank', spearman(toehold, ranked.map(mean)));
raters.forEach((rater, j) => {
  const others = ranked.map((row) => mean(row.filter((_, k) => k !== j)));
  print(
    `Spearman, ${rater} with the mean of the others`,
    spearman(
      ranked.map((row) => row[j]!),
      others,
    ),
  );
  print(
    `Spearman, ${rater} with Toehold`,
    spearman(
      ranked.map((row) => row[j]!),
      toehold,
    ),
  );
});

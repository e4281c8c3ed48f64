/**
 * `npm run exercises`: welds every ready exercise with its demonstration, decent hands, the same on a mouse, and poor ones, and writes README.md beside
 * this file. Each weld is kept in figures.json as soon as it is made, and is not made again while exercise, engine and scoring are the same, so a
 * study that was stopped goes on where it was. `-- 12`: the first 12 seeds alone; `-- 12 lap-5`: of one exercise.
 */
import { exercises } from '../../../scoring/index.ts';
import { Figures } from './figures.ts';
import { decentHand, type Hand, mouseHand, poorHand, shownHand } from './hands.ts';
import { exercisesPage } from './page.ts';
import { FIRST_SEED, MOUSE_SEEDS, SEEDS } from './set.ts';
import { weldWith } from './study.ts';

const [most = String(SEEDS), only] = process.argv.slice(2);
const figures = Figures.read();
for (let n = 0; n < Number(most); n++) {
  const seed = FIRST_SEED + n;
  for (const exercise of exercises) {
    if (only !== undefined && exercise.name !== only) continue;
    const hands: (() => Hand)[] = [() => decentHand(exercise, seed), () => poorHand(exercise, seed)];
    if (n < MOUSE_SEEDS) hands.push(() => mouseHand(exercise, seed));
    if (n === 0) hands.unshift(() => shownHand(exercise));
    for (const make of hands) {
      const hand = make();
      const came =
        figures.of(exercise, hand) ??
        figures.keep(exercise, hand, figures.twin(exercise, hand) ?? weldWith(exercise, hand));
      console.log(
        `${came.exercise}, ${came.kind} ${came.seed}${came.habit === null ? '' : ` (${came.habit})`}: ${came.verdict}`,
      );
    }
  }
  // After each seed, so that the page says what a study that was stopped had come to.
  figures.writePage(exercisesPage);
}

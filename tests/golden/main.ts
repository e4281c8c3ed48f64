/** `npm run golden`: records the golden welds and results again. Refuses where versions and bits do not go together. */
import { existsSync, writeFileSync } from 'node:fs';
import { RESULTS_FILE, resultsNow, resultsQuarrel, storedResults } from './results.ts';
import { quarrel, storedWelds, WELDS_FILE, weldAll } from './welds.ts';

function record(file: URL, what: string, says: () => string | null, text: () => string): void {
  const problem = existsSync(file) ? says() : null;
  if (problem !== null && !/npm run golden|not in the golden set$/.test(problem)) {
    process.stderr.write(`${what} not recorded: ${problem}\n`);
    process.exitCode = 1;
    return;
  }
  writeFileSync(file, text());
  process.stdout.write(`${what} recorded\n`);
}

const welds = weldAll();
record(
  WELDS_FILE,
  'golden welds',
  () => quarrel(storedWelds(), welds),
  () => `${JSON.stringify(welds, null, 1)}\n`,
);
const results = await resultsNow(true);
record(
  RESULTS_FILE,
  'golden results',
  () => resultsQuarrel(storedResults(), results),
  () => `${JSON.stringify(results, null, 1)}\n`,
);

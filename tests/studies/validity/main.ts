/** `npm run validity [-- --json FILE] [--workers N]`: welds the cohorts, prints the figures, rewrites the table in README.md. */
import { readFileSync, writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { runPool } from '../../../scoring/node/pool.ts';
import { type Answer, type Task, tasks } from './jobs.ts';
import { table, withTable } from './readme.ts';
import { ofKind, summarise } from './summary.ts';

const { values } = parseArgs({ options: { json: { type: 'string' }, workers: { type: 'string', default: '2' } } });
const workers = Number(values.workers);
if (!Number.isInteger(workers) || workers < 1 || workers > 64) {
  process.stderr.write(`--workers: found ${JSON.stringify(values.workers)}, allowed: a whole number, 1 to 64\n`);
  process.exit(2);
}
const jobs = tasks();
const began = performance.now();
const answers = await runPool<Task, Answer>(new URL('./worker.ts', import.meta.url), null, jobs, workers, (done) => {
  if (process.stderr.isTTY) process.stderr.write(`\r${done} of ${jobs.length}`);
});
const validity = { ...summarise(answers), trials: ofKind(answers, 'advice').map((a) => a.trial) };
const minutes = (performance.now() - began) / 60_000;
const readme = new URL('./README.md', import.meta.url);
writeFileSync(readme, withTable(readFileSync(readme, 'utf8'), table(validity, answers, { minutes, threads: workers })));
if (values.json !== undefined) writeFileSync(values.json, `${JSON.stringify(validity, null, 2)}\n`);
process.stdout.write(`${JSON.stringify({ ...validity, trials: undefined }, null, 2)}\n`);
process.stderr.write(`${minutes.toFixed(1)} minutes on ${workers} threads\n`);

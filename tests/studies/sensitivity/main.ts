/** `npm run sensitivity [-- --workers N]`: turns every knob on both pieces, writes figures.json, README.md and a plot a knob. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { ENGINE_VERSION } from '../../../engine/index.ts';
import { runPool } from '../../../scoring/node/pool.ts';
import { type Figures, type Task, tasks } from './figures.ts';
import { fileOf, KNOBS } from './knobs.ts';
import type { Outcomes } from './outcomes.ts';
import { judge, page } from './page.ts';
import { plotKnob } from './plot.ts';

const { values } = parseArgs({ options: { workers: { type: 'string', default: '2' } } });
const workers = Number(values.workers);
if (!Number.isInteger(workers) || workers < 1 || workers > 64) {
  process.stderr.write(`--workers: found ${JSON.stringify(values.workers)}, allowed: a whole number, 1 to 64\n`);
  process.exit(2);
}
const jobs = tasks();
const outcomes = await runPool<Task, Outcomes>(new URL('./worker.ts', import.meta.url), null, jobs, workers);
const figures: Figures = {
  engine: ENGINE_VERSION,
  welds: jobs.map((task, n) => ({ ...task, outcomes: outcomes[n]! })),
};
const at = (name: string): URL => new URL(name, import.meta.url);
mkdirSync(at('plots/'), { recursive: true });
writeFileSync(at('figures.json'), `${JSON.stringify(figures, null, 1)}\n`);
writeFileSync(at('README.md'), page(figures));
for (const knob of KNOBS) writeFileSync(at(`plots/${fileOf(knob)}`), plotKnob(figures, knob));
const judged = judge(figures);
process.stdout.write(`${judged.filter((j) => j.held).length} of ${judged.length} expectations held\n`);

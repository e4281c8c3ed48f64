/**
 * `npm run lab:load [-- --trainees N --within S --days D]`: a class at the bell, twice, and a week of D days in D times S seconds, against the embedded database and a PostgreSQL server of its own. Prints the figures and
 * writes the table of README.md. Figures are of the machine it runs on; what carries over are the ratios.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { availableParallelism, cpus } from 'node:os';
import { parseArgs } from 'node:util';
import { startPostgres } from '../../lab/support/postgres.ts';
import { type Rung, ring } from './bell.ts';

const { values } = parseArgs({
  options: {
    trainees: { type: 'string', default: '200' },
    within: { type: 'string', default: '12' },
    days: { type: 'string', default: '0' },
  },
});
const trainees = Number(values.trainees);
const within_s = Number(values.within);
const days = Number(values.days);
if (!(Number.isInteger(trainees) && trainees >= 2 && trainees <= 1000 && within_s > 0 && days >= 0)) {
  process.stderr.write(
    '--trainees: allowed: a whole number from 2 to 1000; --within: seconds above 0; --days: 0 or more\n',
  );
  process.exit(2);
}
const embedded = await ring({ trainees, within_s, days, databaseUrl: null });
const postgres = await startPostgres();
let server: Rung;
try {
  server = await ring({ trainees, within_s, days, databaseUrl: postgres.newDatabase() });
} finally {
  postgres.stop();
}
const weekOf = ({ week_MB }: Rung): string => {
  const [first, last] = [week_MB[0], week_MB.at(-1)];
  return first == null || last == null ? 'not played' : `${(last / first).toFixed(2)} (${week_MB.join(', ')} MB)`;
};
const rows: [string, (r: Rung) => string][] = [
  ['accepted a second', (r) => r.acceptedPerSecond.toFixed(1)],
  ['an upload, p50 / p95 / p99 in ms', (r) => [r.p50_ms, r.p95_ms, r.p99_ms].map((x) => x.toFixed(0)).join(' / ')],
  ['p99 over p50', (r) => (r.p99_ms / r.p50_ms).toFixed(1)],
  ['queue drained by one, attempts a second', (r) => (trainees / r.drained_s.one).toFixed(2)],
  ['two over one (threads; on PostgreSQL workers)', (r) => (r.drained_s.one / r.drained_s.two).toFixed(2)],
  ['memory of the service, MB: before, after one class, after two', (r) => Object.values(r.memory_MB).join(', ')],
  ['memory of the service over the week, last day over first', (r) => weekOf(r)],
  ['acknowledged and lost', (r) => `${r.lost} of ${r.accepted}`],
  ['there twice', (r) => String(r.double)],
];
const table = [
  `${trainees} trainees within ${within_s} s, twice${days > 0 ? `, and a week of ${days} days, each within ${within_s} s` : ''}; a file is ${Math.round(embedded.bytes / 1000)} kB. ${cpus()[0]?.model ?? 'unknown processor'}, ${availableParallelism()} cores, Node ${process.version}, ${new Date().toISOString().slice(0, 10)}.`,
  '',
  '| | embedded | PostgreSQL |',
  '|---|---|---|',
  ...rows.map(([name, read]) => `| ${name} | ${read(embedded)} | ${read(server)} |`),
].join('\n');
const readme = new URL('./README.md', import.meta.url);
const [START, END] = ['<!-- table: written by npm run lab:load -->', '<!-- end of table -->'];
const text = readFileSync(readme, 'utf8');
writeFileSync(
  readme,
  `${text.slice(0, text.indexOf(START) + START.length)}\n\n${table}\n\n${text.slice(text.indexOf(END))}`,
);
process.stdout.write(`${table}\n`);
process.exitCode = embedded.lost + embedded.double + server.lost + server.double === 0 ? 0 : 1;

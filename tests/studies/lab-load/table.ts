import type { Count } from './count.ts';
import type { Played, Row } from './figures.ts';
import { STORES } from './ground.ts';
import type { Bell, Drain, Drained, Week } from './phases.ts';
import type { Latency } from './watch.ts';

const NOT = 'not played';

/** The figures as a table, each store a column; what was not played says so. */
export function tableOf({ machine, stores }: Played): string {
  const cells = (read: (row: Row) => string): string[] => STORES.map((s) => read(stores[s] ?? {}));
  const rows = [...BELL, ...DRAIN, ...WEEK, ...LONG].map(([name, read]) => `| ${[name, ...cells(read)].join(' | ')} |`);
  return [
    `${machine.processor}, ${machine.cores} cores, which load generator, service, database and workers share; Node ${machine.node}, ${machine.day}.`,
    '',
    '| | embedded | PostgreSQL |',
    '|---|---|---|',
    ...rows,
  ].join('\n');
}

const attempt = ({ bytes, arc_s }: Bell['attempt']): string => `${arc_s.toFixed(1)} s, ${Math.round(bytes / 1000)} kB`;
type Line = [string, (row: Row) => string];
const whole = (n: number): string => n.toFixed(0);
const latency = ({ p50_ms, p95_ms, p99_ms }: Latency): string => [p50_ms, p95_ms, p99_ms].map(whole).join(' / ');
const kept = ({ acknowledged, lost, double }: Count): string => `${acknowledged}, ${lost}, ${double}`;

const ofBell = (read: (bell: Bell) => string) => (row: Row) => (row.bell ? read(row.bell) : NOT);
const BELL: Line[] = [
  ['**The bell**: trainees, classes, within s', ofBell((b) => `${b.trainees}, ${b.classes}, ${b.within_s}`)],
  ['accepted a second; refused or unanswered', ofBell((b) => `${b.perSecond.toFixed(1)}; ${b.failed}`)],
  ['an upload, p50 / p95 / p99 in ms', ofBell((b) => latency(b.latency))],
  ['memory of the service, MB: before, highest, last quarter', ofBell((b) => memory(b.watched.memory_MB))],
  ['cores at work', ofBell((b) => b.watched.cores.toFixed(2))],
  ['acknowledged, of them lost, there twice', ofBell((b) => kept(b.count))],
];

const drained = (name: string, of: (row: Row) => Drain | undefined): Line[] => {
  const said = (read: (drain: Drain) => string) => (row: Row) => {
    const d = of(row);
    return d === undefined ? NOT : read(d);
  };
  const both = (read: (d: Drained) => string) =>
    said(({ one, two }) => [one, two].map((d) => (d === null ? NOT : read(d))).join('; '));
  return [
    [`**${name}**: trainees; an attempt’s arc time and file`, said((d) => `${d.trainees}; ${attempt(d.attempt)}`)],
    [
      'accepted a second; refused or unanswered',
      said(({ atOnce }) => `${atOnce.perSecond.toFixed(0)}; ${atOnce.failed}`),
    ],
    ['an upload, p50 / p95 / p99 in ms', said((d) => latency(d.atOnce.latency))],
    ['that queue emptied by one; by two, attempts a second', both((d) => d.perSecond.toFixed(2))],
    [
      '**two over one** (threads; on PostgreSQL workers)',
      said(({ one, two }) => ratio(two?.perSecond, one?.perSecond)),
    ],
    ['the same with the start of the processes', said(({ one, two }) => ratio(one?.whole_s, two?.whole_s))],
    ['an attempt on its thread, ms', both((d) => whole(d.count.thread_ms))],
    ['cores at work', both((d) => d.watched.cores.toFixed(2))],
    [
      'core-seconds an attempt, everything together',
      both((d) => ((d.watched.cores * d.whole_s) / d.count.scored).toFixed(2)),
    ],
    ['scored, of them faults', both((d) => `${d.count.scored}, ${d.count.faults}`)],
    ['acknowledged, of them lost, there or scored twice', both((d) => kept(d.count))],
  ];
};
const DRAIN = drained('All at once', (row) => row.drain);
const LONG = drained('All at once, longer runs', (row) => row.long);

const ofWeek = (read: (week: Week) => string) => (row: Row) => (row.week ? read(row.week) : NOT);
const WEEK: Line[] = [
  [
    '**A week**: trainees, days, attempts each a day, each time within s',
    ofWeek((w) => `${w.trainees}, ${w.days}, ${w.attemptsADay}, ${w.within_s}; ${attempt(w.attempt)}`),
  ],
  ['an upload while one thread scores, p50 / p95 / p99 in ms', ofWeek((w) => latency(w.latency))],
  ['queue empty after the day’s last upload, s', ofWeek((w) => w.emptyAfter_s.map(whole).join(', '))],
  ['memory of the service when each day is over, MB', ofWeek((w) => w.memory_MB.join(', '))],
  ['last day over first', ofWeek((w) => ratio(w.memory_MB.at(-1), w.memory_MB[0]))],
  ['acknowledged, of them lost, there or scored twice; refused', ofWeek((w) => `${kept(w.count)}; ${w.failed}`)],
];

function memory(m: Bell['watched']['memory_MB']): string {
  return m === null ? 'not told' : `${m.before}, ${m.highest}, ${m.late}`;
}

function ratio(above: number | undefined, below: number | undefined): string {
  return above === undefined || below === undefined ? NOT : (above / below).toFixed(2);
}

/**
 * `npm run lab:load [-- --phase bell,drain,week,long --store embedded,postgresql --trainees N --within S --days D]`: a school against the embedded database and against a
 * PostgreSQL server of its own. Each phase begins from nothing and writes its figures and the table of README.md as soon as it is over, so that phases can be run apart and a run that was stopped
 * keeps what it has. `--look` prints the table and writes nothing. Figures are of the machine it runs on; what carries over are the ratios.
 */
import { parseArgs } from 'node:util';
import { Figures } from './figures.ts';
import { type Ground, openGround, STORES, type StoreName } from './ground.ts';
import { bell, drain, LONG_MM, SHORT_MM, week } from './phases.ts';
import { tableOf } from './table.ts';

const PHASES = ['bell', 'drain', 'week', 'long'] as const;
type Phase = (typeof PHASES)[number];

const { values } = parseArgs({
  options: {
    phase: { type: 'string', default: PHASES.join(',') },
    store: { type: 'string', default: STORES.join(',') },
    trainees: { type: 'string', default: '1000' },
    within: { type: 'string', default: '60' },
    days: { type: 'string', default: '5' },
    'week-trainees': { type: 'string', default: '100' },
    'long-trainees': { type: 'string', default: '100' },
    'a-day': { type: 'string', default: '2' },
    look: { type: 'boolean', default: false },
  },
});

/** @throws never: what is not allowed ends the program with what would be */
function whole(
  name: 'trainees' | 'within' | 'days' | 'week-trainees' | 'long-trainees' | 'a-day',
  least: number,
  most: number,
): number {
  const n = Number(values[name]);
  if (!Number.isInteger(n) || n < least || n > most) refuse(`--${name}: whole numbers from ${least} to ${most}`);
  return n;
}
function some<T extends string>(name: 'phase' | 'store', allowed: readonly T[]): T[] {
  const asked = values[name].split(',');
  const known = allowed.filter((a) => asked.includes(a));
  if (known.length !== asked.length) refuse(`--${name}: of ${allowed.join(', ')}, joined by commas`);
  return known;
}
function refuse(allowed: string): never {
  process.stderr.write(`Allowed for ${allowed}.\n`);
  process.exit(2);
}

const stores: StoreName[] = some('store', STORES);
const phases: Phase[] = some('phase', PHASES);
const trainees = whole('trainees', 2, 1000);
const longTrainees = whole('long-trainees', 2, 1000);
const within_s = whole('within', 1, 600);
const w = {
  trainees: whole('week-trainees', 2, 1000),
  days: whole('days', 1, 30),
  attemptsADay: whole('a-day', 1, 50),
  within_s: 10,
};

const figures = Figures.read(values.look);
let ground: Ground | null = null;
for (const signal of ['SIGINT', 'SIGTERM'] as const)
  process.once(signal, () => {
    ground?.end();
    process.exit(1);
  });
for (const store of stores) {
  ground = await openGround(store);
  const open = ground;
  const play: Record<Phase, () => Promise<void>> = {
    bell: async () => figures.keep(store, { bell: await bell(open, trainees, within_s) }),
    drain: () => drain(open, trainees, SHORT_MM, (row) => figures.keep(store, { drain: row })),
    long: () => drain(open, longTrainees, LONG_MM, (row) => figures.keep(store, { long: row })),
    week: () => week(open, w, (row) => figures.keep(store, { week: row })),
  };
  try {
    for (const phase of phases) {
      const began = performance.now();
      await play[phase]();
      process.stdout.write(`${store}, ${phase}: ${((performance.now() - began) / 60_000).toFixed(1)} min\n`);
    }
  } finally {
    open.end();
    ground = null;
  }
}
process.stdout.write(`\n${tableOf(figures.rows)}\n`);

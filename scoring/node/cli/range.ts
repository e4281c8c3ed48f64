import { availableParallelism } from 'node:os';
import { Command, InvalidArgumentError, Option } from 'commander';
import { PATTERNS, type PatternName } from '../../../engine/index.ts';
import { profileNamed, profiles } from '../../profiles/ready.ts';
import { mapOf, middleSentences } from '../../range/map.ts';
import { pointsOf, type RangePlan } from '../../range/plan.ts';
import { rangeSvg } from '../../range/range-svg.ts';
import { rangeCsv, rangeRows } from '../../range/table.ts';
import type { RangeResult } from '../../range/weld-point.ts';
import type { Exercise } from '../../schema/exercise.ts';
import { describeFound, InputError } from '../../schema/problem.ts';
import { said } from '../../words/names.ts';
import { writeText } from '../files.ts';
import { beside, runPool } from '../pool.ts';
import { choicesOf, number, rangeOf, setting } from './options.ts';
import type { Screen } from './screen.ts';

interface RangeFlags {
  joint: Exercise['joint']['kind'];
  size: number;
  plate: number;
  plateWidth: number;
  length: number;
  gap: number;
  startTemp: number;
  wire: string;
  gas: Exercise['process']['gas'];
  feed: number[];
  volts: number[];
  travel: number[];
  tipToWork: number[];
  pattern: PatternName[];
  width: number;
  pause: number;
  reachAhead: number;
  cyclesPerSecond: number;
  handAmounts: number[];
  seeds: number;
  profile: string;
  cell: number;
  workers: number;
  svg?: string;
  out?: string;
}

const HELP = `
Welds every combination with the robot hand and judges it like any attempt; combinations within on every line are welded again with less
steady hands. A range is from:to:step, or a list a,b,c, or one value. Same results with any number of workers.

Examples:
    $ toehold range --joint tee --size 5 --plate 5 --volts 16:20:1 --feed 3.6:5.6:0.4 --svg map.svg --out map.csv
    $ toehold range --joint lap --size 4 --plate 5 --travel 1.8:3:0.3 --pattern inverted-v,crescent --hand-amounts 0

Working range (study): a study aid, never a procedure.

Profiles: ${profiles.map((p) => p.name).join(', ')}`;

export function rangeCommand(screen: Screen): Command {
  const command = new Command('range').description(
    'sweep settings and map where the root ties in and the profile holds (study)',
  );
  const add = <T>(flags: string, text: string, parse: (text: string) => T, preset: T): void => {
    command.addOption(new Option(flags, text).argParser(parse).default(preset));
  };
  command.addOption(new Option('--joint <kind>', 'joint').choices(choicesOf('joint', 'kind')).default('tee'));
  add('--size <mm>', 'leg asked for', number(2, 15, 'mm'), 5);
  add('--plate <mm>', 'thickness of both plates', setting('joint', 'plateA_mm'), 5);
  add('--plate-width <mm>', 'width of each plate', setting('joint', 'plateWidth_mm'), 75);
  add('--length <mm>', 'length of each weld', setting('joint', 'length_mm'), 50);
  add('--gap <mm>', 'fit-up gap', setting('joint', 'gap_mm'), 0);
  add('--start-temp <C>', 'temperature of the plates before welding', setting('joint', 'startTemp_C'), 20);
  command.addOption(new Option('--wire <mm>', 'wire diameter').choices(choicesOf('process', 'wire_mm')).default('0.9'));
  command.addOption(new Option('--gas <name>', 'gas').choices(choicesOf('process', 'gas')).default('M21-ArC-18'));
  add('--feed <range>', 'wire feed, m/min', values(...rangeOf('process', 'feed_mpmin')), [4.6]);
  add('--volts <range>', 'volts at the arc', values(...rangeOf('process', 'volts_V')), [18]);
  add('--travel <range>', 'climb, mm/s', values(0.4, 12, 'mm/s'), [2]);
  add('--tip-to-work <range>', 'contact tip to work, mm', values(5, 40, 'mm'), [12]);
  add('--pattern <list>', `weaves: ${PATTERNS.join(', ')}`, patterns, ['inverted-v'] as PatternName[]);
  add('--width <mm>', 'weave width', number(0, 14, 'mm'), 5);
  add('--pause <s>', 'pause at each toe', number(0, 3, 's'), 0.25);
  add('--reach-ahead <mm>', 'reach ahead at the root', number(-6, 6, 'mm'), 2);
  add('--cycles-per-second <n>', 'beat', number(0.2, 5, 'a second'), 0.9);
  add('--hand-amounts <list>', 'imperfect hands to try, 0 steady to 1 a beginner', values(0, 2, ''), [0, 0.5, 1]);
  add('--seeds <n>', 'seeds each imperfect hand is tried with', number(1, 20, ''), 3);
  command.option('--profile <name>', 'acceptance profile', 'aws-d11-static-si');
  add('--cell <mm>', 'cell size of the model', number(0.4, 1.5, 'mm'), 0.75);
  add('--workers <n>', 'worker threads', number(1, 64, ''), Math.max(1, availableParallelism() - 1));
  command.option('--svg <file>', 'draw the map');
  command.option('--out <file>', 'write the table, .csv or .json');
  return command.addHelpText('after', HELP).action((flags: RangeFlags) => range(flags, screen));
}

async function range(flags: RangeFlags, screen: Screen): Promise<void> {
  const plan = planOf(flags);
  const points = pointsOf(plan);
  if (flags.out !== undefined && !/\.(csv|json)$/.test(flags.out)) {
    throw new InputError('range', [
      { path: '--out', found: describeFound(flags.out), allowed: 'a file ending in .csv or .json' },
    ]);
  }
  const results = await runPool<number, RangeResult>(
    beside(import.meta.url, 'range-worker'),
    plan,
    points.map((p) => p.index),
    Math.round(flags.workers),
    (done) => screen.over(`${done} of ${points.length} combinations`),
  );
  screen.endOver();
  const map = mapOf(plan, results);
  if (flags.svg !== undefined) writeText(flags.svg, rangeSvg(map));
  if (flags.out !== undefined) {
    const { label, caution, middle } = map;
    const place = middle === null ? null : { pattern: middle.point.pattern, ...middle.point.at };
    const summary =
      middle === null ? null : { ...place, room: middle.room, give: middle.give, handHolds: middle.handHolds };
    writeText(
      flags.out,
      flags.out.endsWith('.csv')
        ? rangeCsv(map)
        : `${JSON.stringify({ label, caution, plan, middle: summary, rows: rangeRows(map) }, null, 2)}\n`,
    );
  }
  screen.say('Working range (study).', ...middleSentences(map), map.caution);
  for (const file of [flags.svg, flags.out]) if (file !== undefined) screen.say(`Written to ${file}`);
}

function planOf(f: RangeFlags): RangePlan {
  if (profileNamed(f.profile) === undefined) {
    throw new InputError('range', [
      { path: '--profile', found: describeFound(f.profile), allowed: profiles.map((p) => p.name).join(', ') },
    ]);
  }
  return {
    base: {
      joint: {
        kind: f.joint,
        plateA_mm: f.plate,
        plateB_mm: f.plate,
        plateWidth_mm: f.plateWidth,
        length_mm: f.length,
        gap_mm: f.gap,
        startTemp_C: f.startTemp,
      },
      process: { wire_mm: Number(f.wire) as Exercise['process']['wire_mm'], gas: f.gas },
      weave: {
        width_mm: f.width,
        pauseA_s: f.pause,
        pauseB_s: f.pause,
        apex_mm: f.reachAhead,
        cyclesPerSecond: f.cyclesPerSecond,
        start_mm: 2,
        length_mm: f.length - 4,
      },
      leg_mm: f.size,
      profile: f.profile,
    },
    values: { feed_mpmin: f.feed, volts_V: f.volts, travel_mmps: f.travel, tipToWork_mm: f.tipToWork },
    patterns: f.pattern,
    handAmounts: f.handAmounts,
    seeds: Array.from({ length: Math.round(f.seeds) }, (_, i) => i + 1),
    cell_mm: f.cell,
  };
}

/** Most values on one axis. */
const MOST_VALUES = 60;

/** `from:to:step`, `a,b,c` or one value, rising and without doubles. */
export function values(low: number, high: number, unit: string): (text: string) => number[] {
  const one = number(low, high, unit);
  return (text) => {
    const parts = text.split(':');
    const out = new Set<number>();
    if (parts.length === 3) {
      const [from, to, step] = [one(parts[0]!), one(parts[1]!), Number(parts[2])];
      if (!(step > 0) || to < from || (to - from) / step > MOST_VALUES) {
        throw new InvalidArgumentError(
          `found ${JSON.stringify(text)}, allowed: from:to:step with a step above 0, rising, at most ${MOST_VALUES} steps`,
        );
      }
      const count = Math.floor((to - from) / step + 1e-9);
      for (let k = 0; k <= count; k++) out.add(Math.round((from + k * step) * 1e6) / 1e6);
    } else if (parts.length === 1) {
      for (const value of text.split(',')) out.add(one(value));
    } else {
      throw new InvalidArgumentError(
        `found ${JSON.stringify(text)}, allowed: from:to:step, a,b,c or one value, ${said(low)} to ${said(high)} ${unit}`,
      );
    }
    return [...out].sort((a, b) => a - b);
  };
}

function patterns(text: string): PatternName[] {
  const found = text.split(',').map((name) => {
    const known = PATTERNS.find((p) => p === name.trim());
    if (known === undefined)
      throw new InvalidArgumentError(`found ${JSON.stringify(name)}, allowed: ${PATTERNS.join(', ')}`);
    return known;
  });
  return [...new Set(found)];
}

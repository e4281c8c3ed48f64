/**
 * `npm run calibrate`: what the free parameters were set to hold, how well they hold it, and what each one moves. Targets are published or
 * common-practice behaviour only; facts that are no targets stand apart. `--search` searches again over the parameters without a published
 * value, from the present values and from the middles of their ranges, and says how well the targets determine them.
 */
import { PARAMETERS, type ParameterName } from '../../../engine/physics/calibration.ts';
import { type Summary, summarise, type TendencyCase } from '../../tendencies/summary.ts';
import { type Overrides, search } from './search.ts';

/** Parameters without a published value that carry the balance of the trade. */
const SEARCHED: ParameterName[] = [
  'arcRadius',
  'arcRadiusPerVolt',
  'columnEfficiency',
  'stirring',
  'mixingDepth',
  'advanceHot',
  'advanceCold',
  'advanceSpan',
];

interface Target {
  name: string;
  source: string;
  of: (weld: (c: TendencyCase) => Summary) => number;
  low: number;
  high: number;
}

const five: TendencyCase = {
  joint: { plateA_mm: 5, plateB_mm: 5, length_mm: 50 },
  process: { feed_mpmin: 4.6, volts_V: 18 },
  weave: { travel_mmps: 2, cyclesPerSecond: 0.9 },
  between: [22, 40],
};
const cold: TendencyCase = { ...five, process: { feed_mpmin: 3.5, volts_V: 15 } };
const hot: TendencyCase = { ...five, process: { feed_mpmin: 5.5, volts_V: 19.5 } };
const back: TendencyCase = { ...five, weave: { ...five.weave, apex_mm: -3 } };
const straight: TendencyCase = { ...five, weave: { pattern: 'straight', travel_mmps: 2 } };

const six = (process: NonNullable<TendencyCase['process']>, more: TendencyCase = {}): TendencyCase => ({
  ...more,
  joint: { length_mm: 40 },
  between: [14, 28],
  process,
  weave: { travel_mmps: 2.1, cyclesPerSecond: 1, ...more.weave },
});
const volts = (volts_V: number): TendencyCase => six({ volts_V, feed_mpmin: 4.8 });
const slow = (travel_mmps: number): TendencyCase => six({ feed_mpmin: 4.6 }, { weave: { travel_mmps } });
const plain = (more: TendencyCase = {}): TendencyCase =>
  six({ feed_mpmin: 4.6 }, { ...more, weave: { travel_mmps: 2, cyclesPerSecond: 0.9, ...more.weave } });
const lap = (volts_V: number, feed_mpmin: number): TendencyCase => ({
  joint: { kind: 'lap', length_mm: 50 },
  between: [16, 38],
  process: { wire_mm: 0.8, volts_V, feed_mpmin },
  weave: { width_mm: 6, pauseA_s: 0.2, pauseB_s: 0.2, travel_mmps: 2.1, cyclesPerSecond: 1, travelAngle_deg: 0 },
});

const TARGETS: Target[] = [
  {
    name: 'root of the middle setting, past the corner',
    source: 'vertical-up short arc 18 V, 120 A ties in 5 mm plate (typical handbook settings, from memory)',
    of: (w) => w(five).root,
    low: 0.2,
    high: 0.8,
  },
  {
    name: 'convexity of the middle setting',
    source: 'ISO 5817 C and D1.1 are met by a good weave; common practice',
    of: (w) => w(five).convexity,
    low: 0.3,
    high: 1.7,
  },
  {
    name: 'root of the cold setting',
    source: 'common practice: cold leaves the root short',
    of: (w) => w(cold).root,
    low: -1.5,
    high: 0.05,
  },
  {
    name: 'hot root over middle root',
    source: 'GMAW handbook trend table: feed up, deeper',
    of: (w) => w(hot).root - w(five).root,
    low: 0.1,
    high: 0.8,
  },
  {
    name: 'hot crown over middle crown',
    source: 'GMAW handbook trend table: feed up, larger bead',
    of: (w) => w(hot).convexity - w(five).convexity,
    low: 0.4,
    high: 1.6,
  },
  {
    name: 'root lost by crossing 3 mm back',
    source: 'common practice: riding the puddle leaves the root',
    of: (w) => w(five).root - w(back).root,
    low: 0.4,
    high: 1.4,
  },
  {
    name: 'straight crown over weave crown',
    source: 'common practice',
    of: (w) => w(straight).convexity - w(five).convexity,
    low: 0.5,
    high: 2,
  },
  {
    name: 'fused depth of the walls, middle setting',
    source: 'short-circuiting: shallow, no finger; 0.5 to 2 mm (common practice)',
    of: (w) => w(five).depthA,
    low: 0.7,
    high: 1.5,
  },
  {
    name: 'fused depth at 19 V over that at 16 V, less 1',
    source: 'GMAW handbook trend table: volts move depth little',
    of: (w) => w(volts(19)).depthA / w(volts(16)).depthA - 1,
    low: -0.15,
    high: 0.15,
  },
  {
    name: 'face width at 19 V over that at 16 V',
    source: 'GMAW handbook trend table: volts widen',
    of: (w) => w(volts(19)).faceWidth - w(volts(16)).faceWidth,
    low: 0.2,
    high: 1,
  },
  {
    name: 'convexity at 16 V over that at 19 V',
    source: 'GMAW handbook trend table: volts flatten; size from common practice',
    of: (w) => w(volts(16)).convexity - w(volts(19)).convexity,
    low: 0.2,
    high: 1,
  },
  {
    name: 'exponent of fused depth in current',
    source: 'published regressions, 4/3 in Jackson’s form (from memory)',
    of: (w) => {
      const [p, q] = [w(six({ volts_V: 18.5, feed_mpmin: 3.8 })), w(six({ volts_V: 18.5, feed_mpmin: 5.8 }))];
      return Math.log(q.depthA / p.depthA) / Math.log(q.current / p.current);
    },
    low: 0.8,
    high: 1.6,
  },
  {
    name: 'root at 2.4 mm/s over that at 1.3 mm/s',
    source: 'common practice: a slow puddle runs ahead and leaves the root',
    of: (w) => w(slow(2.4)).rootA - w(slow(1.3)).rootA,
    low: 0.3,
    high: 0.8,
  },
  {
    name: 'root lost by 8 mm of tip',
    source: 'GMAW handbook trend table: stick-out; size from common practice',
    of: (w) => w(plain()).root - w(plain({ weave: { tipToWork_mm: 20 } })).root,
    low: 0.2,
    high: 0.8,
  },
  {
    name: 'root lost by 2 mm of lead',
    source: 'common practice',
    of: (w) => w(plain()).root - w(plain({ faults: { lead_mm: -2 } })).root,
    low: 0.2,
    high: 0.8,
  },
];

/**
 * Not among the targets: common practice, no source. 6 mm lap, 0.8 mm wire, gun square, about 2.1 mm/s. They were in view while the form of the
 * model was chosen, so they are no blind prediction; nothing was moved to meet them, and the last is missed.
 */
const NOT_SET_BY: Target[] = [
  {
    name: 'lap at 19 V, 7.1 m/min: convexity',
    source: 'common practice: about 2.0',
    of: (w) => w(lap(19, 7.1)).convexity,
    low: 1.6,
    high: 2.4,
  },
  {
    name: 'lap at 19 V, 7.1 m/min: root',
    source: 'common practice: just reached or missed by a hair',
    of: (w) => w(lap(19, 7.1)).root,
    low: -0.2,
    high: 0.2,
  },
  {
    name: 'lap at 20 V, 7.4 m/min over the other: root',
    source: 'common practice: deeper',
    of: (w) => w(lap(20, 7.4)).root - w(lap(19, 7.1)).root,
    low: 0.02,
    high: 0.6,
  },
  {
    name: 'lap at 20 V, 7.4 m/min: convexity',
    source: 'common practice: about 3.4, past 3.2',
    of: (w) => w(lap(20, 7.4)).convexity,
    low: 3.0,
    high: 3.8,
  },
];

const CELL_MM = 0.75;

function measureOf(list: Target[], overrides: Overrides): number[] {
  const weld = (c: TendencyCase): Summary => summarise({ ...c, calibration: overrides }, CELL_MM);
  return list.map((t) => {
    try {
      return t.of(weld);
    } catch {
      // Parameters that leave no bead to read are no answer to any target.
      return Number.NaN;
    }
  });
}

const measure = (overrides: Overrides): number[] => measureOf(TARGETS, overrides);

/** How far each value lies from the middle of its band, in half widths: within 1 is inside. */
const offBand = (values: number[]): number[] =>
  values.map((v, i) => (2 * v - TARGETS[i]!.low - TARGETS[i]!.high) / (TARGETS[i]!.high - TARGETS[i]!.low));

const print = (line: string): void => {
  process.stdout.write(`${line}\n`);
};

function table(list: Target[], values: number[]): void {
  print('| target | band | now | source |');
  print('|---|---|---|---|');
  list.forEach((t, i) => {
    const v = values[i]!;
    const out = v < t.low || v > t.high ? ' OUTSIDE' : '';
    print(`| ${t.name} | ${t.low} to ${t.high} | ${v.toFixed(2)}${out} | ${t.source} |`);
  });
}

const now = measure({});
table(TARGETS, now);
print('\nNot set by, though in view:\n');
table(NOT_SET_BY, measureOf(NOT_SET_BY, {}));

const steps = process.argv.includes('--search') ? SEARCHED : (Object.keys(PARAMETERS) as ParameterName[]);
print('\nSensitivities: change of each reading for a step of a tenth of the parameter’s range.');
print(`| parameter | value | step | ${TARGETS.map((t) => t.name).join(' | ')} |`);
print(`|---|---|---|${TARGETS.map(() => '---').join('|')}|`);
for (const name of steps) {
  const p = PARAMETERS[name];
  const step = (p.range[1] - p.range[0]) / 10;
  const moved = measure({ [name]: Math.min(p.range[1], p.value + step) });
  print(
    `| ${name} | ${p.value} ${p.unit} | ${step.toPrecision(2)} | ${moved.map((v, i) => (v - now[i]!).toFixed(2)).join(' | ')} |`,
  );
}

if (process.argv.includes('--search')) {
  const problem = { names: SEARCHED, residuals: (x: Overrides) => offBand(measure(x)) };
  const present = Object.fromEntries(SEARCHED.map((n) => [n, PARAMETERS[n].value])) as Overrides;
  const middles = Object.fromEntries(
    SEARCHED.map((n) => [n, (PARAMETERS[n].range[0] + PARAMETERS[n].range[1]) / 2]),
  ) as Overrides;
  for (const [from, start] of [
    ['the present values', present],
    ['the middles of the ranges', middles],
  ] as const) {
    const found = search(problem, start, 3);
    print(`\nSearch from ${from}: misfit ${found.misfits.map((m) => m.toFixed(2)).join(' -> ')}`);
    for (const name of SEARCHED) print(`  ${name} ${start[name]!.toPrecision(3)} -> ${found.at[name]!.toPrecision(3)}`);
    print('  What the targets see of them, best first (half bands moved by a step of the whole range):');
    for (const { size, mix } of found.directions) print(`  ${size.toFixed(2)}: ${mix}`);
  }
}

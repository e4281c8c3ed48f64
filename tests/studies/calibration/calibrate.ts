/**
 * `npm run calibrate`: what the free parameters were set to hold, how well they hold it, and what each one moves.
 * Targets are published or common-practice behaviour only. `--search` redoes the search over the four parameters without a
 * published value (arc radius and its volts slope, the two advancing angles) by coordinate steps inside their ranges.
 */
import { PARAMETERS, type ParameterName } from '../../../engine/physics/calibration.ts';
import { type Summary, summarise, type TendencyCase } from '../../tendencies/summary.ts';

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
    name: 'root when crossing 3 mm back',
    source: 'common practice: riding the puddle leaves the root',
    of: (w) => w(back).root,
    low: -2,
    high: -0.3,
  },
  {
    name: 'straight crown over weave crown',
    source: 'common practice',
    of: (w) => w(straight).convexity - w(five).convexity,
    low: 0.8,
    high: 3,
  },
  {
    name: 'fused depth of the walls, middle setting',
    source: 'short-circuiting: shallow, no finger; 0.5 to 2 mm (common practice)',
    of: (w) => w(five).depthA,
    low: 0.5,
    high: 2,
  },
];

type Overrides = Partial<Record<ParameterName, number>>;

function measure(overrides: Overrides): number[] {
  const weld = (c: TendencyCase): Summary => summarise({ ...c, calibration: overrides }, 0.75);
  return TARGETS.map((t) => {
    try {
      return t.of(weld);
    } catch {
      // Parameters that leave no bead to read are no answer to any target.
      return Number.NaN;
    }
  });
}

/** Zero when every target is inside its band, else the distance outside in band widths, squared and summed. */
function misfit(values: number[]): number {
  return values.reduce((sum, v, i) => {
    const { low, high } = TARGETS[i]!;
    if (Number.isNaN(v)) return Number.POSITIVE_INFINITY;
    const out = v < low ? low - v : v > high ? v - high : 0;
    return sum + (out / (high - low)) ** 2;
  }, 0);
}

const print = (line: string): void => {
  process.stdout.write(`${line}\n`);
};

const now = measure({});
print('| target | band | now | source |');
print('|---|---|---|---|');
TARGETS.forEach((t, i) => {
  const v = now[i]!;
  print(
    `| ${t.name} | ${t.low} to ${t.high} | ${v.toFixed(2)}${v < t.low || v > t.high ? ' OUTSIDE' : ''} | ${t.source} |`,
  );
});
print(`\nmisfit ${misfit(now).toFixed(4)}\n`);

print('Sensitivities: change of each reading for a step of a tenth of the parameter’s range.');
print(`| parameter | value | step | ${TARGETS.map((t) => t.name).join(' | ')} |`);
print(`|---|---|---|${TARGETS.map(() => '---').join('|')}|`);
for (const name of Object.keys(PARAMETERS) as ParameterName[]) {
  const p = PARAMETERS[name];
  const step = (p.range[1] - p.range[0]) / 10;
  const moved = measure({ [name]: Math.min(p.range[1], p.value + step) });
  print(
    `| ${name} | ${p.value} ${p.unit} | ${step.toPrecision(2)} | ${moved.map((v, i) => (v - now[i]!).toFixed(2)).join(' | ')} |`,
  );
}

if (process.argv.includes('--search')) {
  const free: ParameterName[] = ['arcRadius', 'arcRadiusPerVolt', 'advanceHot', 'advanceCold'];
  let best: Overrides = {};
  let least = misfit(now);
  for (let round = 0; round < 3 && least > 0; round++) {
    for (const name of free) {
      const p = PARAMETERS[name];
      const step = (p.range[1] - p.range[0]) / 20;
      for (const sign of [-1, 1]) {
        const value = Math.min(p.range[1], Math.max(p.range[0], (best[name] ?? p.value) + sign * step));
        const trial = { ...best, [name]: value };
        const m = misfit(measure(trial));
        if (m < least) {
          least = m;
          best = trial;
        }
      }
    }
  }
  print(
    `\nsearch: misfit ${least.toFixed(4)} at ${JSON.stringify(best)}${Object.keys(best).length === 0 ? ' (the present values)' : ''}`,
  );
}

/** The comparison as a page: a table as fire modellers keep it (bias and spread of the model beside the spread of the data), and a scatter plot. */
import * as Plot from '@observablehq/plot';
import { ENGINE_VERSION } from '../../../engine/index.ts';
import { COLOURS, sheet } from '../plots/sheet.ts';
import type { Comparison, Point } from './compare.ts';

/** Lines of the plot, either side of agreement. */
const OFF = 0.2;

const mean = (values: number[]): number => values.reduce((sum, x) => sum + x, 0) / values.length;

interface Row {
  quantity: string;
  sets: number;
  points: number;
  /** Half the mean width of what the sources print, over its middle. */
  dataSpread: number;
  /** Mean of model over source, and the standard deviation of that ratio about it. */
  bias: number;
  modelSpread: number;
  /** Share of points that lie between the printed ends. */
  inside: number;
}

function summary(comparisons: readonly Comparison[]): Row[] {
  return [...new Set(comparisons.map((c) => c.quantity))].map((quantity) => {
    const of = comparisons.filter((c) => c.quantity === quantity);
    const points = of.flatMap((c) => c.points);
    const ratios = points.map((p) => p.model / p.said);
    const bias = mean(ratios);
    return {
      quantity,
      sets: new Set(of.map((c) => c.set.name)).size,
      points: points.length,
      dataSpread: mean(points.map((p) => Math.abs((p.high - p.low) / 2 / p.said))),
      bias,
      modelSpread: Math.sqrt(mean(ratios.map((r) => (r - bias) ** 2))),
      inside: points.filter((p) => p.model >= p.low && p.model <= p.high).length / points.length,
    };
  });
}

const digits = (x: number, unit: string): string => `${x.toFixed(2)}${unit === '' ? '' : ` ${unit}`}`;
const pointRow = (p: Point, unit: string): string =>
  `| ${p.at} | ${digits(p.said, unit)}${p.low === p.high ? '' : ` (${p.low.toFixed(2)} to ${p.high.toFixed(2)})`} | ${digits(p.model, unit)} | ${(p.model / p.said).toFixed(2)} |`;

export function page(comparisons: readonly Comparison[]): string {
  const rows = summary(comparisons);
  const head = rows.map(
    (r) =>
      `| ${r.quantity} | ${r.sets} | ${r.points} | ±${(100 * r.dataSpread).toFixed(0)} % | ${r.bias.toFixed(2)} | ${r.modelSpread.toFixed(2)} | ${(100 * r.inside).toFixed(0)} % |`,
  );
  const parts = comparisons.map((c) =>
    [
      `### ${c.quantity}: ${c.set.title}`,
      '',
      `${c.set.source.authors}, ${c.set.source.title}, ${c.set.source.place}. Evidence: ${c.set.evidence}. Known to the model before: ${c.set.used_before}.`,
      '',
      '| at | source | model | model / source |',
      '|---|---|---|---|',
      ...c.points.map((p) => pointRow(p, c.unit)),
      '',
    ].join('\n'),
  );
  const of = (quantity: string): Point[] => comparisons.filter((c) => c.quantity === quantity).flatMap((c) => c.points);
  const ratio = (quantity: string): string => rows.find((r) => r.quantity === quantity)!.bias.toFixed(2);
  const exponents = of('exponent of height over travel');
  const layers = of('exponent of a second layer');
  const modelled = (points: Point[]): string => {
    const all = points.map((p) => p.model);
    return `${mean(all).toFixed(2)} in the mean, from ${Math.min(...all).toFixed(2)} to ${Math.max(...all).toFixed(2)}`;
  };
  return `# Beside data from elsewhere

Made by \`npm run study:outside\` with engine ${ENGINE_VERSION}. The sets are in [tests/reference/outside](../../reference/outside/SOURCES.md), digits as
printed; nothing in the model was set by them but where a set says so, and the rules of the comparison, but that of second layers, were
written down before it was first run.

| quantity | sets | points | spread of the data | bias of the model | its spread | between the printed ends |
|---|---|---|---|---|---|---|
${head.join('\n')}

Bias is the mean of model over source, spread the standard deviation of that ratio. ![scatter](scatter.svg)

## What it shows and does not

- **No measured section of a short-arc fillet is among the sets**: none could be read in full (see the list of sources). Root fusion, convexity and
  toe of the model are compared with nothing measured here; they answer to the trade's facts and to published closed forms.
- The makers' legs are recommendations, nominal and horizontal or flat, so they are laid beside the leg that the metal laid would fill: that tests melting
  rate and mass balance, not the shape of the bead. Two of the three makers' tables may stand on one older handbook.
- The heights are a fit to walls of layers laid on their like, wire diameter and gas not stated; the wire here is 0.9 mm. One bead of the model on a plate
  stands ${ratio('height of a bead')} times as high and falls with travel to the power ${modelled(exponents)}; the source has ${mean(exponents.map((p) => p.said)).toFixed(2)}. That is a bead beside a layer. A second
  bead on the first, which is the like of a layer, adds ${ratio('height of a second layer')} times the printed height and falls to the power ${modelled(layers)} (printed for these feeds:
  ${mean(layers.map((p) => p.said)).toFixed(2)}). This second comparison was made after the first had missed, so it is no prediction; a third layer would run down the side of the first two,
  since the model's surface is a height over the plate. Whether a single bead's crown is too high nothing here can say.

${parts.join('\n')}`;
}

export function scatter(comparisons: readonly Comparison[]): string {
  const quantities = [...new Set(comparisons.map((c) => c.quantity))];
  const panels = quantities.map((quantity) => {
    const of = comparisons.filter((c) => c.quantity === quantity);
    const points = of.flatMap((c, n) =>
      c.points.map((p) => ({ ...p, said: Math.abs(p.said), model: Math.abs(p.model), n })),
    );
    const most = 1.1 * Math.max(...points.flatMap((p) => [p.said, p.model]));
    const line = (slope: number) => [0, most / Math.max(1, slope)].map((x) => ({ x, y: slope * x }));
    return {
      title: `${quantity}${of[0]!.unit === '' ? ', sign turned' : `, ${of[0]!.unit}`}`,
      options: {
        x: { label: 'source', domain: [0, most], grid: true },
        y: { label: null, domain: [0, most], grid: true },
        marks: [
          Plot.line(line(1), { x: 'x', y: 'y', stroke: '#000' }),
          ...[1 - OFF, 1 + OFF].map((slope) =>
            Plot.line(line(slope), { x: 'x', y: 'y', stroke: '#000', strokeDasharray: '4 3' }),
          ),
          ...of.map((_, n) =>
            Plot.dot(
              points.filter((p) => p.n === n),
              {
                x: 'said',
                y: 'model',
                stroke: COLOURS[n]!,
                fill: n % 2 === 0 ? COLOURS[n]! : '#fff',
                r: 3.5,
              },
            ),
          ),
        ],
      },
    };
  });
  return sheet(
    `Model (up) against source (across), lines at agreement and ±${100 * OFF} %, engine ${ENGINE_VERSION}`,
    panels,
    2,
  );
}

/** Plots of the wire: what it melts per ampere, and volts against the load line. */
import * as Plot from '@observablehq/plot';
import { GASES, steadyVolts } from '../../../engine/index.ts';
import { feedFor, gramsPerAmpHour, WORKING_RANGES } from '../../reference/cases/wire.ts';
import { COLOURS, line, type Panel, sheet, steps, words } from './sheet.ts';

/** Printed settings table, argon-CO2 butt welds: A from, A to, V from, V to. */
const PUBLISHED = [
  [100, 110, 16, 17],
  [110, 120, 17, 18],
  [120, 140, 17, 19],
  [150, 170, 18, 21],
] as const;

export function wire(): string {
  const across = (low: number, high: number): number[] => steps(low, high, 24);
  const melting: Panel = {
    title: 'Melting coefficient; grey: handbooks, 9 to 13 g/(A h)',
    options: {
      marks: [
        Plot.rect([{ x1: 30, x2: 260, y1: 9, y2: 13 }], { x1: 'x1', x2: 'x2', y1: 'y1', y2: 'y2', fill: '#e6e6e6' }),
        ...WORKING_RANGES.flatMap(({ wire_mm, low_A, high_A }, k) => [
          Plot.line(
            across(low_A, high_A).map((amps) => ({ x: amps, y: gramsPerAmpHour(wire_mm, amps) })),
            { x: 'x', y: 'y', stroke: COLOURS[k]!, strokeWidth: 2 },
          ),
          words(`${wire_mm} mm`, high_A - 8, gramsPerAmpHour(wire_mm, high_A) + 0.25, COLOURS[k]),
        ]),
      ],
      x: { label: 'current, A', domain: [30, 270] },
      y: { label: 'g/(A h)', domain: [8, 14] },
    },
  };
  const feeds: Panel = {
    title: 'Current from feed, 12 mm tip to work; dashed: handbook factors',
    options: {
      marks: WORKING_RANGES.flatMap(({ wire_mm, low_A, high_A }, k) => {
        const factor = { 0.8: [2, 0.762], 0.9: [1.6, 0.889], 1: null, 1.2: [1, 1.143] }[wire_mm];
        const feedOf = (amps: number): number => feedFor(wire_mm, amps);
        const marks: Plot.Markish[] = [
          Plot.line(
            across(low_A, high_A).map((amps) => ({ x: feedOf(amps), y: amps })),
            { x: 'x', y: 'y', stroke: COLOURS[k]!, strokeWidth: 2 },
          ),
          words(`${wire_mm} mm`, feedOf(high_A), high_A, COLOURS[k]),
        ];
        if (factor) {
          const rule = (amps: number): number => factor[0]! * 0.0254 * amps * (factor[1]! / wire_mm) ** 2;
          marks.push(
            Plot.line(
              across(low_A, high_A).map((amps) => ({ x: rule(amps), y: amps })),
              { x: 'x', y: 'y', stroke: COLOURS[k]!, strokeDasharray: '4 3' },
            ),
          );
        }
        return marks;
      }),
      x: { label: 'feed, m/min', domain: [0, 10] },
      y: { label: 'current, A' },
    },
  };
  const process = { wire_mm: 1, feed_mpmin: 5, volts_V: 18, gas: 'M21-ArC-18', tip_mm: 0, nozzle_mm: 16 } as const;
  const band = steps(60, 200, 14).map((amps) => ({ x: amps, ...steadyVolts(process, amps) }));
  const volts: Panel = {
    title: `Steady volts, ${GASES['M21-ArC-18'].title}; boxes: published settings`,
    options: {
      marks: [
        Plot.areaY(band, { x: 'x', y1: 'low', y2: 'high', fill: COLOURS[0], fillOpacity: 0.15 }),
        line(steps(60, 200, 10).map((amps) => ({ x: amps, y: 14 + 0.05 * amps }))),
        words('IEC 60974-1: 14 + 0.05 I', 75, 20),
        Plot.rect(
          PUBLISHED.map(([x1, x2, y1, y2]) => ({ x1, x2, y1, y2 })),
          { x1: 'x1', x2: 'x2', y1: 'y1', y2: 'y2', stroke: COLOURS[1], fill: 'none', strokeWidth: 1.6 },
        ),
      ],
      x: { label: 'current, A' },
      y: { label: 'V' },
    },
  };
  return sheet('Wire and arc: the model against handbooks and the load line', [melting, feeds, volts]);
}

/** One sheet a knob: every outcome over its settings, tee and lap. */
import * as Plot from '@observablehq/plot';
import { COLOURS, type Panel, sheet } from '../plots/sheet.ts';
import { type Figures, swept } from './figures.ts';
import { type Knob, PIECES } from './knobs.ts';
import { OUTCOMES, UNIT } from './outcomes.ts';

const ACROSS = 4;

export function plotKnob(figures: Figures, knob: Knob): string {
  const panels: Panel[] = OUTCOMES.map((outcome) => ({
    title: UNIT[outcome] === '-' ? outcome : `${outcome}, ${UNIT[outcome]}`,
    options: {
      x: { label: `${knob.name}, ${knob.unit}`, grid: true },
      y: { label: null, grid: true, nice: true },
      marks: PIECES.flatMap((piece, n) => {
        const points = swept(figures, piece, knob.name).flatMap(({ value, outcomes }) =>
          outcomes[outcome] === null ? [] : [{ x: value, y: outcomes[outcome] }],
        );
        const last = points.at(-1);
        const named = last
          ? [Plot.text([last], { x: 'x', y: 'y', text: () => piece, dx: -6, dy: -10, fill: COLOURS[n]! })]
          : [];
        return [
          Plot.line(points, { x: 'x', y: 'y', stroke: COLOURS[n]!, strokeDasharray: n === 0 ? '' : '5 3' }),
          Plot.dot(points, { x: 'x', y: 'y', stroke: COLOURS[n]!, fill: n === 0 ? COLOURS[n]! : '#fff', r: 3.5 }),
          ...named,
        ];
      }),
    },
  }));
  return sheet(`${knob.name}: tee (full line) and lap (broken line), engine ${figures.engine}`, panels, ACROSS);
}

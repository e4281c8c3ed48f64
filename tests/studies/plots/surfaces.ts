/** Plots of the liquid's surface alone. */
import * as Plot from '@observablehq/plot';
import {
  chordFace,
  columnsOf,
  DENSITY,
  dropFace,
  grooveArea,
  grooveFace,
  meniscusFace,
  sagFormula,
  sagging,
  TENSION,
} from '../../reference/cases/surfaces.ts';
import { capillaryLength, convexityOf, meniscusDistance, segmentHeight } from '../../reference/formulas/surface.ts';
import { COLOURS, dots, line, type Panel, sheet, steps, words } from './sheet.ts';

function chords(): Panel {
  const width = 12 / Math.SQRT2;
  const { middle } = columnsOf(width);
  const marks = [0.5, 1, 2, 3].flatMap((c, k) => [
    line(steps(-width / 2, width / 2, 120).map((x) => ({ x, y: segmentHeight(width, c, x) }))),
    dots(
      Array.from(chordFace(width, c).height_mm, (h, i) => ({ x: middle(i) - width / 2, y: h })),
      COLOURS[k]!,
    ),
  ]);
  return {
    title: 'Weightless face on a chord: circular segments',
    options: { marks, x: { label: 'across, mm' }, y: { label: 'mm' } },
  };
}

function grooves(): Panel {
  const leg = 6;
  const chord = leg * Math.SQRT2;
  const { middle } = columnsOf(chord);
  const marks = [20, 70, 90, 110].flatMap((angle, k) => {
    const c = convexityOf(chord, ((angle - 45) * Math.PI) / 180);
    const rise = (x: number): number => Math.sign(c) * segmentHeight(chord, Math.abs(c), x);
    return [
      line(steps(-chord / 2, chord / 2, 120).map((x) => ({ x, y: chord / 2 + rise(x) }))),
      dots(
        Array.from(grooveFace(leg, grooveArea(leg, angle)).height_mm, (h, i) => ({ x: middle(i) - chord / 2, y: h })),
        COLOURS[k]!,
      ),
      words(`${angle}°`, 0, chord / 2 + rise(0) + 0.3, COLOURS[k]),
    ];
  });
  const plates = [
    { x: -6, y: 6 },
    { x: 0, y: 0 },
    { x: 6, y: 6 },
  ];
  return {
    title: 'Pool in a right-angled groove, legs 6 mm, by contact angle',
    options: {
      marks: [Plot.line(plates, { x: 'x', y: 'y', stroke: '#888', strokeWidth: 3 }), ...marks],
      x: { label: 'across, mm' },
      y: { label: 'out of the root, mm' },
    },
  };
}

function strips(): Panel {
  const marks = [3, 6, 10].flatMap((area, k) => {
    const exact = sagFormula(9, area);
    const face = sagging(9, area);
    return [
      line(steps(0, 9, 90).map((y) => ({ x: exact.height(y), y }))),
      dots(
        Array.from(face.height_mm, (h, j) => ({ x: h, y: (j + 0.5) * face.dy })),
        COLOURS[k]!,
      ),
      words(`${area} mm²`, exact.height(3.4), 3.4, COLOURS[k]),
    ];
  });
  return {
    title: 'Strip on an upright wall, pinned below and above, with its weight',
    options: {
      marks: [Plot.ruleX([0]), ...marks],
      x: { label: 'off the wall, mm', domain: [-0.2, 2.6] },
      y: { label: 'up, mm' },
    },
  };
}

function levels(): Panel {
  const l = capillaryLength(TENSION, DENSITY);
  const face = meniscusFace(3);
  const wall = steps(3, 0.02, 120).map((h) => ({ x: meniscusDistance(l, 3, h), y: h }));
  const drops = [30, 60].flatMap((angle, k) => {
    const width = 20;
    const drop = dropFace(angle, width);
    const { middle } = columnsOf(width);
    return [
      dots(
        Array.from(drop.height_mm, (h, i) => ({ x: middle(i), y: h })),
        COLOURS[k + 1]!,
      ),
      line(drop.exact.face.map(({ x, h }) => ({ x: width / 2 - x, y: h })).reverse()),
      line(drop.exact.face.map(({ x, h }) => ({ x: width / 2 + x, y: h }))),
      words(`drop at ${angle}°`, 8, drop.exact.height + 0.2, COLOURS[k + 1]),
    ];
  });
  const bath = Array.from(face.height_mm, (h, i) => ({ x: (i + 0.5) * face.du, y: h })).filter((p) => p.x < 20);
  return {
    title: `Meniscus on a wall, and drops on level ground (l = ${l.toFixed(2)} mm)`,
    options: {
      marks: [line(wall.filter((p) => p.x < 20)), dots(bath, COLOURS[0]), ...drops],
      x: { label: 'mm' },
      y: { label: 'height, mm', domain: [0, 4.4] },
    },
  };
}

export function surfaces(): string {
  return sheet('Liquid surface alone: model (dots, columns of an attempt) and closed forms (lines)', [
    chords(),
    grooves(),
    strips(),
    levels(),
  ]);
}

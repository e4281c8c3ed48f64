import { readSection } from '../../../scoring/index.ts';
import { settleInGroove } from '../cases/groove.ts';
import { grooveArea } from '../cases/surfaces.ts';
import { once, type Row, type Section } from '../run.ts';

const common = {
  source: 'circular segment over a right-angled groove (geometry)',
  unit: 'mm',
  expected: 6,
} as const;

function settled(angle: number, cell: number, slow: boolean): Row[] {
  const area = grooveArea(6, angle);
  const pool = once(() => {
    const found = settleInGroove(area, angle, 6, cell);
    if (Math.abs(found.legB_mm - found.legA_mm) > 5e-7)
      throw new Error(`lopsided: legs ${found.legA_mm} and ${found.legB_mm} mm`);
    return found;
  });
  return [
    {
      ...common,
      check: `leg of ${area.toFixed(2)} mm² at ${angle}°, ${cell} mm cells, contact line`,
      got: () => pool().legA_mm,
      tolerance: { amount: 0.1 },
      digits: 4,
      slow,
    },
    {
      ...common,
      check: `${angle}°, ${cell} mm cells, leg read from the section`,
      got: () => readSection(pool().section)!.station.legA_mm,
      tolerance: { amount: 0.1 },
      digits: 4,
      slow,
    },
  ];
}

/** The face falls so steeply that columns of this width stop short. */
function stopsShort(angle: number, cell: number): Row {
  const area = grooveArea(6, angle);
  return {
    ...common,
    check: `leg of ${area.toFixed(2)} mm² at ${angle}°, ${cell} mm cells, contact line`,
    got: () => settleInGroove(area, angle, 6, cell).legA_mm,
    tolerance: { amount: 0.1, notHeld: [0.2, 0.45] },
    slow: cell < 0.75,
  };
}

export const groove: Section = {
  name: 'groove',
  title: 'Free contact lines in a groove',
  note: "An attempt's own puddle in a right-angled groove, weightless, heat standing still: it starts narrow and its toes walk until the face stands at the advancing angle. The area is that of a 6 mm leg at that angle, so 6 mm is what must come out, from the engine's contact lines and from the toe finder of the section. At 110°, where cold plate holds, the face falls so steeply from its toe that columns of this width stop the leg up to 0.4 mm short, less on finer ones.",
  rows: [0.75, 0.5].flatMap((cell) => [
    ...[50, 60, 70, 90].flatMap((angle) => settled(angle, cell, cell < 0.75 || angle < 90)),
    stopsShort(110, cell),
  ]),
};

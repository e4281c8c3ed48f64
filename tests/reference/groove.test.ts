import { describe, expect, it } from 'vitest';
import { readSection } from '../../scoring/measures/section/station.ts';
import { settleInGroove } from './cases/groove.ts';
import { grooveArea } from './cases/surfaces.ts';
import { openReport } from './report.ts';

const report = openReport('groove', 'Free contact lines in a groove');
report.note(
  "An attempt's own puddle in a right-angled groove, weightless, heat standing still: it starts narrow and its toes walk until the face stands at the advancing angle. The area is that of a 6 mm leg at that angle, so 6 mm is what must come out, from the engine's contact lines and from the toe finder of the section. At 110°, where cold plate holds, the face falls so steeply from its toe that columns of this width stop the leg up to 0.4 mm short, less on finer ones.",
);

describe.each([0.75, 0.5])('cells of %d mm', (cell) => {
  it.each([50, 60, 70, 90])('advancing angle %d°', (angle) => {
    const area = grooveArea(6, angle);
    const pool = settleInGroove(area, angle, 6, cell);
    expect(pool.legB_mm).toBeCloseTo(pool.legA_mm, 6);
    const common = { source: 'circular segment over a right-angled groove (geometry)', unit: 'mm', digits: 4 } as const;
    report.check({
      ...common,
      check: `leg of ${area.toFixed(2)} mm² at ${angle}°, ${cell} mm cells, contact line`,
      expected: 6,
      got: pool.legA_mm,
      tolerance: { amount: 0.1 },
    });
    report.check({
      ...common,
      check: `${angle}°, ${cell} mm cells, leg read from the section`,
      expected: 6,
      got: readSection(pool.section)!.station.legA_mm,
      tolerance: { amount: 0.1 },
    });
  });

  it.each([[110, 0.2, 0.45]])('advancing angle %d° stops short', (angle, least, most) => {
    const area = grooveArea(6, angle);
    report.check({
      check: `leg of ${area.toFixed(2)} mm² at ${angle}°, ${cell} mm cells, contact line`,
      source: 'circular segment over a right-angled groove (geometry)',
      unit: 'mm',
      expected: 6,
      got: settleInGroove(area, angle, 6, cell).legA_mm,
      tolerance: { amount: 0.1, notHeld: [least, most] },
    });
  });
});

report.readme();

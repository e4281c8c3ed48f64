/** Agreement of several readers against published worked examples. */
import { describe, expect, it } from 'vitest';
import { agreementOf, blankReadings, readReadings } from '../../scoring/index.ts';

/** Rows of macro, reader, value. */
const csv = (rows: (string | number)[][], head = 'macro,reader,x'): string =>
  [head, ...rows.map((r) => r.join(','))].join('\n');

describe('ICC', () => {
  it('is that of Shrout and Fleiss (Psychological Bulletin 86, 1979, table 2; data and results from memory): six targets, four judges', () => {
    const judged = [
      [9, 2, 5, 8],
      [6, 1, 3, 2],
      [8, 4, 6, 8],
      [7, 1, 2, 6],
      [10, 5, 6, 9],
      [6, 2, 4, 7],
    ];
    const table = readReadings(csv(judged.flatMap((row, i) => row.map((x, j) => [`${i + 1}`, `J${j + 1}`, x]))));
    const [found] = agreementOf(table);
    expect(found!.icc21).toBeCloseTo(0.29, 2);
    expect(found!.icc31).toBeCloseTo(0.71, 2);
    expect(found!.repeatability).toBeNull();
  });
});

describe('gauge study', () => {
  it('is that of the example in AIAG’s Measurement Systems Analysis, 4th edition (data and results from memory): ten parts, three appraisers, three trials', () => {
    const A = [
      [0.29, -0.56, 1.34, 0.47, -0.8, 0.02, 0.59, -0.31, 2.26, -1.36],
      [0.41, -0.68, 1.17, 0.5, -0.92, -0.11, 0.75, -0.2, 1.99, -1.25],
      [0.64, -0.58, 1.27, 0.64, -0.84, -0.21, 0.66, -0.17, 2.01, -1.31],
    ];
    const B = [
      [0.08, -0.47, 1.19, 0.01, -0.56, -0.2, 0.47, -0.63, 1.8, -1.68],
      [0.25, -1.22, 0.94, 1.03, -1.2, 0.22, 0.55, 0.08, 2.12, -1.62],
      [0.07, -0.68, 1.34, 0.2, -1.28, 0.06, 0.83, -0.34, 2.19, -1.5],
    ];
    const C = [
      [0.04, -1.38, 0.88, 0.14, -1.46, -0.29, 0.02, -0.46, 1.77, -1.49],
      [-0.11, -1.13, 1.09, 0.2, -1.07, -0.67, 0.01, -0.56, 1.45, -1.77],
      [-0.15, -0.96, 0.67, 0.11, -1.45, -0.49, 0.21, -0.49, 1.87, -2.16],
    ];
    const rows = Object.entries({ A, B, C }).flatMap(([reader, trials]) =>
      trials.flatMap((trial) => trial.map((x, i) => [i + 1, reader, x])),
    );
    const [found] = agreementOf(readReadings(csv(rows)));
    expect(found!.repeatability).toBeCloseTo(0.1999, 3);
    expect(found!.reproducibility).toBeCloseTo(0.2268, 3);
    expect(found!.gauge).toBeCloseTo(0.3024, 3);
    expect(found!.macros).toBeCloseTo(1.0423, 3);
    expect(found!.grr_percent).toBeCloseTo(27.86, 1);
    expect(found!.categories).toBe(4);
    expect(found!.says).toContain('28 % of all spread; such readings tell 4 kinds');
  });

  it('with readers who agree to the last digit has no gauge spread, and one with macros all alike has nothing else', () => {
    const same = agreementOf(
      readReadings(
        csv([
          [1, 'a', 2],
          [1, 'b', 2],
          [2, 'a', 3],
          [2, 'b', 3],
        ]),
      ),
    );
    expect(same[0]).toMatchObject({ gauge: 0, grr_percent: 0, categories: null, icc21: 1, icc31: 1 });
    const alike = agreementOf(
      readReadings(
        csv([
          [1, 'a', 2],
          [1, 'b', 3],
          [2, 'a', 3],
          [2, 'b', 2],
        ]),
      ),
    );
    expect(alike[0]).toMatchObject({ grr_percent: 100, categories: 0 });
    expect(alike[0]!.says).toContain('drown');
    const nothing = agreementOf(
      readReadings(
        csv([
          [1, 'a', 2],
          [1, 'b', 2],
          [2, 'a', 2],
          [2, 'b', 2],
        ]),
      ),
    );
    expect(nothing[0]).toMatchObject({ grr_percent: null, icc21: null });
  });
});

describe('a table of readings', () => {
  it('takes a column that counts or dates readings for no measure', () => {
    const rows = ['1', '2'].flatMap((macro) =>
      ['a', 'b'].flatMap((reader) => [1, 2].map((trial) => `${macro},${reader},${trial},14 March,${macro}.${trial}`)),
    );
    const table = readReadings(['macro,reader,Trial,Date,leg', ...rows].join('\n'));
    expect(table.measures.map((m) => m.name)).toEqual(['leg']);
    expect(table.trials).toBe(2);
  });

  it.each([
    ['macro,reader\n1,a', /line 1: found macro, reader, allowed: a column for something measured/],
    ['x,y\n1,2', /line 1: found x, y, allowed: a heading with the columns macro and reader/],
    ['macro,reader,x\n1,a,two\n', /line 2, x: found "two", allowed: a number/],
    ['macro,reader,x\n1,a,1\n1,b,1\n2,a,1', /2, b: found 0 readings, allowed: every macro read once by everybody/],
    ['macro,reader,x\n1,a,1\n2,a,1', /reader: found 1 different/],
    ['macro,reader,x\n1,,1', /line 2, reader: found nothing/],
    ['macro,reader,x\n1,a,\n1,b,1\n2,a,1\n2,b,1', /gaps in every column/],
  ])('%j is refused by name', (text, why) => {
    expect(() => readReadings(text)).toThrow(why);
  });

  it('understands decimal commas where columns are parted by semicolons, and leaves out what somebody left out', () => {
    const table = readReadings('Macro;Reader;convexity;throat\n1;WH;1,2;4\n1;IC;1,3;\n2;WH;0,8;4\n2;IC;−0,9;4');
    expect(table).toMatchObject({ macros: ['1', '2'], readers: ['WH', 'IC'], trials: 1 });
    expect(table.measures).toEqual([
      {
        name: 'convexity',
        values: [
          [[1.2], [1.3]],
          [[0.8], [-0.9]],
        ],
      },
    ]);
  });

  it('is handed out blank', () => {
    const blank = blankReadings(12, ['IC', 'WH'], ['convexity']);
    expect(blank.trim().split(/\r?\n/)).toHaveLength(25);
    expect(blank).toMatch(/^\ufeff?macro,reader,convexity\r?\n1,IC,\r?\n/);
  });
});

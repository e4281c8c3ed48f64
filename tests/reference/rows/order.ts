import { coolingWall, hotSpot, movingSpot, orderOf } from '../cases/smooth.ts';
import { once, type Row, type Section } from '../run.ts';

const FIELDS = [
  ['hot spot in an insulated cube', hotSpot, 2, 'Carslaw & Jaeger ch. X, images (memory)'],
  [
    'sine of heat between two held faces, through b',
    (h: number): number => coolingWall(h, 'b'),
    2,
    'Carslaw & Jaeger ch. III (memory)',
  ],
  [
    'sine of heat between two held faces, along y',
    (h: number): number => coolingWall(h, 'y'),
    2,
    'Carslaw & Jaeger ch. III (memory)',
  ],
  ['Gaussian moving over an insulated block', movingSpot, 3, 'Eagar & Tsai 1983 with images'],
] as const;

export const order: Section = {
  name: 'order',
  title: 'Order of convergence',
  note: 'Logarithm of the error at one cell size over the error at a half or a third of it, against closed forms of smooth fields, over the logarithm of the ratio of cells; the time step falls with the cell squared. At least 1.8 is asked for; second order is 2.',
  rows: FIELDS.flatMap(([name, errorAt, ratio, source]): Row[] => {
    const coarse = once(() => errorAt(0.75));
    return [
      {
        check: `${name}: error at 0.75 mm`,
        source,
        unit: '%',
        expected: 0,
        got: () => 100 * coarse(),
        tolerance: 'shown beside',
        digits: 2,
        slow: errorAt === movingSpot,
      },
      {
        check: `${name}: order from 0.75 to ${0.75 / ratio} mm`,
        source,
        unit: '',
        expected: 2,
        got: () => orderOf(coarse(), errorAt(0.75 / ratio), ratio),
        tolerance: { band: [1.8, 3] },
        digits: 3,
        slow: errorAt === movingSpot,
      },
    ];
  }),
};

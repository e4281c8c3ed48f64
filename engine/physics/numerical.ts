import { type Parameter, parameter } from './parameter.ts';

/**
 * Numbers the scheme needs and steel does not know. Within its range none moves a settled reading by more than half of that reading's
 * plus-minus: `tests/slow/numerical.test.ts` welds at both ends of every range. Whatever moves more is a free parameter and stands in
 * `PARAMETERS`.
 */
export const NUMERICAL = {
  surfaceSteepest: parameter(
    3,
    'rise over run',
    [2.5, 4],
    'a height field cannot overhang: the liquid falls no more steeply than tan 71 degrees at its contact line',
    'toes on cold plate',
  ),
  solidSteepest: parameter(
    2,
    'rise over run',
    [1.5, 3],
    'slope of the frozen metal a contact line is taken to stand on, at most',
    'toes on a frozen bead',
  ),
  toeSpeed: parameter(
    50,
    'mm/s',
    [25, 100],
    'a contact line crosses a column in no less than a settling; hands cross a weave at 10 to 40 mm/s',
    'how soon a toe fills',
  ),
  leastPull: parameter(0.02, 'mm', [0.01, 0.04], 'thinner liquid pulls no contact line along', 'edges of films'),
  liquidOn: parameter(0.6, 'liquid fraction', [0.55, 0.7], 'a column turns liquid above this', 'edge of the puddle'),
  liquidOff: parameter(
    0.4,
    'liquid fraction',
    [0.3, 0.45],
    'and solid below this: no chatter between',
    'edge of the puddle',
  ),
  topShare: parameter(
    0.6,
    'of a cell',
    [0.5, 0.75],
    'the top metal whose liquid fraction is looked at',
    'edge of the puddle',
  ),
  filmShare: parameter(
    0.04,
    'of a cell',
    [0.02, 0.08],
    'a thinner film over solid is still gathering metal',
    'fresh toes',
  ),
  filmLife: parameter(0.06, 's', [0.04, 0.1], 'and has this long for it before it freezes', 'fresh toes'),
  wetShare: parameter(
    0.03,
    'of the deposit',
    [0.01, 0.06],
    'less liquid than this under the wire, and its metal forms a lump on the plate',
    'the first half second after a strike',
  ),
  leastChannel: parameter(
    0.1,
    'mm',
    [0.05, 0.2],
    'a fresh film is fed through a channel at least this deep',
    'fresh toes',
  ),
  surfaceSweeps: parameter(
    8,
    'sweeps',
    [8, 16],
    'of the surface a settling; each begins where the last ended',
    'the face',
  ),
  flowSweeps: parameter(
    16,
    'sweeps',
    [16, 32],
    'of the flow a settling; each begins where the last ended',
    'where heat is carried',
  ),
  recentReach: parameter(4.5, 'mm', [4.5, 7], 'newly molten columns are looked for this far from the arc', 'nothing'),
  footprintReach: parameter(3.2, 'radii', [3, 3.6], 'columns beyond carry e^-5 of the arc at most', 'nothing'),
} satisfies Record<string, Parameter>;

/** Names of the numerical constants. */
export type NumericalName = keyof typeof NUMERICAL;

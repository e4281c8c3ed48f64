import type { Row } from './rows.ts';

const PRACTICE = 'common practice, no source';
const SAMPLE = '± 0.01 s: sampled each 1/100 s';

/** `motion`. */
export const motionRows: readonly Row[] = [
  {
    fields: ['arcOnFrontShare', 'lead_mm', 'crossings'],
    name: 'arc on the front of the puddle',
    definition:
      'At each crossing of the root: arc foot less upper edge of the liquid under it (0 on the edge, negative behind), and the share of crossings within the band the exercise gives. A straight run is read every half second.',
    unit: 'mm',
    source: PRACTICE,
    plusMinus: { said: '± 0.4: half a cell at the edge of the liquid' },
    picture: 'crossing.svg',
  },
  {
    fields: ['reachA_mm', 'reachB_mm', 'toes'],
    name: 'reach',
    definition: 'Median aim at the toe, across the view from the root.',
    unit: 'mm',
    source: PRACTICE,
    plusMinus: { said: '± 0.2: a tenth of the swing counts as at the toe' },
    picture: 'beat.svg',
  },
  {
    fields: ['pauseA_s', 'pauseB_s'],
    name: 'pause at the toe',
    definition:
      'Time within a tenth of the swing of the turning point, less what crossing on without a stop would take; a sharp turn reads 0.',
    unit: 's',
    source: PRACTICE,
    plusMinus: { said: '± 0.03 on made-up weaves of known pause' },
    picture: 'beat.svg',
  },
  {
    fields: ['toeFilledShareA', 'toeFilledShareB'],
    name: 'toe filled when left',
    definition:
      'Share of pauses at whose end the puddle had wetted 1.9 mm beyond the wire along the plate and metal, not a film, stood 1 mm beyond it.',
    unit: 'share',
    source: `${PRACTICE}: the wire stops 1 to 1.5 mm inside the finished toe`,
    plusMinus: { said: '± 0.4 mm on the wetted edge' },
    picture: 'filled.svg',
  },
  {
    fields: ['period_s', 'periodCv', 'cycles'],
    name: 'period and its spread',
    definition:
      'Mean time from a pause to the next at the same toe; spread: standard deviation over mean. A stop in between does not count.',
    unit: 's',
    source: PRACTICE,
    plusMinus: { said: SAMPLE },
    picture: 'beat.svg',
  },
  {
    fields: ['beatShare'],
    name: 'spectral concentration',
    definition: "Share of the sideways movement's energy within 15 % of the weave's own frequency.",
    unit: 'share',
    source: 'student study with few subjects; 15 % is the project\u2019s own',
    plusMinus: { said: '± 0.05: one bin either side of the band' },
    picture: 'spectrum.svg',
  },
  {
    fields: ['width_mm'],
    name: 'width of the weave',
    definition: 'Reach to the right plus reach to the left.',
    unit: 'mm',
    source: PRACTICE,
    plusMinus: { said: '± 0.4: two reaches' },
    picture: 'beat.svg',
  },
  {
    fields: ['stepUp_mm', 'stepUpCv'],
    name: 'step up',
    definition: 'Height gained from a pause to the next at the same toe, and its spread.',
    unit: 'mm',
    source: PRACTICE,
    plusMinus: { said: '± 0.1: travel within a sample of the turning point, tremor on top' },
    picture: 'step-up.svg',
  },
  {
    fields: ['travel_mmps', 'travelDrift_mmps'],
    name: 'travel and its drift',
    definition:
      'Slope of the aim\u2019s height over arc time; stops, crater fill and a restart until it is past its stop are taken out. Drift: top third less bottom third.',
    unit: 'mm/s',
    source: 'EN 1011-1 (from memory): length over arc time',
    plusMinus: { said: '± 0.02 over 20 s of weave' },
    picture: 'travel.svg',
  },
  {
    fields: ['tipToWork_mm', 'tipToWorkDrift_mm'],
    name: 'tip-to-work and its drift',
    definition:
      'Contact tip to the work along the wire, mean while the arc burned; drift as for travel. Null where the device does not measure it.',
    unit: 'mm',
    source: 'trade term',
    plusMinus: { said: '± 0.1, the mean of what the device gave' },
    picture: 'tip-and-angles.svg',
  },
  {
    fields: ['workAngle_deg'],
    name: 'work angle',
    definition:
      'Of the wire from the back plate\u2019s (right plate\u2019s) face, seen along the joint. Null where the device does not measure it.',
    unit: '°',
    source: 'AWS A3.0 (from memory); counted from the back plate',
    plusMinus: { said: '± 0.1, the mean of what the device gave' },
    picture: 'tip-and-angles.svg',
  },
  {
    fields: ['travelAngle_deg', 'travelAngleDrift_deg'],
    name: 'travel angle and its drift',
    definition:
      'Of the wire from the square to the joint, seen from the side; push positive. Null where the device does not measure it.',
    unit: '°',
    source: 'AWS A3.0 (from memory)',
    plusMinus: { said: '± 0.1, the mean of what the device gave' },
    picture: 'tip-and-angles.svg',
  },
  {
    fields: ['start'],
    name: 'shelf',
    definition:
      'Width of the puddle (both wetted edges, the farthest so far) over the settled bead\u2019s: when the hand left the strike for good (by 1 mm), and when and how far up it came to nine tenths.',
    unit: 'share',
    source: PRACTICE,
    plusMinus: { said: '± 0.06: wetted edges ± 0.4 mm each' },
    picture: 'shelf.svg',
  },
  {
    fields: ['stops'],
    name: 'stop, crater fill, restart',
    definition:
      'A run\u2019s arc out for a quarter of a second or more. One or two arcs of at most 1.2 s within 6 mm and 6 s are crater fill. A run after it is a restart: strike over the stop, how near it came back within 6 s, arc time there; 3 mm over is above the crater, within 1 mm is back in it.',
    unit: 'mm',
    source: PRACTICE,
    plusMinus: { said: '± 0.5 mm, arc foot; ± 0.01 s' },
    picture: 'stops.svg',
  },
  {
    fields: ['taps'],
    name: 'taps',
    definition: 'Short arcs that are neither a run nor crater fill, a third re-strike at a crater among them.',
    unit: 'count',
    source: PRACTICE,
    plusMinus: { said: 'exact' },
    picture: 'stops.svg',
  },
];

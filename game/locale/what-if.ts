import { type Change, type Knob, wordsIn } from '../../scoring/index.ts';
import { twoDecimals, whole } from './numbers.ts';

const { changeSaid } = wordsIn('en');

type Kind = 'tee' | 'lap' | 'corner';

/** Words of trying one change on one's own attempt. */
export const whatIfWords = {
  label: 'What if',
  none: 'nothing changed',
  yours: (change: Change, kind: Kind) => `yours, but ${changeSaid(change, kind)}`,
  say: changeSaid,
  /** Of a cut that is there before the whole piece has been welded. */
  stretch: 'welded so from 13 mm below the cut on, the rest as it was; the whole piece follows',
  less: 'A step back',
  more: 'A step further',
  knobs: {
    travel_mmps: 'climb',
    volts_V: 'volts',
    feed_mpmin: 'wire',
    width_mm: 'width',
    pauseA_s: 'pause at A',
    pauseB_s: 'pause at B',
    lead_mm: 'reach at the root',
    centre_mm: 'place of the weave',
    tipToWork_mm: 'tip-to-work',
    workAngle_deg: 'work angle',
    travelAngle_deg: 'travel angle',
    cyclesPerSecond: 'beat',
  } satisfies Record<Knob, string>,
  cannot: ({ what }: Change) =>
    `That cannot be tried on this attempt: found a change of ${whatIfWords.knobs[what]} that leaves what hand or machine can do, allowed is a smaller one.`,
  besideIs: 'The one beside it',
  changed: 'changed',
  other: 'the other',
  reading: (x: number, unit: string) => (unit === 'in' ? x.toFixed(3) : unit === 'mm' ? twoDecimals(x) : whole(x)),
  note: 'Your own hand, welded again by the model with this one thing changed; your next go will differ in more than that.',
};

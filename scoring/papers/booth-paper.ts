import { wireState } from '../../engine/index.ts';
import type { Exercise } from '../schema/exercise.ts';
import { said } from '../words/names.ts';
import { CAUTIONS } from '../words/statements.ts';
import { boothSettings, WIRE_S } from './exercise-paper.ts';

/** A card that hangs in the booth: what the exercise asks of any machine, and what each machine's knobs have to stand at for it. */
export interface BoothPaper {
  title: string;
  asks: [string, string][];
  /** How feed is measured, in steps. */
  steps: string[];
  /** Wire run out in six seconds, cm, and the feed it is, m/min. The one asked for, where one is, is marked. */
  ladder: { cm: string; feed: string; asked: boolean }[];
  /** Heading of the table of machines, which is filled in by hand. */
  machines: string[];
  rows: number;
  foot: string;
  cautions: string;
  block: [string, string][];
}

/** Steps of the ladder, m/min, and how many stand to either side of the feed asked for. */
const STEP = 0.2;
const SIDE = 5;
/** Feed the ladder is laid round where the machine is set by ear, m/min. */
const BY_EAR = 5;
const MACHINES = 13;

/** The booth card of an exercise. */
export function boothPaper(exercise: Exercise): BoothPaper {
  const { process, settings, free, demonstration } = exercise;
  const byEar = settings === 'own process';
  const given = byEar ? null : process.feed_mpmin;
  const amps = wireState(process, demonstration.tipToWork_mm).current_A;
  return {
    title: `At the booth: ${exercise.title}`,
    asks: boothSettings(exercise),
    steps: [
      'Hold the gun away from everybody and from the work, so that no arc strikes. Cut the wire flush at the tip.',
      `Run wire out for ${WIRE_S} seconds by a watch, cut it off, measure it. Centimetres divided by ten are metres a minute.`,
      'Turn the knob and measure again until it stands where the card asks; write down where the knob stands.',
      'Set the volts with the arc burning on scrap and read them at the machine; a long lead takes some of them.',
    ],
    ladder: ladder(given, free?.feed_mpmin ?? null),
    machines: [
      'machine, number',
      'wire knob',
      `${WIRE_S} s of wire, cm`,
      '÷ 10 = m/min',
      'volts knob',
      'volts, arc on',
      'date, initials',
    ],
    rows: MACHINES,
    foot: byEar
      ? 'Feed and volts are set by ear; measured afterwards, they say what the ear has found.'
      : `About ${said(amps, 0)} A at ${said(demonstration.tipToWork_mm, 0)} mm tip-to-work, as this model reckons it: a check, not a setting.`,
    cautions: CAUTIONS.join(' '),
    block: [
      ['Exercise', exercise.name],
      ['Booth', ''],
      ['Wire, make and batch', ''],
      ['Gas, flow', ''],
    ],
  };
}

/** Round the feed asked for, or round the middle of short-circuiting where none is; within a range that is left free both ends are marked. */
function ladder(given: number | null, free: { from: number; to: number } | null): BoothPaper['ladder'] {
  const middle = given ?? BY_EAR;
  return Array.from({ length: 2 * SIDE + 1 }, (_, i) => middle + (i - SIDE) * STEP)
    .filter((feed) => feed > 0)
    .map((feed) => ({
      cm: said((100 * feed * WIRE_S) / 60, 0),
      feed: feed.toFixed(1),
      asked:
        given !== null &&
        (free === null ? Math.abs(feed - given) < STEP / 2 : feed >= free.from - 1e-9 && feed <= free.to + 1e-9),
    }));
}

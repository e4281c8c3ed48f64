import { wireState } from '../../engine/index.ts';
import type { Exercise } from '../schema/exercise.ts';
import { allWithInches, inInches, withInches } from '../words/inches.ts';
import type { Language } from '../words/language.ts';
import { wordsIn } from '../words/words.ts';
import { boothSettings, WIRE_S } from './exercise-paper.ts';
import { sheetWordsIn } from './words-in.ts';

/** A card that hangs in the booth: what the exercise asks of any machine, and what each machine's knobs have to stand at for it. */
export interface BoothPaper {
  language: Language;
  title: string;
  asks: [string, string][];
  /** How feed is measured, in steps. */
  steps: string[];
  /** Wire run out in six seconds, cm, and the feed it is, m/min, and in/min where wanted. The one asked for, where one is, is marked. */
  ladder: { cm: string; feed: string; inPerMin: string | null; asked: boolean }[];
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

/** The booth card of an exercise. @param inches stand beside metric values */
export function boothPaper(exercise: Exercise, language: Language = 'en', inches = false): BoothPaper {
  const w = sheetWordsIn(language);
  const { said } = w;
  const { process, settings, free, demonstration } = exercise;
  const byEar = settings === 'own process';
  const given = byEar ? null : process.feed_mpmin;
  const amps = wireState(process, demonstration.tipToWork_mm).current_A;
  const foot = byEar ? w.booth.foot.byEar : w.booth.foot.given(said(amps, 0), said(demonstration.tipToWork_mm, 0));
  return {
    language,
    title: w.booth.of(wordsIn(language).ready(exercise.title)),
    asks: inches ? allWithInches(boothSettings(exercise, w), language) : boothSettings(exercise, w),
    steps: w.booth.steps(WIRE_S),
    ladder: ladder(given, free?.feed_mpmin ?? null, said, inches ? language : null),
    machines: w.booth.machines(WIRE_S),
    rows: MACHINES,
    foot: inches ? withInches(foot, language) : foot,
    cautions: w.cautions,
    block: [
      [w.block.exercise, exercise.name],
      [w.booth.block.booth, ''],
      [w.booth.block.wire, ''],
      [w.booth.block.gas, ''],
    ],
  };
}

/** Round the feed asked for, or round the middle of short-circuiting where none is; within a range that is left free both ends are marked. */
function ladder(
  given: number | null,
  free: { from: number; to: number } | null,
  said: (x: number, decimals?: number) => string,
  inches: Language | null,
): BoothPaper['ladder'] {
  const middle = given ?? BY_EAR;
  return Array.from({ length: 2 * SIDE + 1 }, (_, i) => middle + (i - SIDE) * STEP)
    .filter((feed) => feed > 0)
    .map((feed) => ({
      cm: said((100 * feed * WIRE_S) / 60, 0),
      feed: feed.toFixed(1).replace('.', said(0.5).charAt(1)),
      inPerMin: inches === null ? null : inInches(feed, 'm/min', inches).replace(/ .*$/, ''),
      asked:
        given !== null &&
        (free === null ? Math.abs(feed - given) < STEP / 2 : feed >= free.from - 1e-9 && feed <= free.to + 1e-9),
    }));
}

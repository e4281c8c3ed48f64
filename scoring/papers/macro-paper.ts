import { filletKeySvg } from '../draw/fillet-key-svg.ts';
import type { Svg } from '../draw/svg.ts';
import { byHand } from '../macro/by-hand.ts';
import { profileOf } from '../profiles/of-exercise.ts';
import type { Exercise } from '../schema/exercise.ts';
import { inInches, withInches } from '../words/inches.ts';
import type { Language } from '../words/language.ts';
import { wordsIn } from '../words/words.ts';
import { exercisePaper } from './exercise-paper.ts';
import { sheetWordsIn } from './words-in.ts';

/** A sheet that readings of real macros are written on, ready to be set: for each cut a block, for each reader a column. */
export interface MacroPaper {
  language: Language;
  title: string;
  joint: string;
  how: string;
  key: { svg: Svg; caption: string };
  readings: { letter: string; what: string; giveOrTake: string }[];
  /** Head of the column of plus-minus by hand. */
  byHand: string;
  /** Inches stand beside millimetres. */
  inches: boolean;
  /** Heights of the cuts, mm; the sheet has a block for each. */
  cuts: string[];
  /** Columns for a pen. */
  readers: string[];
  opened: [string, string][];
  limits: string;
  cautions: string;
  block: [string, string][];
}

/** Most cuts on one sheet. */
const MOST_CUTS = 3;

/** The sheet for the macros of an exercise's coupon. @throws InputError when the profile it names is not there */
export function macroPaper(exercise: Exercise, language: Language = 'en', inches = false): MacroPaper {
  const profile = profileOf(exercise);
  const sheet = exercisePaper(exercise, profile, language, inches);
  const { joint, cuts_mm } = exercise;
  const words = sheetWordsIn(language);
  const { ready } = wordsIn(language);
  const { said, macro: w } = words;
  const [right, left] = [words.plateName(joint.kind, 'A'), words.plateName(joint.kind, 'B')];
  const give = (name: keyof typeof byHand): string =>
    `± ${said(byHand[name], 2)}${inches ? ` (${inInches(byHand[name], 'mm', language).replace(' in', '')})` : ''}`;
  const heights = cuts_mm
    .slice(0, MOST_CUTS)
    .map((y) => w.cut(said(y)))
    .map((cut) => (inches ? withInches(cut, language) : cut));
  return {
    language,
    title: w.title(sheet.title),
    joint: sheet.joint,
    how: w.how,
    inches,
    byHand: inches ? `${w.byHand} (in)` : w.byHand,
    key: { svg: filletKeySvg(joint.kind), caption: w.caption },
    readings: [
      { letter: 'a', what: w.leg(right), giveOrTake: give('leg') },
      { letter: 'b', what: w.leg(left), giveOrTake: give('leg') },
      { letter: 'c', what: w.throat, giveOrTake: give('throat') },
      { letter: 'd', what: w.convexity, giveOrTake: give('convexity') },
      { letter: 'e', what: w.root, giveOrTake: give('root fusion') },
      { letter: 'f', what: w.fused(right), giveOrTake: give('fusion') },
      { letter: 'g', what: w.fused(left), giveOrTake: give('fusion') },
      { letter: '', what: w.undercut, giveOrTake: give('undercut') },
    ],
    cuts: heights.length > 0 ? heights : [w.cut('____')],
    readers: w.readers,
    opened: [
      [w.broken, w.brokenOf],
      [w.where, ''],
    ],
    limits: w.limits(ready(profile?.title ?? exercise.profile), ready(profile?.edition ?? '')),
    cautions: sheet.cautions,
    block: [[words.block.exercise, exercise.name], ...w.block.map((what): [string, string] => [what, ''])],
  };
}

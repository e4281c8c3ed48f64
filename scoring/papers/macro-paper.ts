import { filletKeySvg } from '../draw/fillet-key-svg.ts';
import type { Svg } from '../draw/svg.ts';
import { byHand } from '../macro/by-hand.ts';
import { profileOf } from '../profiles/of-exercise.ts';
import type { Exercise } from '../schema/exercise.ts';
import { said } from '../words/names.ts';
import { exercisePaper } from './exercise-paper.ts';

/** A sheet that readings of real macros are written on, ready to be set: for each cut a block, for each reader a column. */
export interface MacroPaper {
  title: string;
  joint: string;
  how: string;
  key: { svg: Svg; caption: string };
  readings: { letter: string; what: string; giveOrTake: string }[];
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
export function macroPaper(exercise: Exercise): MacroPaper {
  const sheet = exercisePaper(exercise);
  const profile = profileOf(exercise);
  const { joint, cuts_mm } = exercise;
  const [right, left] = joint.kind === 'lap' ? ['back plate', 'edge plate'] : ['right plate', 'left plate'];
  const give = (name: keyof typeof byHand): string => `± ${said(byHand[name], 2)}`;
  const heights = cuts_mm.slice(0, MOST_CUTS).map((y) => `Cut at ${said(y)} mm`);
  return {
    title: `${exercise.title}: macros`,
    joint: sheet.joint,
    how: 'Mark the cuts before you weld. Saw square to the joint, grind, etch as a trained person has shown you, and read to a quarter of a millimetre. Each reader reads alone, without seeing the others’ column; the same number twice is no agreement.',
    key: {
      svg: filletKeySvg(joint.kind),
      caption:
        'Dashed: fusion line, where the etch changes from weld to plate. Not the edge of the heat-affected zone, which lies farther out.',
    },
    readings: [
      { letter: 'a', what: `leg, ${right}`, giveOrTake: give('leg') },
      { letter: 'b', what: `leg, ${left}`, giveOrTake: give('leg') },
      { letter: 'c', what: 'throat, root to the line from toe to toe', giveOrTake: give('throat') },
      { letter: 'd', what: 'convexity above that line', giveOrTake: give('convexity') },
      { letter: 'e', what: 'past the corner at the root; short of it: −', giveOrTake: give('root fusion') },
      { letter: 'f', what: `fused into the ${right}, deepest`, giveOrTake: give('fusion') },
      { letter: 'g', what: `fused into the ${left}, deepest`, giveOrTake: give('fusion') },
      { letter: '', what: 'undercut, the deeper', giveOrTake: give('undercut') },
    ],
    cuts: heights.length > 0 ? heights : ['Cut at ____ mm'],
    readers: ['1st reader', '2nd reader', '3rd reader', 'the model’s cut'],
    opened: [
      ['Broken open instead: tied in over', '          mm of           mm'],
      ['Where not', ''],
    ],
    limits: `Limits: ${profile?.title ?? exercise.profile}, ${profile?.edition ?? ''}; they stand on the sheet of the exercise.`,
    cautions: sheet.cautions,
    block: [
      ['Exercise', exercise.name],
      ['Coupon, number', ''],
      ['Trainee', ''],
      ['Welded on, bench', ''],
      ['Cut and etched on, by', ''],
      ['1st reader, initials', ''],
      ['2nd reader, initials', ''],
      ['3rd reader, initials', ''],
    ],
  };
}

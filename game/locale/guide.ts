import { NOT_MODELLED } from '../../scoring/index.ts';

/** A part of the page for instructors: what it says, and a list under it. */
export interface GuidePart {
  heading: string;
  text: readonly string[];
  list?: readonly string[];
}

/** The page for instructors: what the model has and has not, how to teach with it, a first week. Days and people are for you to fill in. */
export const guide: readonly GuidePart[] = [
  {
    heading: 'What the model has',
    text: [
      'Heat in both plates, a puddle held by surface tension and run down by gravity, metal laid as the wire brings it, a bead that freezes where the heat lets it. Nothing is looked up from a pattern’s name: a straight run, a weave and a scribble are welded by the same rules.',
      'So these come out by themselves: volts widen and flatten, wire heaps up, a pause fills a toe, an arc held back leaves the root cold, a warm top end goes wide, a gap eats metal.',
    ],
  },
  {
    heading: 'What it has not',
    text: [`Not modelled: ${NOT_MODELLED.join('; ')}.`],
    list: [
      'The balance of root and crown was set by common practice, not by measurements on your machine and steel. Treat its numbers as a classroom’s, and its tendencies as the lesson.',
      'It has no weight of the gun, no heat on the hands, no sound and smell through a helmet, no body position, no fit-up and no nerve. The screen teaches what to look at and when to move; the booth teaches the rest.',
      'A mouse or a finger measures neither tip-to-work nor angles: they are held, and read “not measured”.',
    ],
  },
  {
    heading: 'How to teach with it',
    text: [
      'Ten minutes at the screen, then the booth, then the saw. Not the other way round, and never the screen alone.',
    ],
    list: [
      'One change at a time, in steps a hand can feel: a tenth of a second, a millimetre, a quarter of a metre of wire.',
      'Ask before you show: let the trainee measure the cut, then compare; name the fault, then read the findings.',
      'Look at the cut before the number. The number is for one hand’s own course and never for a ranking.',
      'Too close to call means saw a real one. Say so, and do it.',
      'Praise no smooth face over an unfused root.',
      'Guides come off after three good attempts and come back after two bad ones. A test has none.',
    ],
  },
  {
    heading: 'Monday: make and prove',
    text: [],
    list: [
      'Desk, Exercise: begin from “Two-toe pause” or the tee with the inverted V, set plates, size and wire as your booths have them; leave feed and volts free within a range if the day is about hearing them.',
      'Let robot hands prove it. Do good hands pass with room, does it tell the faults you mean to teach? If not, change size or climb, and prove again.',
      'Let gap and cuts vary if neighbours sit close: everybody then has a piece of their own, by start word and plate number.',
      'Save it on the stick. Print its sheet, the macro sheet and one booth card for each machine; run out six seconds of wire at each and write it down.',
    ],
  },
  {
    heading: 'Tuesday: everybody welds',
    text: [],
    list: [
      'Open the exercise on both laptops, paste the roster, write the start word on the board. Next trainee before every change of hands.',
      'First the first lesson, six steps; then three attempts each. Whoever waits reads cuts: “Measure it yourself”.',
      'Everybody saves their attempts on the stick. File names carry day, bench, name, exercise and number.',
    ],
  },
  {
    heading: 'Wednesday: the class sheet',
    text: [],
    list: [
      'Desk, Class: choose all files on the stick. The three to see first stand on top, each with the cut to put on the table.',
      'Show one of the three to the room, names hidden: half speed, by weave cycle, front of the puddle at each crossing. Draw on it. Then two attempts side by side, in step.',
      'The common fault of the class is the morning’s lesson; weld it on purpose at the booth, and break it open.',
    ],
  },
  {
    heading: 'Thursday: the booth',
    text: [],
    list: [
      'The same exercise in steel, settings by the booth card. Mark the cuts before the arc is struck.',
      'Weld one coupon in two techniques, a half in each. Saw through both.',
    ],
  },
  {
    heading: 'Friday: coupons and paper',
    text: [],
    list: [
      'Macros: three readers, each alone, on the macro sheet. Photograph, mark, lay the model’s cut over it. Where they part, the steel is right: say what the model left out.',
      'Type the readers’ columns into a table and see how far they agree, before anybody argues about a trainee’s tenth of a millimetre.',
      'Print the class sheet with the week’s change; each trainee gets the report of their last attempt, one sheet, with the real coupon’s column filled in by hand.',
    ],
  },
  {
    heading: 'Without a terminal',
    text: ['Nothing a class needs asks for a command line. What it has, and where this page has it:'],
    list: [
      'weave: “Watch the robot hand” welds the exercise on the bench; imperfect hands and named faults weld it at Desk, Exercise, “Prove it with robot hands”.',
      'score, advise: the findings of an attempt, each with its proof, its result as JSON below them; many attempts at Desk, Class, as tables (CSV, JSON lines).',
      'section: the cut beside the joint, wherever you drag it; “Save drawing” above it. report: Print, and the browser’s own “save as PDF”.',
      'sheet: Desk, Class, with roster, start word and exercises of your own; PDF and CSV have the command line’s bytes.',
      'exercise: Desk, Exercise; sheet, macro sheet and booth card are printed or saved as PDF with the command line’s bytes.',
      'range: “Draw the map of settings”, of feed and volts. Wider sweeps, over travel or tip-to-work, take their time and are left to the command line.',
      'schema, secrets of a folder’s journal, limits on work: for programs and for folders that strangers write to, not for a class.',
      'Judging an old attempt by other limits is left to the command line (score --profile): here an attempt is judged by what it was welded for.',
    ],
  },
];

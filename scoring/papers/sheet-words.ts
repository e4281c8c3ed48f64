import type { LineMeasure, Profile, Rule } from '../schema/profile.ts';
import { leftWords } from '../words/left-free.ts';
import { measureName, plateName, said, toeName } from '../words/names.ts';
import { CAUTIONS } from '../words/statements.ts';
import { GAS, PROVENANCE } from './sentences.ts';

type Kind = 'tee' | 'lap' | 'corner' | 'plate';
type Unit = Profile['unit'];

/** Every word on the sheets of an exercise (its sheet, booth card, macro sheet), in English; the type of every other language. */
export const sheetWords = {
  said,
  toeName,
  plateName,
  left: leftWords,
  gas: GAS as Record<keyof typeof GAS, string>,
  provenance: PROVENANCE,
  cautions: CAUTIONS.join(' '),
  pattern: {
    straight: 'straight run',
    'inverted-v': 'inverted v',
    triangle: 'triangle',
    zigzag: 'zigzag',
    crescent: 'crescent',
  },
  block: { exercise: 'Exercise', weave: 'Weave', trainee: 'Trainee', date: 'Date, bench' },
  captions: {
    straight: (times: string): string => `The run as you see it, ${times} times as large; figures are mm up the joint.`,
    weave: (times: string): string =>
      `The weave as you see it, ${times} times as large; figures are mm up the joint. Dashed: the root. Dots: where you wait, larger where longer.`,
  },
  joint: {
    kind: { tee: 'Tee', lap: 'Lap', corner: 'Corner', plate: 'Plate' } satisfies Record<Kind, string>,
    plates: (mm: string): string => `${mm} mm plates`,
    platesOf: (a: string, lap: boolean, b: string): string => `plates of ${a} (${lap ? 'back' : 'right'}) and ${b} mm`,
    wide: (mm: string): string => `${mm} wide`,
    long: (mm: string): string => `${mm} long`,
    gap: (mm: string): string => `gap ${mm}`,
    warm: (celsius: string): string => `plates at ${celsius} °C`,
    tabs: 'with tabs',
    atMost: (mm: string): string => `at most ${mm}`,
    asked: { leg: 'leg', throat: 'throat' },
    up: 'Vertical-up.',
  },
  hand: {
    title: 'The hand',
    climb: { name: 'Climb', say: (mmps: string, s: string): string => `${mmps} mm/s: ${s} s for 10 mm` },
    tipToWork: 'Tip-to-work',
    workAngle: {
      name: 'Work angle',
      say: (deg: string, lap: boolean): string => `${deg}° from the ${lap ? 'back' : 'right'} plate`,
    },
    travelAngle: { name: 'Travel angle', say: (deg: string): string => `${deg}° push` },
    shelf: { name: 'Shelf', say: (s: string): string => `${s} s at the bottom before you climb` },
    metal: {
      name: 'Metal',
      say: (laid: string, holds: string, most: string | null): string =>
        `lays ${laid} mm², the joint holds ${holds}${most === null ? '' : `, ${most} at the largest leg allowed`}`,
    },
    crater: {
      name: 'Crater',
      say: (n: number): string => `${n === 1 ? 'one short re-strike' : `${n} short re-strikes`} into it as it sets`,
    },
    beat: { name: 'Beat', say: (perSecond: string): string => `${perSecond} cycles a second` },
    width: { name: 'Width', say: (mm: string): string => `${mm} mm from toe to toe` },
    reach: { name: 'Reach ahead', say: (mm: string): string => `${mm} mm at the root` },
    wait: (toe: string): string => `Wait, ${toe}`,
  },
  booth: {
    title: 'At the booth',
    of: (title: string): string => `At the booth: ${title}`,
    knobs: 'Knobs of this machine',
    wireHere: (s: number): string => `${s} s of wire, here`,
    free: (range: string): string => `, free from ${range}`,
    freeOne: (range: string): string => `, free: ${range}`,
    speed: 'Wire speed',
    measured: (s: number): string => `${s} s of wire, measured`,
    volts: { name: 'Volts at the arc', say: (volts: string, amps: string): string => `${volts} V (about ${amps} A)` },
    byEar: { name: 'Wire speed and volts', say: 'set by ear' },
    wire: 'Wire',
    gas: 'Gas',
    nozzle: 'Nozzle, tip',
    tip: {
      flush: 'tip flush',
      out: (mm: string): string => `tip ${mm} mm out`,
      in: (mm: string): string => `tip ${mm} mm inside`,
    },
    steps: (s: number): string[] => [
      'Hold the gun away from everybody and from the work, so that no arc strikes. Cut the wire flush at the tip.',
      `Run wire out for ${s} seconds by a watch, cut it off, measure it. Centimetres divided by ten are metres a minute.`,
      'Turn the knob and measure again until it stands where the card asks; write down where the knob stands.',
      'Set the volts with the arc burning on scrap and read them at the machine; a long lead takes some of them.',
    ],
    machines: (s: number): string[] => [
      'machine, number',
      'wire knob',
      `${s} s of wire, cm`,
      '÷ 10 = m/min',
      'volts knob',
      'volts, arc on',
      'date, initials',
    ],
    foot: {
      byEar: 'Feed and volts are set by ear; measured afterwards, they say what the ear has found.',
      given: (amps: string, tip: string): string =>
        `About ${amps} A at ${tip} mm tip-to-work, as this model reckons it: a check, not a setting.`,
    },
    block: { booth: 'Booth', wire: 'Wire, make and batch', gas: 'Gas, flow' },
    six: 'Six seconds of wire',
    cm: 'cm in 6 s',
  },
  look: {
    title: 'What to look for',
    edges: 'Look at the edges of the puddle, not at the arc.',
    shelf: 'Build a shelf the full width of the bead first.',
    front: 'Keep the arc on the front of the puddle; climb as it lets you.',
    cross: 'Cross the root with the arc on the front of the puddle.',
    leave: 'Leave a toe when it has filled, not when the clock says; the seconds only explain it.',
    middle: 'Cross the middle without waiting, step up at most half the puddle.',
    lap: 'The back plate wants the longer wait; only touch the edge.',
    crater: 'At the top, strike again in the crater until it is full.',
  },
  judged: {
    span: (from: string, to: string): string => `Judged from ${from} to ${to} mm`,
    noCut: 'no cut is fixed beforehand',
    cuts: (at: string[]): string => `cuts fixed at ${at.join(', ')}`,
    test: 'A test: no guides.',
    guides: (names: string[]): string => `Guides: ${names.join(', ')}.`,
    pacer: 'pacer',
    beat: 'beat',
    toeMarks: 'toe marks',
    attempts: (n: number): string => (n === 1 ? 'One attempt counts.' : `${n} attempts count.`),
    vary: 'Everybody has a piece of their own, dealt from start word and plate number.',
  },
  limits: {
    title: 'Limits',
    head: ['what', 'limit', 'rule'],
    measure: (measure: Rule['measure']): string => {
      const own: Partial<Record<Rule['measure'], string>> = {
        'leg short': 'leg short of the size asked',
        'throat short': 'throat short of the size asked',
        'throat over': 'throat over the size asked',
        'crater short': 'leg short at the crater',
      };
      return own[measure] ?? measureName(measure as LineMeasure, null, 'tee');
    },
    of: { plate: 'plate thickness', throat: 'throat', face: 'width of the face', leg: 'leg' },
    none: 'none',
    atLeast: (value: string): string => `at least ${value}`,
    atMost: (value: string): string => `at most ${value}`,
    never: (value: string): string => `, never over ${value}`,
    beyond: (value: string): string => `${value} beyond`,
    under: (value: string, upTo: string): string => `${value} under ${upTo}`,
    upTo: (value: string, upTo: string): string => `${value} up to ${upTo}`,
    by: (rows: string, of: string): string => `at most ${rows}, by ${of}`,
    short: (percent: string): string => `; over short lengths alone, ${percent} of it at most`,
    deeper: (deeper: string, length: string, per: string, unit: Unit): string =>
      `; up to ${deeper} ${unit} over ${length} in any ${per} ${unit}`,
    share: (percent: string): string => `; over ${percent} of the length at most`,
  },
  macro: {
    title: (title: string): string => `${title}: macros`,
    cut: (y: string): string => `Cut at ${y} mm`,
    how: 'Mark the cuts before you weld. Saw square to the joint, grind, etch as a trained person has shown you, and read to a quarter of a millimetre. Each reader reads alone, without seeing the others’ column; the same number twice is no agreement.',
    caption:
      'Dashed: fusion line, where the etch changes from weld to plate. Not the edge of the heat-affected zone, which lies farther out.',
    leg: (plate: string): string => `leg, ${plate}`,
    throat: 'throat, root to the line from toe to toe',
    convexity: 'convexity above that line',
    root: 'past the corner at the root; short of it: −',
    fused: (plate: string): string => `fused into the ${plate}, deepest`,
    undercut: 'undercut, the deeper',
    readers: ['1st reader', '2nd reader', '3rd reader', 'the model’s cut'],
    broken: 'Broken open instead: tied in over',
    brokenOf: '          mm of           mm',
    where: 'Where not',
    limits: (title: string, edition: string): string =>
      `Limits: ${title}, ${edition}; they stand on the sheet of the exercise.`,
    block: [
      'Coupon, number',
      'Trainee',
      'Welded on, bench',
      'Cut and etched on, by',
      '1st reader, initials',
      '2nd reader, initials',
      '3rd reader, initials',
    ],
    byHand: 'by hand, mm',
  },

  agreement: {
    title: 'How far readers of macros agree',
    of: (readers: number, macros: number, trials: number): string =>
      `${readers} readers, ${macros} macros, ${trials === 1 ? 'each read once' : `each read ${trials} times`}. Spreads are standard deviations, in the reading’s own unit.`,
    head: [
      'measured',
      'one reader again',
      'reader to reader',
      'macro to macro',
      'gauge of total spread',
      'categories',
      'ICC(2,1)',
      'ICC(3,1)',
    ],
    readers: 'Readers',
    macros: 'Macros',
    block: ['School', 'Read on', 'Led by', 'Kept until'],
  },
};
export type SheetWords = typeof sheetWords;

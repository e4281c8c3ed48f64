import type { OwnMark, OwnRow, OwnSide } from '../../scoring/index.ts';
import { en } from './en.ts';
import { oneDecimal, trimmed } from './numbers.ts';

type Kind = 'tee' | 'lap' | 'corner';

const side = (kind: Kind, name: 'A' | 'B'): string => en.findings.side(kind, name);
/** Plate and toe of a side as said on its own: "right plate", "back plate". */
const plate = (kind: Kind, name: 'A' | 'B'): string =>
  kind === 'lap' ? side(kind, name) : `${side(kind, name)} plate`;
const toe = (kind: Kind, name: 'A' | 'B'): string =>
  kind === 'lap' ? `toe on the ${side(kind, name)}` : `${side(kind, name)} toe`;
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Words of the sheets on which a cut is measured by hand: one's own, and a real coupon's. */
export const real = {
  plate,
  toe,

  steps: {
    scale: {
      name: 'Scale',
      hint: 'Two points a known length apart: on a rule beside the cut, or across a plate of known thickness.',
    },
    across: {
      name: 'Scale the other way',
      hint: 'If the saw may have run off square: mark one plate’s thickness as the scale, and the other plate’s thickness here.',
    },
    root: { name: 'Root', hint: 'Where the plates’ faces met before welding, even if an edge has melted away.' },
    plate: (kind: Kind, name: 'A' | 'B') => ({
      name: `Direction of the ${plate(kind, name)}`,
      hint: `A point on the face of the ${plate(kind, name)}, well clear of the weld.`,
    }),
    toe: (kind: Kind, name: 'A' | 'B') => ({
      name: capital(toe(kind, name)),
      hint: `Where the weld’s face meets the ${plate(kind, name)}.`,
    }),
    face: { name: 'Face', hint: 'Three to six points along the face between the toes, the highest among them.' },
    fusion: (kind: Kind, name: 'A' | 'B') => ({
      name: `Fusion line, ${plate(kind, name)}`,
      hint: `Three or more points along the fusion line in the ${plate(kind, name)}, from beside the root to near the toe.`,
    }),
    undercut: (kind: Kind, name: 'A' | 'B') => ({
      name: `Undercut, ${toe(kind, name)}`,
      hint: 'Its deepest point. Leave out what is not there.',
    }),
  },

  board: {
    label:
      'Picture to be marked. Click to set a mark, drag a mark to move it; arrow keys move the chosen mark, Delete takes it away.',
    zoom: 'Magnify',
    loupe: 'Under the glass',
    set: (count: number) => (count === 1 ? 'set' : `${count} set`),
    optional: 'if there is one',
    back: 'Take the last point back',
    next: (name: string) => `Next: ${name}`,
    still: (names: string) => `Still to mark: ${names}.`,
  },

  measure: {
    title: (y: string) => `Measure the cut at ${y} mm yourself`,
    teach: 'The etch shows two lines in each plate. Set your marks, then compare with what the bench reads.',
    waiting: 'Sawing and etching …',
    noBead: 'There is no bead at this height.',
    compare: 'Compare with the bench',
    again: 'Move the marks',
    close: 'Close',
    head: { measure: 'measure', yours: 'yours', bench: 'bench', agrees: '' },
    agrees: 'agrees',
    differs: 'differs',
    notReached: 'not reached',
    tolerance:
      'Readings by hand agree within ± 0.25 mm on legs, 0.2 on throat and convexity, 0.3 on fusion (common practice).',
    row: (kind: Kind, row: OwnRow) => (row.side === null ? row.measure : `${row.measure} ${side(kind, row.side)}`),
    root: (x: number) => (x > 0 ? `${trimmed(x, 2)} past` : `${trimmed(-x, 2)} short`),
    all: 'All of it agrees. That is how a cut is read.',
    mark: (kind: Kind, mark: OwnMark): string => {
      if (mark.mark === 'root')
        return `Root: your mark is ${oneDecimal(mark.off_mm)} off. The root is the corner the plates’ faces made before welding, not where fusion ends.`;
      const name = capital(toe(kind, mark.mark === 'toeA' ? 'A' : 'B'));
      return mark.out_mm > 0
        ? `${name}: the weld ends ${oneDecimal(Math.abs(mark.out_mm))} further in.`
        : `${name}: the weld goes on for another ${oneDecimal(Math.abs(mark.out_mm))}.`;
    },
    line: (kind: Kind, s: OwnSide): string => {
      const name = capital(plate(kind, s.side));
      const way =
        s.nearer_mm >= 0
          ? `the fusion line lies ${oneDecimal(s.nearer_mm)} nearer the weld`
          : `the fusion line lies ${oneDecimal(-s.nearer_mm)} deeper in the plate`;
      switch (s.met) {
        case 'fusion line':
          return `${name}: on the fusion line.`;
        case 'nothing marked':
          return `${name}: no point marked.`;
        case 'heat-affected zone':
          return s.there === s.points
            ? `${name}: you measured to the edge of the heat-affected zone; ${way}.`
            : `${name}: ${s.there} of ${s.points} points lie on the edge of the heat-affected zone; there ${way}.`;
        case 'neither':
          return s.there === s.points
            ? `${name}: on neither line; ${way}.`
            : `${name}: ${s.there} of ${s.points} points lie on neither line; there ${way}.`;
      }
    },
    key: { fusion: 'fusion line', zone: 'edge of the heat-affected zone' },
  },

  coupon: {
    title: 'A real coupon',
    teach:
      'A photograph of a sawn, ground and etched cut, taken square on, PNG or JPEG. It stays in this browser and is sent nowhere.',
    choose: 'Choose a picture',
    other: 'Another picture',
    marksOnly: 'Marks without their picture.',
    length: 'Length between the scale’s points',
    height: 'Height of the cut',
    profile: 'Judged by',
    asked: (size: string, kind: string) => `Asked: ${kind} ${size} mm.`,
    keep: 'Keep with this attempt',
    kept: 'Kept with the attempt.',
    alone: 'Weld or open an attempt first to keep it with one.',
    save: 'Save the marks as a file',
    close: 'Close',
    byHand: 'By hand, with the plus-minus of a reading by hand. One cut speaks for its own height only.',
    beside: (y: string) => `real coupon at ${y} mm`,
    model: 'bench',
    coupon: 'coupon',
    notMarked: 'not marked',
    toeAngle: 'toe angle',
    hollow: 'hollow',
    open: 'Open the marks',
    take: 'Take away',
    overlay: 'the model’s face laid over it',
    across: 'Length between the points the other way',
    reader: 'Read by, initials',
    broken: 'Rest broken open: tied in over',
    brokenOf: 'of',
    brokenWhere: 'not tied in at',
    offSquare: (deg: string) =>
      `By the two scales the cut is ${deg}° off square; its stretch is taken out of the readings.`,
    brokenSaid: (tied: string, of: string, where: string) =>
      `Broken open: tied in over ${tied} of ${of} mm${where === '' ? '' : `; not at ${where}`}.`,
    noPicture: 'picture not kept',
  },
};

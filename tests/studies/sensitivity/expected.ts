/**
 * What turning each knob is known to do, written down before the welds of this study were made. [GW] = trend table of a GMAW handbook (G-W,
 * GMAW-FCAW handbook 2018, p. 84); [ESAB] = MIG handbook ch. 7; [MAN] = makers' welder manuals; [J] = penetration formula of Jackson's form,
 * I to the power 4/3 (from memory); [L] = melting-rate balance, Lesnewich 1958; "practice" = common practice, no source.
 */
import type { Outcome } from './outcomes.ts';

export interface Expectation {
  knob: string;
  outcome: Outcome;
  /** From the knob's lowest setting to its highest, unless `from` and `to` name settings by their place (0 lowest). */
  from?: number;
  to?: number;
  /** The change may lie between these, in the outcome's unit; with `share`, in shares of what it was. */
  least: number;
  most: number;
  share?: true;
  says: string;
  source: string;
}

const MANY = Number.POSITIVE_INFINITY;
/** A change that only has to have this sign has to pass what the cell and rounding move by themselves. */
const CLEAR_MM = 0.05;

const more = (knob: string, outcome: Outcome, says: string, source: string, least = CLEAR_MM): Expectation => ({
  knob,
  outcome,
  least,
  most: MANY,
  says,
  source,
});
const less = (knob: string, outcome: Outcome, says: string, source: string, least = CLEAR_MM): Expectation => ({
  knob,
  outcome,
  least: -MANY,
  most: -least,
  says,
  source,
});

export const EXPECTED: readonly Expectation[] = [
  more('volts', 'face width', 'wider', '[GW] volts', 0.2),
  less('volts', 'convexity', 'flatter', '[GW] volts', 0.2),
  {
    knob: 'volts',
    outcome: 'depth',
    least: -0.2,
    most: 0.2,
    share: true,
    says: 'depth about equal: within 20 % over 4 V',
    source: '[GW] volts',
  },
  more('volts', 'toe index', 'toes nearer a groove', 'practice', 0.02),
  more('feed', 'amps', 'more amps', '[GW] feed; [L]', 15),
  more('feed', 'depth', 'deeper', '[GW] feed; [J]', 0.1),
  more('feed', 'root', 'deeper at the root', '[GW] feed'),
  more('feed', 'convexity', 'crowns more', '[GW] feed'),
  more('feed', 'leg', 'larger bead', '[GW] feed'),
  less('travel', 'leg', 'smaller bead', '[GW] travel', 0.2),
  less('travel', 'convexity', 'flatter when weaving', 'practice', 0.3),
  less('travel', 'throat', 'less throat', '[GW] travel', 0.2),
  { ...more('travel', 'root', 'slow leaves the root colder', 'practice'), from: 0, to: 1 },
  less('tip-to-work', 'amps', 'fewer amps', '[GW] stick-out; [L]', 15),
  less('tip-to-work', 'root', '8 mm cost 0.2 mm of root or more', '[GW] stick-out; size practice', 0.2),
  less('tip-to-work', 'depth', 'shallower', '[GW] stick-out', 0.1),
  { ...more('lead', 'root', '2 mm back cost 0.2 mm of root or more', 'practice', 0.2), from: 1, to: 3 },
  { ...more('lead', 'root', 'the third millimetre costs more yet', 'practice', 0), from: 0, to: 1 },
  less('lead', 'convexity', 'riding back crowns', 'practice'),
  less('push', 'depth', 'pushing is shallower than dragging', '[GW] gun angle'),
  less('push', 'convexity', 'pushing is flatter than dragging', '[GW] gun angle'),
  more('work angle', 'depth A', 'leaning towards A melts A deeper', 'geometry'),
  less('work angle', 'depth B', 'and B less', 'geometry'),
  less('pause', 'convexity', 'flatter', '[MAN] pause against convexity', 0.3),
  more('pause', 'leg', 'longer legs', '[ESAB] pauses at the walls', 0.2),
  more('pause', 'depth', 'walls melted deeper', 'practice'),
  more('width', 'leg', 'longer legs', 'practice', 0.5),
  less('width', 'convexity', 'flatter', 'practice', 0.5),
  more('width', 'face width', 'wider', 'geometry', 0.5),
  { ...less('beat', 'convexity', 'faster lowers the crown', 'practice'), from: 0, to: 1 },
  less('beat', 'leg', 'until the toes suffer', 'practice', 0),
  less('gap', 'throat', 'takes throat', 'AWS D1.1: leg grows by the gap', 0.3),
  less('gap', 'convexity', 'takes crown', 'geometry', 0.2),
  less('plate', 'root', 'thicker: colder root', 'practice; 2-D and 3-D heat flow', 0.1),
  less('plate', 'depth', 'thicker: walls melted less', 'practice; 2-D and 3-D heat flow', 0.1),
  more('start temperature', 'root', 'warmer: deeper root', 'practice'),
  more('start temperature', 'depth', 'warmer: deeper walls', 'practice', 0.1),
  less('start temperature', 'convexity', 'warmer: flatter', 'practice'),
  // Up to 1.0 mm: 1.2 mm wire at a thin wire's feed drops the metal out and leaves no bead to read, which was seen
  // when it was welded. On the lap 0.9 mm does already, and stands as not held.
  { ...more('wire', 'amps', 'more amps at the same feed', '[L]', 40), from: 0, to: 2 },
  { ...more('wire', 'leg', 'more metal at the same feed', 'mass balance', 0.5), from: 0, to: 2 },
  { ...more('wire', 'depth', 'deeper at the same feed', '[L]; [J]', 0.1), from: 0, to: 2 },
];

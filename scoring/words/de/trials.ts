import { DROPPED } from '../../schema/proved.ts';
import type { Change } from '../../schema/result.ts';
import { upper } from '../names.ts';
import type { Fault, ProofSentences } from '../trials.ts';
import { measureName, said, toeAfter } from './names.ts';
import { senseSaid } from './seen.ts';

type Kind = Parameters<typeof toeAfter>[0];

/** Every sentence about what was tried, in German. */
export const proofSentences: ProofSentences = {
  metalFirst: (p) =>
    `Eingebracht werden ${said(p.laid_mm2, 0)} mm², die Fuge fasst ${said(p.holds_mm2, 0)}: das kommt vor jeder Fertigkeit.`,

  fault: (f, kind) =>
    f.measure === DROPPED
      ? `${said(f.reading, 2)} g sind aus der Fuge getropft.`
      : `${upper(measureName(f.measure, f.side, kind))} ${number(f.reading, f)} bei ${said(f.y_mm, 0)} mm; ${senseSaid(f.sense)} ${number(f.limit, f)}, plus oder minus ${number(f.plusMinus, f)}.`,

  proved: (change, before, after, kind) =>
    `Mit derselben Hand neu geschweißt und eines geändert: ${changeSaid(change, kind)}. ${upper(
      measureName(before.measure, before.side, kind),
    )} geht von ${number(before.reading, before)} auf ${number(after.reading, after)}, und nichts anderes gerät nach außerhalb; es hält auch bei einem etwas anderen Versuch.`,

  notMended: (tried, nearest, drill, kind) =>
    `Keine einzelne Änderung behebt es: ${tried === 0 ? 'keine, die sich an dieser Hand vornehmen lässt' : `${tried} versucht`}${
      nearest === null
        ? ''
        : `, am nächsten kam: ${changeSaid(nearest.change, kind)} (${number(nearest.after.reading, nearest.after)})`
    }. Die Übung dafür: ${drill}.`,
};

/** A change as it would be said at the bench, in the infinitive. */
export function changeSaid({ what, by }: Change, kind: Kind): string {
  const size = said(Math.abs(by), 2);
  const up = by > 0;
  switch (what) {
    case 'pauseA_s':
    case 'pauseB_s':
      return `am ${toeAfter(kind, what === 'pauseA_s' ? 'A' : 'B')} ${size} s ${up ? 'länger' : 'kürzer'} warten`;
    case 'width_mm':
      return `${size} mm ${up ? 'breiter' : 'schmaler'} pendeln`;
    case 'lead_mm':
      return `beim Kreuzen der Wurzel ${size} mm ${up ? 'weiter' : 'weniger weit'} vorgreifen`;
    case 'centre_mm':
      return `das Pendeln ${size} mm nach ${up ? 'rechts' : 'links'} verschieben`;
    case 'travel_mmps':
      return `${size} mm/s ${up ? 'schneller' : 'langsamer'} steigen`;
    case 'tipToWork_mm':
      return `das Kontaktrohr ${size} mm ${up ? 'weiter weg' : 'näher'} halten`;
    case 'workAngle_deg':
      return `den Brenner ${size}° ${up ? 'weg vom' : 'zum'} ${kind === 'lap' ? 'hinteren' : 'rechten'} Blech neigen`;
    case 'travelAngle_deg':
      return `${size}° ${up ? 'mehr' : 'weniger'} stechend`;
    case 'volts_V':
      return `${size} V ${up ? 'mehr' : 'weniger'}`;
    case 'feed_mpmin':
      return `${size} m/min ${up ? 'mehr' : 'weniger'} Draht`;
    case 'cyclesPerSecond':
      return `${size} Pendelungen je Sekunde ${up ? 'schneller' : 'langsamer'}`;
  }
}

function number(x: number, f: Fault): string {
  const digits = f.unit === 'in' ? 3 : f.unit === 'mm' || f.unit === 'g' ? 2 : 0;
  return `${said(x, digits)}${f.unit === 'deg' ? '°' : ` ${f.unit}`}`;
}

import type { Gap, GapName, GapReason } from '../../schema/gap.ts';

const NAMES: Record<GapName, string> = {
  motion: 'Bewegung',
  'arc on front': 'Lichtbogen vorn auf dem Schmelzbad',
  weave: 'Vorgriff, Pausen, Takt, Breite und Schritt',
  'tip to work': 'Kontaktrohrabstand',
  'work angle': 'Arbeitswinkel',
  'travel angle': 'Neigungswinkel',
  ends: 'Ansatz, Sockel und Endkrater',
  'root fusion': 'Wurzelerfassung',
  'plate fusion': 'Einbrand in die Bleche',
  undercut: 'Einbrandkerbe',
  overlap: 'Schweißgutüberlauf',
  'melted edge': 'abgeschmolzene Kante',
  'all of it': 'Naht, Hand und Metall',
};

const DEVICES: Record<Extract<GapReason, { why: 'held by exercise' }>['device'], string> = {
  mouse: 'Maus',
  touch: 'Finger',
  pen: 'Stift',
  keyboard: 'Tastatur',
  gamepad: 'Spielsteuerung',
  robot: 'Roboterhand',
};

/** What is not measured and why, in German. */
export function gapSaid(gap: Gap): { what: string; why: string } {
  return { what: NAMES[gap.what], why: reason(gap) };
}

function reason(r: GapReason): string {
  switch (r.why) {
    case 'arc never burned':
      return 'der Lichtbogen hat auf der bewerteten Länge nie gebrannt';
    case 'no puddle crossed':
      return 'der Lichtbogen hat die Wurzel nie über einem Schmelzbad gekreuzt';
    case 'no puddle under arc':
      return 'unter dem Lichtbogen war kein Schmelzbad';
    case 'straight run':
      return 'eine Strichraupe hat keine Pendelungen';
    case 'too few cycles':
      return `weniger als ${r.least} Pendelungen auf der bewerteten Länge`;
    case 'held by exercise':
      return `mit diesem Gerät (${DEVICES[r.device]}) nicht gemessen; von der Übung gehalten`;
    case 'too little bead':
      return 'zwischen den Enden zu wenig Naht, um sie damit zu vergleichen';
    case 'root not marked':
      return 'die Schmelzlinie ist nicht an beiden Blechen bis zur Wurzel markiert; der Schnitt erhält kein Urteil';
    case 'fusion line not marked':
      return 'die Schmelzlinie ist nicht an beiden Blechen von der Wurzel bis zum Übergang markiert';
    case 'none marked':
      return 'nichts davon wurde markiert';
    case 'cold plate not seen':
      return 'ob an einem Übergang Metall auf kaltem Blech liegt, lässt sich aus Marken nicht lesen';
    case 'accounts open':
      return 'das Modell kann über Wärme oder Metall dieses Versuchs keine geschlossene Rechnung legen';
    case 'not read off marks':
      return 'aus Marken nicht gelesen';
  }
}

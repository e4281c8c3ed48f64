import { leftWords } from '../../words/de/left-free.ts';
import { german } from '../../words/de/words.ts';
import { FOOTNOTE } from '../sentences.ts';
import type { SheetWords } from '../sheet-words.ts';

const { said, toeName, plateName, measureName, cautions } = german;
/** After "im": the adjective is declined. */
const inside = (plate: string): string => plate.replace(/es Blech$/, 'en Blech');

/** Every word on the sheets of an exercise, in German. */
export const sheetWords: SheetWords = {
  said,
  toeName,
  left: leftWords,
  plateName,
  gas: {
    'M21-ArC-18': 'Argon mit 18 % Kohlendioxid (M21)',
    'M21-ArC-25': 'Argon mit 25 % Kohlendioxid (M21)',
    C1: 'Kohlendioxid (C1)',
  },
  provenance: `${FOOTNOTE} Wert aus dem Gedächtnis, nicht an der genannten Ausgabe geprüft: nachschlagen, bevor man sich darauf verlässt.`,
  cautions: cautions.join(' '),
  pattern: {
    straight: 'Strichraupe',
    'inverted-v': 'umgekehrtes V',
    triangle: 'Dreieck',
    zigzag: 'Zickzack',
    crescent: 'Halbmond',
  },
  block: { exercise: 'Übung', weave: 'Pendelform', trainee: 'Person', date: 'Datum, Platz' },
  captions: {
    straight: (times) => `Die Strichraupe von vorn, ${times}-mal so groß; Zahlen sind mm die Fuge hinauf.`,
    weave: (times) =>
      `Das Pendeln von vorn, ${times}-mal so groß; Zahlen sind mm die Fuge hinauf. Gestrichelt: die Wurzel. Punkte: wo gewartet wird, größer, wo länger.`,
  },
  joint: {
    kind: { tee: 'T-Stoß', lap: 'Überlappstoß', corner: 'Eckstoß', plate: 'Blech' },
    plates: (mm) => `Bleche ${mm} mm,`,
    platesOf: (a, lap, b) => `Bleche ${a} (${lap ? 'hinten' : 'rechts'}) und ${b} mm,`,
    wide: (mm) => `${mm} breit`,
    long: (mm) => `${mm} lang`,
    gap: (mm) => `Stegabstand ${mm}`,
    warm: (celsius) => `Bleche bei ${celsius} °C`,
    tabs: 'mit Auslaufblechen',
    atMost: (mm) => `höchstens ${mm}`,
    asked: { leg: 'Schenkel', throat: 'a-Maß' },
    up: 'Steigend (PF).',
  },
  hand: {
    title: 'Die Hand',
    climb: { name: 'Steigen', say: (mmps, s) => `${mmps} mm/s: ${s} s für 10 mm` },
    tipToWork: 'Kontaktrohrabstand',
    workAngle: { name: 'Arbeitswinkel', say: (deg, lap) => `${deg}° vom ${lap ? 'hinteren' : 'rechten'} Blech` },
    travelAngle: { name: 'Neigungswinkel', say: (deg) => `${deg}° stechend` },
    shelf: { name: 'Sockel', say: (s) => `${s} s unten, bevor gestiegen wird` },
    metal: {
      name: 'Metall',
      say: (laid, holds, most) =>
        `bringt ${laid} mm² ein, die Fuge fasst ${holds}${most === null ? '' : `, beim größten zulässigen Schenkel ${most}`}`,
    },
    crater: {
      name: 'Endkrater',
      say: (n) => `${n === 1 ? 'einmal' : `${n}-mal`} kurz hineinzünden, während er erstarrt`,
    },
    beat: { name: 'Takt', say: (perSecond) => `${perSecond} Pendelungen je Sekunde` },
    width: { name: 'Breite', say: (mm) => `${mm} mm von Übergang zu Übergang` },
    reach: { name: 'Vorgriff', say: (mm) => `${mm} mm an der Wurzel` },
    wait: (toe) => `Pause, ${toe}`,
  },
  booth: {
    title: 'In der Kabine',
    of: (title) => `In der Kabine: ${title}`,
    knobs: 'Stellung an diesem Gerät',
    wireHere: (s) => `${s} s Draht, hier`,
    free: (range) => `, frei von ${range}`,
    freeOne: (range) => `, frei: ${range}`,
    speed: 'Drahtvorschub',
    measured: (s) => `${s} s Draht, gemessen`,
    volts: { name: 'Spannung am Lichtbogen', say: (volts, amps) => `${volts} V (etwa ${amps} A)` },
    byEar: { name: 'Drahtvorschub und Spannung', say: 'nach Gehör' },
    wire: 'Draht',
    gas: 'Schutzgas',
    nozzle: 'Gasdüse, Kontaktrohr',
    tip: {
      flush: 'Kontaktrohr bündig',
      out: (mm) => `Kontaktrohr ${mm} mm vor`,
      in: (mm) => `Kontaktrohr ${mm} mm zurück`,
    },
    steps: (s) => [
      'Den Brenner von allen und vom Werkstück weghalten, damit nichts zündet. Den Draht am Kontaktrohr bündig abschneiden.',
      `Draht ${s} Sekunden nach der Uhr auslaufen lassen, abschneiden, messen. Zentimeter durch zehn sind Meter je Minute.`,
      'Am Knopf drehen und neu messen, bis es steht, wie die Karte fordert; aufschreiben, wo der Knopf steht.',
      'Die Spannung bei brennendem Lichtbogen auf Abfall einstellen und am Gerät ablesen; eine lange Leitung nimmt etwas davon.',
    ],
    machines: (s) => [
      'Gerät, Nummer',
      'Drahtknopf',
      `${s} s Draht, cm`,
      '÷ 10 = m/min',
      'Spannungsknopf',
      'Volt, Bogen an',
      'Datum, Kürzel',
    ],
    foot: {
      byEar:
        'Vorschub und Spannung werden nach Gehör gestellt; hinterher gemessen sagen sie, was das Ohr gefunden hat.',
      given: (amps, tip) =>
        `Etwa ${amps} A bei ${tip} mm Kontaktrohrabstand, wie dieses Modell rechnet: zum Prüfen, nicht zum Einstellen.`,
    },
    block: { booth: 'Kabine', wire: 'Draht, Marke und Charge', gas: 'Gas, Durchfluss' },
    six: 'Sechs Sekunden Draht',
    cm: 'cm in 6 s',
  },
  look: {
    title: 'Worauf zu sehen ist',
    edges: 'Auf die Ränder des Schmelzbads sehen, nicht in den Lichtbogen.',
    shelf: 'Zuerst einen Sockel in voller Nahtbreite aufbauen.',
    front: 'Den Lichtbogen vorn auf dem Schmelzbad halten; steigen, wie es das zulässt.',
    cross: 'Die Wurzel mit dem Lichtbogen vorn auf dem Schmelzbad kreuzen.',
    leave: 'Einen Übergang verlassen, wenn er gefüllt ist, nicht nach der Uhr; die Sekunden erklären es nur.',
    middle: 'Die Mitte ohne Warten kreuzen, höchstens ein halbes Schmelzbad hinaufgehen.',
    lap: 'Das hintere Blech will die längere Pause; die Kante nur berühren.',
    crater: 'Oben in den Endkrater nachzünden, bis er voll ist.',
  },
  judged: {
    span: (from, to) => `Bewertet von ${from} bis ${to} mm`,
    noCut: 'kein Schnitt vorher festgelegt',
    cuts: (at) => `Schnitte festgelegt bei ${at.join('; ')}`,
    test: 'Ein Test: ohne Hilfen.',
    guides: (names) => `Hilfen: ${names.join(', ')}.`,
    pacer: 'Schrittmacher',
    beat: 'Takt',
    toeMarks: 'Marken der Übergänge',
    attempts: (n) => (n === 1 ? 'Ein Versuch zählt.' : `${n} Versuche zählen.`),
    vary: 'Jeder hat ein eigenes Stück, zugeteilt nach Startwort und Blechnummer.',
  },
  limits: {
    title: 'Grenzwerte',
    head: ['was', 'Grenzwert', 'Regel'],
    measure: (measure) => {
      switch (measure) {
        case 'leg short':
          return 'Schenkel kleiner als gefordert';
        case 'throat short':
          return 'a-Maß kleiner als gefordert';
        case 'throat over':
          return 'a-Maß größer als gefordert';
        case 'crater short':
          return 'Schenkel am Endkrater zu klein';
        default:
          return measureName(measure, null, 'tee');
      }
    },
    of: { plate: 'Blechdicke', throat: 'a-Maß', face: 'Nahtbreite', leg: 'Schenkel' },
    none: 'nicht zulässig',
    atLeast: (value) => `mindestens ${value}`,
    atMost: (value) => `höchstens ${value}`,
    never: (value) => `, nie über ${value}`,
    beyond: (value) => `${value} darüber`,
    under: (value, upTo) => `${value} unter ${upTo}`,
    upTo: (value, upTo) => `${value} bis ${upTo}`,
    by: (rows, of) => `höchstens ${rows}, nach ${of}`,
    short: (percent) => `; nur auf kurzen Längen, höchstens ${percent} davon`,
    deeper: (deeper, length, per, unit) => `; bis ${deeper} ${unit} auf ${length} je ${per} ${unit}`,
    share: (percent) => `; auf höchstens ${percent} der Länge`,
  },
  macro: {
    title: (title) => `${title}: Schliffe`,
    cut: (y) => `Schnitt bei ${y} mm`,
    how: 'Die Schnitte anzeichnen, bevor geschweißt wird. Rechtwinklig zur Fuge sägen, schleifen, ätzen, wie es eine ausgebildete Person gezeigt hat, und auf einen Viertelmillimeter ablesen. Jeder liest für sich, ohne die Spalte der anderen zu sehen; zweimal dieselbe Zahl ist noch keine Übereinstimmung.',
    caption:
      'Gestrichelt: Schmelzlinie, wo die Ätzung von der Naht zum Blech wechselt. Nicht der Rand der Wärmeeinflusszone, der weiter außen liegt.',
    leg: (plate) => `Schenkel, ${plate}`,
    throat: 'a-Maß, Wurzel bis zur Linie von Übergang zu Übergang',
    convexity: 'Überhöhung über dieser Linie',
    root: 'an der Wurzel über die Ecke hinaus; davor: −',
    fused: (plate) => `Einbrand im ${inside(plate)}, am tiefsten`,
    undercut: 'Einbrandkerbe, die tiefere',
    readers: ['1. Lesung', '2. Lesung', '3. Lesung', 'Schnitt des Modells'],
    broken: 'Stattdessen aufgebrochen: erfasst auf',
    brokenOf: '          mm von           mm',
    where: 'Wo nicht',
    limits: (title, edition) => `Grenzwerte: ${title}, ${edition}; sie stehen auf dem Übungsblatt.`,
    block: [
      'Prüfstück, Nummer',
      'Person',
      'Geschweißt am, Platz',
      'Gesägt und geätzt am, von',
      '1. Lesung, Kürzel',
      '2. Lesung, Kürzel',
      '3. Lesung, Kürzel',
    ],
    byHand: 'von Hand, mm',
  },

  agreement: {
    title: 'Wie weit Lesende von Schliffen übereinstimmen',
    of: (readers, macros, trials) =>
      `${readers} Lesende, ${macros} Schliffe, ${trials === 1 ? 'jeder einmal gelesen' : `jeder ${trials}-mal gelesen`}. Streuungen sind Standardabweichungen, in der Einheit der Ablesung.`,
    head: [
      'gemessen',
      'dieselbe Person',
      'zwischen Personen',
      'zwischen Schliffen',
      'Messmittel an der Gesamtstreuung',
      'Klassen',
      'ICC(2,1)',
      'ICC(3,1)',
    ],
    readers: 'Lesende',
    macros: 'Schliffe',
    block: ['Schule', 'Gelesen am', 'Geleitet von', 'Aufbewahrt bis'],
  },
};

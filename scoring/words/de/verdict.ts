import type { JointOptions, ProcessOptions } from '../../../engine/index.ts';
import type { AidName, Difference } from '../../verdict/found.ts';
import type { OutsideTransfer } from '../../verdict/transfer.ts';
import type { NoteSentences, ReasonSentences } from '../verdict.ts';
import { said } from './names.ts';

function transferSaid(p: OutsideTransfer): string {
  const how =
    p.regime === 'stubbing'
      ? 'zu wenig für diesen Draht: er stößt auf, stottert und liegt kalt auf dem Blech'
      : 'zu viel für diesen Draht und dieses Gas: er tropft grob ab und schließt nicht mehr kurz';
  return `Kein Kurzlichtbogen: ${said(p.volts_V)} V sind ${how}. Bei diesem Strom schließt er etwa zwischen ${said(p.low_V)} und ${said(p.high_V)} V kurz.`;
}

/** Every sentence on why an attempt gets no verdict, in German. */
export const reasonSentences: ReasonSentences = {
  'no-exercise': () =>
    'Die Datei nennt keine Übung; Größe, bewertete Länge und Grenzwerte sind also nicht bekannt. Für eine Bewertung eine Übung angeben.',
  'no-arc': () => 'In diesem Versuch hat kein Lichtbogen gebrannt.',
  'judged-length-not-covered': (p) =>
    `Die bewertete Länge geht von ${said(p.from_mm)} bis ${said(p.to_mm)} mm; ${p.bare_mm} mm davon sind ohne Naht.`,
  'vertical-down': () =>
    'Fallend geschweißt. Fallnähte (PG) sind eine andere Übung und ein anderes Verfahren: gezeigt, nicht bewertet.',
  'no-climb': () => 'Der Lichtbogen bewegte sich in der Fuge, ohne zu steigen: kein Pendeln, das zu bewerten wäre.',
  'dropped-out': (p) => `${said(p.dripped_g, 2)} g von ${said(p.fed_g, 2)} g sind aus der Fuge getropft.`,
  'second-pass': (p) =>
    `Der Lichtbogen ging noch einmal über ${p.twice_mm} mm fertige Naht; diese Übung hat eine einzige Lage.`,
  'machine-too-slow': () =>
    'Der Rechner kam nicht in Echtzeit mit, und der Versuch wurde dort beendet; ein verlangsamter Lichtbogen wird nicht bewertet.',
  'settings-edited': (p) =>
    p.what === 'joint'
      ? `Die Fuge ist nicht die der Übung: ${differenceSaid(p.differs)}.`
      : `Die Einstellungen sind nicht die der Übung: ${differenceSaid(p.differs)}.`,
  'recording-edited': (p) =>
    p.second === null
      ? 'Das Ende des Versuchs oder seine Prüfzahl wurde nach dem Schweißen in der Datei geändert.'
      : `Die Handbewegung wurde nach dem Schweißen in der Datei geändert, ab Sekunde ${p.second}.`,
  'header-edited': () =>
    'Einstellungen, Übung oder etwas anderes im Kopf der Datei wurde nach dem Schweißen geändert; was davon, lässt sich nicht sagen.',
  'state-differs': (p) =>
    'second' in p
      ? `Bewegung und Einstellungen sind wie gespeichert, doch neu geschweißt weicht der Versuch in Sekunde ${p.second} vom gespeicherten ab. Mit derselben Rechenversion darf das nicht vorkommen: bitte die Datei melden.`
      : `Neu geschweißt endet diese Aufzeichnung in einem anderen Zustand (Prüfzahl ${p.is}) als gespeichert (${p.saved}); ohne Kette von Prüfzahlen lässt sich nicht sagen, warum.`,
  'exercise-edited': (p) =>
    `Die Datei trägt eine Übung namens ${p.name}, die nicht die mitgelieferte dieses Namens ist.`,
  'piece-edited': (p) =>
    `Stegabstand, Anfangstemperatur oder Schnitte sind nicht die, die Blech ${p.number} zugeteilt sind: sie wurden geändert.`,
  'aids-in-test': (p) => `Ein Test wird ohne Hilfen geschweißt; hier waren an: ${aidsSaid(p.aids)}.`,
  'books-open': () =>
    'Das Modell kann über Wärme oder Metall dieses Versuchs keine geschlossene Rechnung legen; was es zeigt, wird nicht bewertet. Bitte die Datei melden.',
  'outside-transfer': (p) =>
    `${transferSaid(p)} Was das Modell dort zeigt, wird nicht an Grenzwerten gemessen, selbst wenn es sie einhält.`,
  'exercise-too-little': (p) =>
    p.what === 'cuts'
      ? 'Die Übung legt in ihrer bewerteten Länge keinen Schnitt fest; nichts wird also dort angesehen, wo es vorher gesagt war.'
      : `${p.what === 'size' ? 'Die Nahtgröße' : 'Die bewertete Länge'} der Übung ist ${said(p.is)} mm; unter ${said(p.least)} mm zeigt sie nichts.`,
};

/** Every sentence on what is of note, in German. */
export const noteSentences: NoteSentences = {
  robot: () => 'Von der Roboterhand geschweißt, nicht von einem Menschen.',
  piece: (p) =>
    `Blech ${p.number}, Zuteilung ${p.seed}: Stegabstand ${said(p.gap_mm)} mm, Bleche bei ${said(p.startTemp_C, 0)} °C, Schnitte bei ${p.cuts_mm.map((y) => said(y)).join('; ')} mm.`,
  aids: (p) => `Hilfen an, die diese Übung nicht zulässt: ${aidsSaid(p.aids)}.`,
  'hand-rig': (p) => `Handgeschirr an: Brenner ${said(p.gun_g)} g, Schlauch ${said(p.hose, 2)}.`,
  'engine-differs': (p) =>
    `Mit Rechenversion ${p.welded} geschweißt und hier mit ${p.here} neu geschweißt: die Naht kann von der damals gesehenen abweichen.`,
  'no-chain': () =>
    'Eine ältere Datei ohne Kette von Prüfzahlen: ob sie nach dem Schweißen geändert wurde, lässt sich nicht sagen.',
  'origin-device-mismatch': (p) =>
    `Als Herkunft steht „${p.origin}“, als Gerät „${p.device}“: aufbewahrt, nicht gezählt.`,
  'robot-left-in-origin': (p) =>
    `Gibt sich als Werk einer Hand aus und trägt ${p.fields.join(' und ')} des Roboters: aufbewahrt, nicht gezählt.`,
  'unmeasured-varies': (p) =>
    `Ein Gerät „${p.device}“ misst ${COLUMNS[p.column].name} nicht, doch in der Datei schwankt er um ${said(p.spread)}${COLUMNS[p.column].unit}: aufbewahrt, nicht gezählt.`,
  'no-check-number': () =>
    'Die Datei trägt keine Prüfzahl: ob sie ist, was geschweißt wurde, lässt sich nicht sagen; Übung, bis sie neu geschweißt ist.',
  'study-cell': (p) =>
    `In Zellen von ${said(p.cell_mm, 2)} mm geschweißt, wo die Werkbank ${said(p.bench_mm, 2)} hat: eine Untersuchung, kein Versuch an der Werkbank.`,
  'follows-demonstration': (p) =>
    `Die Führung hält sich ${said(p.together_s, 0)} s lang auf ${said(p.apart_mm, 2)} mm an die Vorführung der Übung${p.mirrored ? ', gespiegelt' : ''}; Hände schweifen weiter ab. Aufbewahrt, nicht gezählt.`,
  'machine-beat': (p) =>
    `${p.intervals} Pendelungen sind auf ${said(100 * p.spread, 2)} % ihrer Dauer gleich; Hände streuen um einige Prozent. Aufbewahrt, nicht gezählt.`,
  'not-a-ready-exercise': (p) =>
    `${p.name} gehört nicht zu den Übungen, die mit Toehold kommen; es gelten ihre eigenen Grenzwerte.`,
  'size-over-6': () =>
    'Über 6 mm in einer Lage im Kurzlichtbogen braucht ein qualifiziertes Verfahren und birgt die Gefahr von Bindefehlern.',
  'profile-changed': (p) => `Bewertet nach ${p.by} statt nach ${p.asked} der Übung.`,
  'stopped-early': () => 'Der Versuch wurde beendet, bevor die bewertete Länge geschweißt war.',
  'metal-dropped': (p) => `${said(p.dripped_g, 2)} g Metall sind aus der Fuge getropft.`,
  'outside-transfer': transferSaid,
  'left-the-room': () =>
    'Flüssiges Metall hat den Rand dessen erreicht, was das Modell rechnet: ein Teil kann liegen, wo keine Messung hinsieht.',
};

const COLUMNS = {
  tip: { name: 'den Kontaktrohrabstand', unit: ' mm' },
  work: { name: 'den Arbeitswinkel', unit: '°' },
  travel: { name: 'den Neigungswinkel', unit: '°' },
} as const;

const AIDS: Record<AidName, string> = {
  pacer: 'Schrittmacher',
  beat: 'Takt',
  toeMarks: 'Marken an den Übergängen',
  handRig: 'Handgeschirr',
};

function aidsSaid(aids: readonly AidName[]): string {
  return aids.map((name) => AIDS[name]).join(', ');
}

function differenceSaid({ name, is, asked }: Difference): string {
  const [words, unit] = SETTINGS[name] ?? [name.replaceAll('_', ' '), ''];
  const value = (x: unknown): string => {
    if (typeof x === 'boolean') return x ? 'ja' : 'nein';
    return typeof x === 'number' ? `${said(x, 3)}${unit}` : String(x);
  };
  return `${words}: ${value(is)} statt ${value(asked)}`;
}

/** Joint and machine settings as they are named at the bench, and their unit. */
const SETTINGS: Partial<Record<string, readonly [words: string, unit: string]>> = {
  kind: ['Art', ''],
  plateA_mm: ['rechtes (hinteres) Blech', ' mm'],
  plateB_mm: ['linkes (Kanten-) Blech', ' mm'],
  plateWidth_mm: ['Breite der Bleche', ' mm'],
  length_mm: ['Länge', ' mm'],
  gap_mm: ['Stegabstand', ' mm'],
  startTemp_C: ['Anfangstemperatur der Bleche', ' °C'],
  ambient_C: ['Raumtemperatur', ' °C'],
  sink_WpmmK: ['Wärmeabfuhr durch Spannmittel', ' W/(mm K)'],
  tabs: ['An- und Auslaufbleche', ''],
  wire_mm: ['Draht', ' mm'],
  feed_mpmin: ['Drahtvorschub', ' m/min'],
  volts_V: ['Spannung', ' V'],
  gas: ['Schutzgas', ''],
  tip_mm: ['Lage des Kontaktrohrs in der Düse', ' mm'],
  nozzle_mm: ['Gasdüse', ' mm'],
} satisfies Record<keyof (JointOptions & ProcessOptions), readonly [string, string]>;

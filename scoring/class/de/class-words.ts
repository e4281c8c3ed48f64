import type { ClassWords } from '../class-words.ts';

const count = (n: number, one: string, more: string): string => `${n} ${n === 1 ? one : more}`;

/** What the class sheet says, in German. */
export const classWords: ClassWords = {
  head: {
    trainee: 'Person',
    exercise: 'Übung',
    device: 'Gerät',
    attempts: 'Versuche',
    within: 'innerhalb',
    first: 'erster',
    latest: 'letzter',
    'median of last 5': 'Median der letzten 5',
    spread: 'Spanne',
    'common fault': 'häufiger Fehler',
  },
  none: 'keine',
  span: (from, to) => `${from} bis ${to}`,
  verdict: {
    within: 'innerhalb',
    outside: 'außerhalb',
    'too close to call': 'zu knapp',
    'no verdict': 'ohne Urteil',
  },
  trainees: (n) => count(n, 'Person', 'Personen'),
  files: (n) => count(n, 'Datei', 'Dateien'),
  attempts: (n) => count(n, 'Versuch', 'Versuche'),
  notCounted: (n) => `${n} aufbewahrt und nicht gezählt`,
  unread: (n) => `${n} nicht lesbar`,
  counted: (n) => `${n} gezählt`,
  noneCounts: 'Kein Versuch zählt, von einer Klasse lässt sich nichts sagen.',
  oneWithout: 'Eine Person, unter den letzten Versuchen ohne Fehler.',
  oneOften: (fault, attempts) =>
    `Eine Person. Unter den letzten Versuchen am häufigsten zuerst: ${fault}, ${attempts}.`,
  noCommon: 'Keine zwei Personen teilen unter ihren letzten Versuchen einen Fehler.',
  common: (fault, trainees, attempts) =>
    `Häufigster Fehler der Klasse: ${fault}; ${trainees}, ${attempts} unter den letzten.`,
  firstRule:
    'Gewählt nach dem letzten Versuch jeder Person: zuerst Fehler an der Wurzel, dann fehlende Nähte, Übergänge, Metall, Form, Hand; innerhalb einer Art der Fehler, der am häufigsten wiederkam, dann der Messwert am weitesten außerhalb. Niemand wird gereiht.',
  title: 'Klassenblatt',
  seeFirst: {
    nobody: 'Noch niemand, der zuerst anzusehen wäre.',
    three: 'Die drei, die zuerst anzusehen sind',
    fewer: 'Zuerst anzusehen',
    none: 'Niemand hat einen Fehler, der zuerst anzusehen wäre.',
  },
  times: (times, of, device) => `${times} der letzten ${of}, ${device}`,
  lists: {
    notCounted: 'Aufbewahrt, nicht gezählt',
    mismatched: 'Gezählt, obwohl etwas nicht passt',
    unnamed: 'Ohne Namen im Dateinamen',
    bad: 'Nicht lesbar',
    others: 'Keine Versuche, liegen gelassen',
    folders: 'Nicht hineingesehen',
    notes: 'Zu wissen',
  },
  kinds: {
    recording: 'eine Aufzeichnung',
    exercise: 'eine Übung',
    profile: 'Grenzwerte',
    coupon: 'Marken eines echten Prüfstücks',
    result: 'ein Ergebnis',
    logbook: 'ein Logbuch',
  },
  block: { class: 'Klasse', days: 'Tage', exercise: 'Übung', instructor: 'Lehrkraft, Kürzel' },
  same: (what) => `In jeder Zeile: ${what}.`,
  coupon: 'echtes Prüfstück',
  weeks: 'Änderung über die Wochen',
  weeksRule: 'Median der Verlaufszahlen der Woche, und wie viele ihrer Versuche innerhalb waren.',
  from: (monday) => `ab ${monday}`,
  within: (n, of) => `${n} von ${of}`,
  notModelled: (what) => `Nicht modelliert: ${what}.`,
};

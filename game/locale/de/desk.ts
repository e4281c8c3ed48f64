import type { desk as english } from '../desk.ts';
import { counted, plural, whole } from '../numbers.ts';
import { editor } from './editor.ts';

const files = (n: number): string => counted(n, 'Datei', 'Dateien');

/** What a file is, and what can be done with it. */
const KINDS: Partial<Record<string, string>> & { other: string } = {
  profile:
    'ein Satz Grenzwerte: er sagt, was nach welchem Grenzwert bewertet wird. Eine Übung kann danach bewertet werden, ebenso auf der Befehlszeile (--profile)',
  coupon:
    'die Marken eines echten Prüfstücks. Unter „ein echtes Prüfstück“ neben einem Schnitt öffnen oder unter dem eigenen Namen (.coupon.json) auf der Seite ablegen',
  result: 'ein Ergebnis: was an einem Versuch gemessen wurde. Die Datei des Versuchs öffnen, um die Naht zu sehen',
  logbook: 'ein Logbuch: die Versuche eines ganzen Regals. Unter „Versuche“ aufnehmen',
  damaged:
    'ein aufbewahrter Versuch, der beschädigt war, wie dieser Browser ihn gesichert hat. Er lässt sich nicht neu schweißen',
  table: 'eine Tabelle. Ist es eine Namensliste, am Pult unter „Personen“ öffnen',
  page: 'eine Seite oder Zeichnung. Jeder Browser zeigt sie in einem eigenen Fenster',
  other: 'keine Datei der Werkbank',
};

/** Words of the instructor's desk. */
export const desk: typeof english = {
  open: 'Pult',
  title: 'Pult der Lehrkraft',
  close: 'Zurück zur Werkbank',
  onBench: (title) => `was auf der Werkbank liegt (${title})`,
  tabs: { class: 'Klasse', exercise: 'Übung', coupon: 'Prüfstücke', trainees: 'Personen', guide: 'Für Lehrkräfte' },

  readers: {
    title: 'Wie weit Lesende übereinstimmen',
    teach:
      'Ein Dutzend Schliffe, von mehreren gelesen, jeder für sich: die Tabelle einfügen (macro, reader und eine Spalte für alles Gemessene; für eine zweite Lesung noch einmal) oder die auf Fotos gesetzten Marken wählen, mit Kürzel gesichert.',
    table: 'Tabelle der Ablesungen',
    hint: 'macro,reader,convexity',
    take: 'Übereinstimmung ansehen',
    open: 'Tabelle (CSV) oder Marken (.coupon.json) öffnen',
    blank: 'Leere Tabelle sichern',
    print: 'Drucken',
    of: (readers, macros, trials) =>
      `${whole(readers)} Lesende, ${whole(macros)} Schliffe, ${trials === 1 ? 'jeder einmal gelesen' : `jeder ${whole(trials)}-mal gelesen`}. Streuungen sind Standardabweichungen.`,
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
    none: '–',
  },

  techniques: {
    title: 'Zwei Techniken an einem Prüfstück',
    teach:
      'Die untere Hälfte einer Fuge so schweißen und die obere anders, oder jede Seite einer Überlappung; dann durch beide sägen. Schnitte, Unterschiede gezeichnet und in Zahlen.',
    nothing: 'Auf der Werkbank liegt nichts. Einen Versuch schweißen oder öffnen.',
    change: 'die Hand wechselte bei, mm (leer: in der Mitte)',
    halves: 'Durch beide Hälften sägen',
    sides: 'oder: der Versuch auf der Werkbank ist die eine Seite, die andere ist',
    noOther: 'hier ist kein anderer Versuch aufbewahrt',
    welding: 'Wird neu geschweißt und gesägt …',
    cut: (name, y) => `${name}, Schnitt bei ${whole(y)} mm`,
    over: 'einer über den anderen gelegt',
    difference: 'Unterschied',
    differs: 'über dem Plus-Minus',
    yes: 'ja',
    no: 'nein',
    none: 'nicht gelesen',
  },

  class: {
    teach:
      'Die Dateien der Klasse wählen, alle zusammen, oder irgendwo auf dieser Seite ablegen. Sie werden hier, auf diesem Rechner, neu geschweißt und bewertet; nichts wird verschickt.',
    files: 'Dateien wählen',
    folder: 'Ordner wählen',
    scoring: (done, total) => `${whole(done)} von ${files(total)} bewertet …`,
    stopped: (done, total) => `Angehalten nach ${whole(done)} von ${files(total)}.`,
    cutting: 'Die drei, die zuerst anzusehen sind, werden für ihre Schnitte neu geschweißt …',
    stop: 'Anhalten',
    goOn: 'Weiter',
    clear: 'Diese Klasse weglegen',
    counted: (own) =>
      `Gezählt werden Versuche an den Übungen, die mit Toehold kommen${own.length === 0 ? '' : `, und an ${own.join(', ')}`}; andere sind Übungsversuche. Eine dazu gewählte Übungsdatei (.exercise.json) zählt auch.`,
    passedOver: (names) => `Den Namen nach keine Aufzeichnungen, übergangen: ${names.join(', ')}.`,
    first: {
      three: 'Die drei, die zuerst anzusehen sind',
      fewer: 'Zuerst anzusehen',
      none: 'Niemand hat einen Fehler, der zuerst anzusehen wäre.',
    },
    sawing: 'Wird gesägt …',
    times: (times, of, device) => `${whole(times)} der letzten ${whole(of)}, ${device}`,
    open: 'Öffnen',
    beside: 'Danebenlegen',
    saveOf: {
      result: { short: 'Ergebnis', long: 'Sein Ergebnis als JSON sichern' },
      cut: { short: 'Schnitt', long: 'Seinen Schnitt, wo die erste Abhilfe hinzeigt, als Zeichnung sichern (SVG)' },
    },
    besideFirst: 'Erst einen Versuch öffnen: dann kann ein anderer daneben liegen.',
    openFirst: (who) => `Den Versuch von ${who} öffnen`,
    known: (n) =>
      `${files(n)} ${plural(n, 'war', 'waren')} hier schon bewertet und ${plural(n, 'wurde', 'wurden')} übernommen; dieselben Bytes, vom selben Programm bewertet.`,
    pick: (file) => `${file} zum Nebeneinanderlegen wählen`,
    picked: (n) =>
      n === 1
        ? 'Ein Versuch gewählt: noch einen wählen, von wem auch immer, um beide nebeneinander zu sehen.'
        : 'Zwei Versuche gewählt.',
    both: 'Beide nebeneinander sehen',
    unpick: 'Keinen wählen',
    weeks: 'Woche für Woche',
    week: (monday, median, within, of) => `ab ${monday}: Median ${median}, ${whole(within)} von ${whole(of)} innerhalb`,
    filter: 'Nur Zeilen mit',
    filterHint: 'Name, Übung, Gerät, Fehler',
    sortBy: (column) => `Nach ${column} sortieren`,
    attemptsOf: (who) => `Versuche von ${who}`,
    line: 'Verlaufszahlen in der Reihenfolge ihrer Entstehung, 0 bis 100; eine Lücke hat kein Urteil.',
    noMatch: 'Keine Zeile enthält das.',
    lists: {
      notCounted: 'Aufbewahrt, nicht gezählt',
      mismatched: 'Gezählt, obwohl etwas nicht passt',
      unnamed: 'Ohne Namen',
      bad: 'Nicht lesbar',
      folders: 'Ordner, nicht hineingesehen',
    },
    save: 'Sichern als',
    print: 'Drucken',
    kinds: {
      html: 'Klassenblatt, Seite',
      pdf: 'Klassenblatt, PDF',
      csv: 'Klassentabelle, CSV',
      rows: 'Versuche, CSV',
      jsonl: 'Versuche, JSON-Zeilen',
    },
    hidden: (n) => `Person ${whole(n)}`,
    hiddenFile: 'Name verborgen',
  },

  editor,

  trainees: {
    next: 'Nächste Person',
    teach:
      'Name und Platz werden in jeden Versuch und in den Namen seiner Datei geschrieben, bis die nächste Person gewählt wird.',
    name: 'Name oder Nummer',
    bench: 'Platz',
    start: 'Anfangen',
    now: (name, bench, plate) =>
      `Jetzt an der Werkbank: ${name}${bench === '' ? '' : `, Platz ${bench}`}${plate === null ? '' : `, Blech ${whole(plate)}`}.`,
    plate: 'Blechnummer',
    plateOf: (n) => `Blech ${whole(n)}`,
    word: 'Startwort an der Tafel',
    wordTeach:
      'Mit der Nummer auf dem Blech teilt es in dafür gemachten Übungen jedem ein eigenes Stück zu. Es wird in keine Datei geschrieben.',
    nobody: 'Niemand ist genannt: Versuche werden ohne Namen aufbewahrt und gesichert.',
    following: (name) => `Als Nächstes auf der Liste: ${name}`,
    roster: 'Namensliste',
    rosterTeach:
      'Namen oder Nummern einfügen, einen je Zeile, oder eine Tabelle, deren erste Zeile die Spalten nennt (name, bench, plate). Ohne Blechnummern hat jeder die seines Platzes in der Liste.',
    take: 'Diese Liste benutzen',
    fromFile: 'Liste (CSV) öffnen',
    taken: (n) => `${counted(n, 'Name', 'Namen')} auf der Liste.`,
    forget: 'Vergessen',
    forgetTeach: 'Namen bleiben auf diesem Rechner und gehen von selbst nirgendwohin.',
    forgetNames: 'Person, Platz und Liste vergessen',
    forgetAll: (n) =>
      `Vergessen und ${plural(n, 'den Versuch, der einen Namen trägt,', `die ${whole(n)} Versuche, die einen Namen tragen,`)} entfernen`,
    hide: 'Namen vom Bildschirm lassen',
    who: (name, bench) => (bench === '' ? name : `${name}, ${bench}`),
    whoTitle: 'Jetzt an der Werkbank. Drücken für die nächste Person.',
    hidden: 'Name verborgen',
  },

  problems: {
    otherKind: (file, kind) =>
      `${file} ist ${KINDS[kind] ?? KINDS.other}. Hier lassen sich Versuche und Übungen öffnen, die die Werkbank gesichert hat.`,
    offers: {
      profile: 'Eine Übung nach diesen Grenzwerten bewerten',
      table: 'Als Namensliste benutzen',
      logbook: 'Seine Versuche aufnehmen',
      coupon: 'Neben dem Schnitt öffnen',
    },
    spoiltLink:
      'Der Link trägt eine Übung, die sich nicht lesen lässt: sie wurde unterwegs abgeschnitten oder verändert. Um die Datei bitten.',
  },
};

import type { labWords as english } from '../lab.ts';
import { counted as some } from '../numbers.ts';

/** Words of a school's lab: on the bench's class bar, and on the instructors' pages. */
export const labWords: typeof english = {
  join: {
    title: 'Klasse',
    open: 'Einer Klasse beitreten',
    code: 'Klassencode',
    name: 'Name wie auf der Liste',
    pin: 'PIN, falls eine ausgegeben wurde',
    join: 'Beitreten',
    cancel: 'Abbrechen',
    leave: 'Verlassen',
    kept: 'Auf einem gemeinsam benutzten Rechner die Klasse beim Gehen verlassen. Was bis dahin nicht gesendet ist, wartet hier und geht beim nächsten Beitreten.',
    noAnswer: 'Das Labor antwortet nicht. Weiterschweißen geht; was abzugeben ist, wartet hier.',
    handedOut: 'Ausgegeben:',
    choose: 'Übung wählen',
    nothing: 'noch nichts',
    notHandedIn: 'Was jetzt geschweißt wird, ist nur zum Üben.',
    handsIn: (most) =>
      most === null
        ? 'Jeder beendete Versuch wird abgegeben.'
        : `Jeder beendete Versuch wird abgegeben; ${most === 1 ? 'der erste zählt' : `die ersten ${most} zählen`}.`,
    state: (sending, waiting) => {
      if (sending === 'not kept') return 'Dieser Browser konnte den Versuch nicht behalten: als Datei sichern.';
      if (waiting === 0) return '';
      const n = some(waiting, 'Versuch wartet', 'Versuche warten');
      if (sending === 'sending') return 'Wird gesendet …';
      if (sending === 'join again') return `${n}: zum Senden neu beitreten.`;
      return `${n} auf eine Antwort des Labors.`;
    },
    arrived: (all, scored) =>
      all === 0 ? '' : `${some(all, 'Versuch ist', 'Versuche sind')} angekommen, ${scored} bewertet.`,
    others: (n, names) =>
      `${some(n, 'Versuch wartet', 'Versuche warten')} hier, bis ${names.join(', ')} wieder beitreten.`,
    refused: (title, why) =>
      `${title}: ein Versuch wurde nicht angenommen. ${why} Er liegt weiter bei den eigenen Versuchen.`,
    forget: 'Weglegen',
  },

  desk: {
    title: 'Schullabor',
    setup: 'Erste Lehrkraft',
    setupSays: 'Noch ist niemand hier. Der Code stand dort, wo das Labor gestartet wurde.',
    code: 'Code',
    name: 'Name',
    password: 'Passwort, mindestens 10 Zeichen',
    make: 'Beginnen',
    login: 'Anmelden',
    leave: 'Abmelden',
    trainee:
      'Dieser Browser ist einer Klasse als lernende Person beigetreten. Abmelden, um als Lehrkraft hereinzukommen.',
    classes: 'Klassen',
    noClasses: 'Noch keine Klasse. Die erste benennen.',
    newClass: 'Neue Klasse',
    add: 'Anlegen',
    back: 'Alle Klassen',
    joinBy: (address) => `Lernende öffnen ${address} und treten bei mit dem Code`,
    tabs: {
      attempts: 'Versuche',
      roster: 'Liste',
      exercises: 'Ausgegeben',
      marks: 'Noten',
      table: 'Klassentabelle',
    },
    live: { open: 'live', closed: 'nicht live: das Labor antwortet nicht' },
    progress: (handed, scored) =>
      handed === 0 ? 'Noch nichts abgegeben.' : `${some(handed, 'Versuch', 'Versuche')} abgegeben, ${scored} bewertet.`,
    projector: 'Ohne Namen',
    columns: {
      trainee: 'Person',
      exercise: 'Übung',
      number: 'Nr.',
      received: 'Eingegangen',
      verdict: 'Urteil',
      score: 'Zahl',
      first: 'Zuerst zu ändern',
      attempts: 'Versuche',
      within: 'Innerhalb',
      median: 'Median',
      fault: 'Häufiger Fehler',
      mark: 'Note nach der Regel',
      set: 'Von Hand gesetzt',
      leftOut: 'Weggelassen',
      opens: 'Öffnet',
      closes: 'Schließt',
      most: 'Versuche, die zählen',
      pin: 'PIN',
    },
    hidden: (n) => `Person ${n}`,
    waiting: 'wird bewertet',
    late: 'verspätet',
    look: 'Ansehen',
    file: 'Versuchsdatei',
    evidence: 'Zu wissen, bevor man es glaubt',
    noEvidence:
      'Nichts spricht dagegen. Eine kopierte Hand mit zugefügtem Rauschen oder eine fremde Hand wird nicht erkannt.',
    advice: 'Was zu ändern ist',
    close: 'Schließen',
    rosterSays: 'Ein Name je Zeile, oder eine CSV mit einer Spalte namens name. Niemand wird gestrichen.',
    rosterAdd: 'Zur Liste hinzufügen',
    rosterFile: 'Namen aus einer Datei',
    added: (n, known) => `${n} hinzugefügt, ${known} schon da.`,
    hasPin: 'hat eine',
    givePin: 'Neue PIN',
    pinIs: (name, pin) => `PIN für ${name}: ${pin}. Sie wird einmal gezeigt.`,
    pins: 'Noten zählen: Lernende treten mit einer PIN bei',
    handOut: 'Ausgeben',
    exercise: 'Übung',
    opens: 'Öffnet',
    now: 'jetzt',
    closes: 'Schließt (leer: bleibt offen)',
    most: 'Versuche, die zählen (leer: beliebig viele)',
    notOut: 'Noch nichts ausgegeben.',
    ever: 'bleibt offen',
    any: 'beliebig viele',
    rule: 'Regel',
    rules: { best: 'bester Versuch', last: 'letzter Versuch', median: 'Median der letzten drei' },
    setMark: 'Setzen',
    takeBack: 'Zurücknehmen',
    mark: 'Note, 0 bis 100',
    reason: 'Grund',
    reasonNeeded: 'Eine von Hand gesetzte Note steht neben der berechneten, mit ihrem Grund.',
    seeFirst: 'Diese drei zuerst ansehen',
    nobodyFirst: 'Niemand sticht heraus.',
    times: (times, of) => `${times} von ${of}`,
    out: 'Herausnehmen',
    csv: 'Ergebnisse als CSV',
    jsonl: 'Ergebnisse als JSON-Zeilen',
    noAnswer: 'Das Labor antwortet nicht.',
    bench: 'Die Werkbank',
  },
};
